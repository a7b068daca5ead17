package notation

import "strings"

// everyday are words of plain English that never bear on a ruling: what people
// feel and say, when and where they play in the large, praise and blame. No word
// is among them that can change what happened: none of denial, number,
// direction, place on the court, order, of the ball, the body, or a call.
// Common speech, no source. Sorted.
const everyday = "12s 12u 13s 13u 14s 14u 15s 15u 16s 16u 17s 17u 18s 18u aa abandon absolutely " +
	"absorb absurd academy accept acrobatic acrobatics acronym adamant adamantly additionally adjust " +
	"admire admittedly adopt adorable adrenaline adults advice advise affection afford afternoon " +
	"afterparty afterthought age aggravated aggressive aggressively agony aight alarm alas albeit " +
	"alert allright alright altogether alumni always amateur amaze amazed amazement amazing ambitious " +
	"amuse amused amusing analyze anger announce annoy annoyance annoyed annoying annual annually " +
	"answer anticipation antics anxiety anxious anyhow anymore anyways apologize apology appalling " +
	"applause apply appreciate appreciated appreciation apprentice approve april ardently arena argh " +
	"argument armchair article artistic ashamed assess assessor assessors assign assigner assignor " +
	"association assume assumption assure astonish astonishing astounded athleticism athletics " +
	"atmosphere atrocious attended attention attitude audible audibly auditorium autumn average aware " +
	"awe awesome awestruck awfully awkwardness aww aye background baffled baffling bah banquet bark " +
	"barn basic bb bedlam befuddled beginner beginners behave belief belong bemoan bemused benefit " +
	"bestie bet bewildered bickering birthday bizarre blah blame bland blatant blatantly blindly blink " +
	"blog blowout blush boggle bogus boisterously bold bookkeeping bore bored boredom boring borrow " +
	"boss bouncy bracket brag brain brainstorm brand bravery bravo brb breakdown breakfast brief " +
	"briefly bright brilliant bro bronze bruh brutal brutally btw buddies buddy bug bummed bummer " +
	"burly bus busy buzz bye cafeteria caliber calibre calm calmly camp candid candidly care careful " +
	"carefully careless carelessly casual casually categorically cater caution cautious caveat " +
	"celebrate celebrated celebration certification certified chairman champs chant chaos chaotic " +
	"chapter characteristically charming chat chatter cheat cheer cheerful cheerio cheers cheesy " +
	"chemistry chill chilly choose christmas chuffed circuit citation cite city civil clarification " +
	"clarify class classic classmate classmates classy clever clinic clue clueless clumsily clumsy " +
	"clutch coarse cocky coincidence cold colleague colorful comeback comfort comfortable comfortably " +
	"comical commend commendably comment commentary common commonly commotion communicate community " +
	"commute compare compassion compete competent competition competitive competitor complainer " +
	"complaint complaints complex complicate complicated compliment comprehend concentrate concept " +
	"concession concessions conclude conclusion conference confidence confident confidently confirm " +
	"conflict confuse confused confusing confusion congrats congratulate congratulations conjecture " +
	"consensus consider considerate consideration consistent consistently consolation contend content " +
	"contentious context contradict contribute controversial controversy convenient conveniently " +
	"conversation convince convinced convincing cool coordination cope cost counterpoint county " +
	"courage courageous cousin cousins coworker coworkers crafty cranky crappy craziness create crikey " +
	"cringe crisp critical criticism criticize critique crosstown crowded crucial crunchtime curiosity " +
	"curiously cute cynic cynical daily dancer dang darn data daylight deafening deal dear decade " +
	"december decent decipher dedication define definition delicate delicious delight delighted " +
	"delightful demonstrate depend describe deserve desire despair desperate desperately detail " +
	"determination determined devastated develop devise diagram dicey difficult dilemma dinner " +
	"disagreement disappoint disappointed disappointing disappointment disastrous disbelief discomfort " +
	"discover discuss disgruntled disgust disgusted dislike dismay dispute distinguished divide " +
	"division divisions dm doc document doubleheader doubtlessly drama dramatic dramatically dread " +
	"dreadful dream drink drunk duals duh dull dumb dumbfounded dynamic eager eagerly earn earnest " +
	"easter easy eat echoey echoing ecstatic edit educate educated eerie effortless effortlessly ego " +
	"egregious elaborate elated elder elderly elect electric elegant elementary elimination elite " +
	"email embarrassed embarrassing embarrassment emotion emotional empathy emphatically employ " +
	"encourage endless energetic energy enjoy enlighten enormous enraged ensure entertain entertaining " +
	"enthusiasm enthusiastic envision envy epic episode especially essential establish ethical " +
	"euphoric evaluate evaluator evaluators evening evenings event everyday evidently evil exaggerate " +
	"exam examine example exams exasperated exasperation exceedingly excel excellent excite excited " +
	"excitement exciting excuse exercise exhaust exhausted exhausting exhibition exist exotic expect " +
	"expectation expectations expensive experience experienced expertise experts explanation explore " +
	"explosive explosively expose express exquisite extraordinary fabulous facepalm facility fact " +
	"facts fairly faith faithful familiar famous famously fancy fantastic faq fascinating fashionable " +
	"fathom fatigue favorite favour favourite fear fearless february feedback feel ferocious fervently " +
	"festival feud ffs fiance fiction fieldhouse fierce fiercely fiery finale finalist finalists " +
	"fireworks flabbergast flabbergasted flashback flashy flawless flexible flinch flummoxed flustered " +
	"focus foggy follower foolish foolishly footage forgive formidable forthwith fortnight fortunate " +
	"fortunately forum forums frankly frantic frantically frazzled freak freaking freaky frenzy " +
	"frequently freshmen fridays frightened frightening frown frustrated frustrating frustration " +
	"fuming fun function fundamentals fundraiser furiously furthermore fury fuss fuzzy fyi gamble " +
	"gameplan gape gasp gasped gawk gaze geek geeks geez generous gentle gently genuine genuinely " +
	"ghastly giant giddy gifted gigantic giggle gist glad gladly glare glaring glee gleefully gloom " +
	"gloomy glorious glory glow gobsmacked goodness goofy gorgeous gosh gossip gotta grace graceful " +
	"gracefully gracious grade grader graders graduate grammar grand granddaughter grandson grateful " +
	"greedy greenhorn greet greetings grief grievance grim grimace grin gripe gripes groan groaned " +
	"gross grudge grumble grumpy guarantee guess guessing guidance guidebook guideline guidelines " +
	"guilty guru gurus gut gymnasium gymnast gyms hahaha hallelujah handbook handsome handy happily " +
	"happiness harmless harsh harshly hasty hate hatred hazy headline hearsay heart heartbreak " +
	"heartbroken heated heavily heavy heck heckle hectic hello helpful hence heya highlight highlights " +
	"hilarious hint hire historic historically history histrionics hitherto hiya hm hmm holiday " +
	"homecoming homeroom hometown homework honest honor hooray hope hoped hopeful hopefully hopeless " +
	"hopes hoping horrendous horrible horribly horrific horror host hostile hotel hour howdy howl " +
	"hubby hugely huh hullabaloo humble humid humiliated humiliation humor humorously humour hungry " +
	"hurrah hurriedly husky hype hyped hypothetical hypothetically hysteria hysterical icky iconic " +
	"idea ideal ideas identify idiotic idk ignorant ignore imagine imho immature immense immensely " +
	"impatient imperfect imply important importantly impress impressed impression impressive improve " +
	"inbox incensed incidentally inconsistent inconsistently incredible incredibly indeed indignant " +
	"indisputably industrial inevitably inexperienced infamous infer info inform informal information " +
	"infuriate infuriated infuriatingly inherently innocent innocently inquiry insane insanely " +
	"insanity insecure insight insightful insistent insistently instinctively instruct instruction " +
	"instructor insult insulted intelligent intense intensity interest interested interesting " +
	"interestingly intermural internet interp interpret interpretation interpretations intramural " +
	"intramurals intriguingly introduce introduction invaluable invent invitational invite irate irked " +
	"ironic ironically irony irrelevant irritated irritating irritation issue jamboree january jazzed " +
	"jealous jealousy jeez jinx jittery jo joke joking jolly journal joy joyful jubilant judgmental " +
	"july june justify keen kerfuffle kiddo kiddos kinda kindly kindness knowitall knowledge kudos " +
	"lame language lanky lately laugh laughable laughter law lawd lawyer lazily lazy league leagues " +
	"learn learner lecture lecturer legend legendary lesson letter licensed lightly likable lingo link " +
	"list listen literature lively livestream livid lmao locally lockerroom logic logical lonely " +
	"lookup lopsided loud louder loudest loudly loudmouth lousy love lovely loving loyal luck luckily " +
	"lucky ludicrous lunch lunchtime lurker luxurious madly madness magical magically magnificent " +
	"manage manual marathon marvel marvelous massive massively masters matches matchup mate mature " +
	"mayhem mean meaning meant mediocre meh mellow meltdown memorable memorize memory mens mental " +
	"mentally mentee mentor mentors mercy merely merry message messed midday midnight midseason " +
	"midweek miffed mightily mighty mild mildly mindset ministry minor mins miraculously miserable " +
	"misery misguided misinformation misinterpret misread misunderstand misunderstanding mm mmm " +
	"moaning mock modern modest monday monstrous month monthly mood moody morale moreover morning " +
	"mornings mortified motivate motivated mumble municipal murky murmur muscular mutter mysterious " +
	"mysteriously myth nailbiter naive namely narrative nasty nationally natural naturally naughty " +
	"neat neatly needless neighbor neighborhood neighbors neighbour nephew nerd nerds nerdy nerves " +
	"nervous nervously nevertheless newbies newcomer newcomers newsletter nicely niece nightly " +
	"nightmare nitpick nitpicking noble nod noisily noisy nonetheless nonplussed nonsense nonsensical " +
	"noob noon normal normally nostalgia notable notably note noted notes noteworthy notice notion " +
	"notwithstanding november novice novices nowadays nuance nutshell nutty obey observation observe " +
	"observer obvious occasionally october odd oddly offend offended officially officiate officiates " +
	"offseason okayish oldest oldtimer oldtimers omg online oof ooh oops opener openly opine " +
	"opinionated optimist orally ordinarily ordinary organise organize organized ouch outcry outing " +
	"outrage outrageous outstanding overall overconfident overhear overjoyed overnight overrate " +
	"overrated overreact overthink overwhelmed overwhelming owe oy packed pal pale pamphlet " +
	"pandemonium panic paragraph paranoid parenthetically parish parking particularly passion " +
	"passionate passionately pathetic patience patient patiently pay peace peaceful peculiar pedant " +
	"peeps peeved perfect perfectly perplexed perplexing persistent persistently personal personally " +
	"perspective persuade pessimist petite petty phenomenal phew philosophy photo phrase pickup picky " +
	"piss pity plain plainly plan plausible playbook playday playful playmaker pleas pleasant please " +
	"pleased pleasing pleasure pls plz podcast poise polite politely poll ponder pondering pool poor " +
	"poorly popular pose positive positively postgame postseason posture powerful powerfully practical " +
	"practice practices practise praise preach precious precise predict predictable predictably " +
	"preface prefer preference pregame prelim preliminary prelims prepare prepared preseason " +
	"presentation president pressure presume pretty priceless pride pristine privately prof " +
	"professional professionally professor program prominent promise promising promote proof propose " +
	"proud proudly prove proven provoke ps psa psyched publication publicly publish pumped punchy " +
	"pupil pupils purely purist purists puzzle puzzled puzzling q qualifier qualifiers qualify quality " +
	"quarrel quarterfinal quarterfinals quarters quasi query quibble quiet quietly quirky quiz quote " +
	"radical rage random randomly ranked rant rare rarely rational rationale raw reaction read reading " +
	"realise realistic realistically realize reasonable reasonably reasoning recap recently " +
	"recertified reckless recklessly recognise recognize recollection recommend recreation refer " +
	"reference reffed reflect refresher refreshing regardless regards regionally regret regularly " +
	"relate relax relevance relevant reliable relief relieved reluctance reluctant reluctantly rely " +
	"remarkable remarkably remind reminder reply report repost rescheduled research resent resolve " +
	"resource respect respectable respectful respectfully respond response restless retired retiring " +
	"reveal revenge review revisit revolting reward rewatch rewind rewound rhetorical rhythm rich " +
	"ridiculous ridiculously risky rival rivalry rivals roaring rofl romantic roommate rowdily rowdy " +
	"ruckus rude rudely ruin rulebook rumor rumour rusty sad sadly sadness sake salty sanity sarcasm " +
	"sarcastic sarcastically satisfaction satisfied satisfy satisfying saturdays savor savvy scandal " +
	"scarily scary scenarios scheduled scheme schemes schools scoff scorekeeping scorn scrappy " +
	"screenshot scrimmage scrimmages seasonal secret secretary secretly sectional sectionals seeded " +
	"seek seething select selfish semi semifinals seminar semis sensational sensible sensibly " +
	"sensitive september serene series serious seriously shabby shaky shame shameful sheesh " +
	"shenanigans shiny shock shocked shocking shockingly shoutout showcase showdown shrug shrugged shy " +
	"sibling siblings sigh silent silly simple sincere sincerely sincerity sir sis skeptic skeptical " +
	"sketchy skill skilled skillful skinny slate sleep sleepy sloppily sluggish sly smart smell smelly " +
	"smh smile smirk smug snappy sneaky snippet sob sober sometimes sophomores sorrow sorry sorta sour " +
	"source spark spat speak special specially specifically spectacle spectacular spectacularly " +
	"speculation speechless speedy spell spelling spend spent spicy spirit spirited splendid " +
	"splendidly spoil spontaneous sport sports sportscenter sporty springy spunky squabble stadium " +
	"stale standings standout stare starters statement states stats steaming steep sternly stickler " +
	"stiff stinky stocky stoked stories stormy story strange strangely strapping strategies strategy " +
	"stressed stressful strict strikingly striped stripes strongly struggle stubborn stubbornly study " +
	"stumped stumper stunned stunning stunningly stupid stupidly style styles stylish subbing subject " +
	"subjective subjectively sublime submission subscriber subtle succeed successful successfully " +
	"sudden suddenly suggestion suit sulk summarize summary summer sundays sunny sup super superb " +
	"superintendent superior superman superregional superstar supply suppose supposed surprise " +
	"surprised surprising surprisingly survey suspense suspicious swamped sweat sweaty sweet sweetly " +
	"swift swiftly sympathetic sympathy ta tactic tactical tactically tactics tada takeaway talent " +
	"talented talk talkative talking tame tantrum tasty teach teaching teamwork technical technicality " +
	"technically tedious teen teenage teenager teenagers teens temper tempt tend tension terminology " +
	"terribly terrific terrified terrify terrifying terror test text textbook texted thankful " +
	"thankfully thankyou thanx theatrics theoretically theory thereby therefore thirsty thorough " +
	"thoroughly thoughtful thread thrill thrilled thriller thrilling thunderous thursday thx tia " +
	"ticked tidy timid tiny tired tiring title tldr tolerate topic tournaments tourney " +
	"traditionally tragic trainee trainees training transcript translate translation treasurer treat " +
	"tremendous tricky tripleheader troublesome true truly trust trustee trusty tryout tryouts tuesday " +
	"tutor tutorial ty typed typical typically typo tysm u12 u13 u14 u15 u16 u17 u18 ugh uh um umm " +
	"unanimously unbeaten unbelievable unbelievably uncanny uncertified uncomfortable uncommon " +
	"undefeated undeniably underclassman underclassmen underrated understand understandable " +
	"understandably understanding undoubtedly unease uneasy unequivocally unexpected unexpectedly " +
	"unfamiliar unfortunate unfortunately unhappy unimportant unimpressed unique universally " +
	"university unknowingly unluckily unlucky unmistakably unorthodox unpleasant unprepared " +
	"unquestionably unranked unreal unreasonable unsettling unsurprisingly unusual unusually unwise " +
	"update uploaded upperclassman upperclassmen uproar uptight useful useless usual vague vaguely " +
	"valuable vast vehemently venue verbally verdict verify version veteran veterans vibe vibes " +
	"victory vid vids view viewer viewpoint vigorous vigorously visibly vivid vividly vocal " +
	"vociferously volatile volunteer volunteered volunteering volunteers vote voted warmup warmups " +
	"waste weak weakly wear weariness weary wednesday weekday weekender weekends weekly weeknight " +
	"weeknights weirdly welcome welp whatsoever whereby wherein whew whiner whining whoa " +
	"wholeheartedly whoops wicked wiki wildly willing willpower wily winded wink winless winter wisdom " +
	"wise wisely wish witness wizard wonder wonderful wonderfully wording words worksheet workshop " +
	"worried worrisome worry worrying worthless worthy wow wrath write writing written wrote wtf wth " +
	"yawn yay yea yeah yearly yearn yep yessir yikes yo youngest youngster youngsters youth youthful " +
	"yr yrs yuck yup zany zeal zealous zen zest"

// sceneryPhrases are the words and turns of speech that never matter. A phrase
// of another table goes before them: they fill in what no table says.
func sceneryPhrases() []ref {
	never, around := scenery(), of(cAround)
	out := make([]ref, 0, len(idioms)+4096)
	for _, w := range idioms {
		out = append(out, ref{w, &never, true})
	}
	for w := range strings.FieldsSeq(everyday) {
		out = append(out, ref{w, &never, true})
	}
	for w := range strings.FieldsSeq(bystanders) {
		out = append(out, ref{w, &around, true})
	}
	return out
}
