package casetest

import "strings"

var topics = strings.Fields("alignment attack block conduct contacts counting delay height interference joust libero mechanics net replay reaching rotation safety screen serve substitution")

// words are common ones of the trade and of talk about it.
var words = strings.Fields(`
above across action adoption advantage after again alignment already antenna approach arm ask assigned attack attempt
authorise away back ball bench between block blocker board bounce call captain carry catch centre certain champion
change chase clean clock close coach code collective contact count court cover crew cross danger dead decide deep defend
delay dig distract dive double draft dump edge elbow end enter exchange extend face fall far fault feet field find
finger first flag flight floor foot forearm four free front gain game ground gym hair hand hard head heel height held
high hinder hit hitter hold home honest hurry incident inside instant joust judge jump kick kill knee land late learn
left leg legal let libero lift line local long loose lost low mark match measure mentor mesh middle miss moment move
mutual near net next note number official open opponent order outside over overlap pair palm part partner pass penalty
pin place plane play point position post practice press pull push quick quiet rally reach read rebound receive red
referee release replay request resume return right roll rotate rotation row rule run safe same save score screen second
see send sequence serve set setter shoe short shot shoulder side signal single six slow spike spin spot stand start
step stop stray substitute support swing tape team teammate test third throw tight time tip toe together top toss touch
trip twice under upright verbal view wait walk warn watch whistle whole wide wing word wrist write wrong yellow zone
`)

// syllables make the long tail of rare words.
var syllables = strings.Fields("ba be bi bo bu da de di do du ka ke ki ko ku la le li lo lu ma me mi mo mu na ne ni no nu ra re ri ro ru sa se si so su")
