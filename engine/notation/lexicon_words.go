package notation

// wordClasses are words that stand for one another in a phrase.
var wordClasses = []struct{ class, words string }{
	{"<fall>", "drop fall land"},
	{"<foot>", "foot heel shoe toe"},
	{"<go>", "bounce carom careen carry come continue crawl creep deflect dribble drift float flutter fly glance go head hop lob loop pass pop rebound ricochet roll sail skid skim skip slide slip squirt travel trickle tumble wobble"},
	{"<hit>", "ball contact hit touch"},
	{"<net>", "net tape"},
	{"<wholly>", "completely entire entirely fully totally wholly"},
}

// fillers carry nothing by themselves: prepositions, auxiliaries, adverbs.
const fillers = "able about above again all along already also am any anybody anyone are around at away back be " +
	"because become been behind being between clearly close could course decide deliberately did do " +
	"does doing done down during each either enough even ever everyone exactly far for from got had " +
	"happen has have having here i if in inside instead intentionally is its itself just kind know " +
	"like look lot made make many maybe me might moment more most much must my near need new now of " +
	"often on one only our own part people piece place point purpose purposely quite rather ready " +
	"really same see seem should since situation small some somebody someone something soon sort " +
	"still such sure than thank thanks there thing through to toward towards try under until upon " +
	"usually very was way were where whether who whom will with within would yes yet you your"

// sceneryWords are known not to matter to a ruling.
const sceneryWords = "actually angry anyway apparently athletic awkward awkwardly backpedal backpedals balance " +
	"basically beautiful big boys championship coed corner crazy curious debate deciding deep " +
	"discussion district districts else fast film final finals five freshman friday full funny furious " +
	"game girls great guys gym haha happy hard hey hi high honestly huge last level literally lol long " +
	"low mad match newbie nice night obviously officiated officiating playoff playoffs quick quickly " +
	"raised rec recreational refereed reffing regional regionals replayed rookie saturday saw scenario " +
	"score season semifinal senior slow slowly softly sophomore speed state straight strong sunday " +
	"tall tie tied today tonight tough tournament turn turning turns upset video watched watching week " +
	"weekend wild wondering worked working yesterday"

// skipped are the words that may stand between the words of a phrase.
const skipped = "a accidentally actually also an are barely be been being clearly easily fully had has have her " +
	"his is its just legally my now only quickly really right simply slightly so still the then very " +
	"was well were will would"

// leftAlone are common words near to a word of the trade; none is corrected.
const leftAlone = "about above advantageous afternoon afterward alloyed alone among antennae aside assignment " +
	"assignments attach attached attaching attracting auction authorities baring basked beach bead " +
	"beak beaks bear beat believer believers bellow bellows belt bend best bite blackboard " +
	"blackboards blacked blacker blacking blame blast bleach bled blind bloc blockading blocs bloody " +
	"board boats bonds bone book boos boot booted booting boots boring born bound bowl brain brave " +
	"bread brick bride brief broad brother brothers brown build burn bush bushed bushing cabin cable " +
	"camp care carve case catchy chain chalk charm chase cheap check cheer chess child clam clams " +
	"clan clans clash clear clock cloth cloud coast cock cocks coiling collage collages collecting " +
	"collection collections collectively collie collies collusion color complaint concession " +
	"concessions conclusion conclusions confession confessions congest congested congesting congests " +
	"connective content contented contenting contents context contexts contract contracting " +
	"convulsion convulsions corrective could count cover crack craft crash crass cream crime crow " +
	"crowed crows cruel curt curtail curtails dance danker death defect defected defecting defects " +
	"defended derive devil difference differences differently dirty disrupting disruptive distrusted " +
	"divide divided divides diviner doubly draft drain drama dream dress drink drive eager early " +
	"earth eight eighth eighths eighty entice entices entire equal event every exact exceptionally " +
	"exceptions exhausting exhaustive extra fading faith faking false farther fating faulty favor " +
	"fazing feast fellow fellows fence fever field fiend fiends fight firearm firearms firs fist " +
	"fits flash flat fleet flesh float flood focus follower followers font fonts force forceps fore " +
	"forget forth found frame fresh fried fruit funny garb garbed garbing garbs gaze gazes giant " +
	"glass globe gloves gong gongs goring grace grade grain grand grant grass grave great green " +
	"greet grief gross group grown guard guess guest habit hammed hamper hampered hampering hampers " +
	"handled happy harsh haste heart heavy hello hence herd herds hinging hobby honor horse hotel " +
	"hotter house human humor ideal image impart imparts improperly inner insure insures intentional " +
	"internationally involve involves issue joint judge juice knife knocker knockers label labor " +
	"large laser later laugh layer laying learn lease least leave lemon level light likes lilted " +
	"limit lines links listed lists lived liver local locked lofted logic loomed looped loose loosen " +
	"loosens looser looted lose loses lower lucky lunch magic major maker march master masters match " +
	"matte matted mattes maybe mayor mechanical medal meddle meddles media mercy mess metal meter " +
	"might minor minus mistaken mixed model money month moral motor mount mouse mouth movie muddle " +
	"muddles mush music mutter mutters naked nasty national nationalism nationalist nationally naval " +
	"nerve nether newly night noble north nose noses notching noted novel nurse occur ocean offer " +
	"officially often older opera orbit order ought outsider outsiders overhang overhangs overhear " +
	"overheard overhears overheat overheated overheats overland overlay overlays overseas oversee " +
	"oversees paint panel panic paper parser parson parsons partiality party patch pats paunch pause " +
	"payable payer payers paying peace persona phase phone photo photograph photographed " +
	"photographic photographs photography piano piece pilot pitch place plain plane plant plate " +
	"plays plaza plying point pond ponds portly possessing possessive possessives pots power prayer " +
	"prayers praying present presents price pride prime print prior prize proof protect protects " +
	"proud prove pusher pushers queen quick quiet quite quote radio rafted raise range rapid ratio " +
	"ready redemption refer relational relay relays repay repays reply resent resented resenting " +
	"resents resound resounded resounding resounds retching retrace retraces retrieve retrieved " +
	"retrieves riling rival river robot rooster roosters rooter rosier rotund round route royal " +
	"ruing rural sack sacks safely salad sand sanded sanding sands sank scale scare scene scope " +
	"score scram scrams sear sears seer sense separately sequencer servile settler settlers seven " +
	"sever sewing shade shake shall shame shape share sharp sheep sheet shelf shell shift shine " +
	"shingle shingles shinning shirt shock shoot short shout shown shrank sigh sighs sight silly " +
	"since sing singe singed singes singing singly sings sinning sitter sitters sixth skill skinning " +
	"sleep slice slight slights slope small smart smell smile smoke smoulder smoulders snake solid " +
	"solve sorer sorry south sowing space spanning spare speak speculator speculators speed spend " +
	"spent spider spiders spite split spoke sport squad staff stage stair stake stare start state " +
	"steal steam steel steep stick still stock stone store storm story straighten straightens " +
	"straighter strand stranded stranding strands stride strides strife striker strikers strip " +
	"strive strives stroke strokes study stuffy style subsequent sugar suite sunny super sweet " +
	"swerve swerves swerving swig swigs tablet tablets tacking taken tale tales taste teach teeth " +
	"tempo terribly thank theft their theme there these thick thief thing those times tired title " +
	"today token topic total touchy tower toxic trace track trade trail train trait trash treat tree " +
	"trees trend trial tribe trick tried trifle trifles triplet triplets troop truck truly trust " +
	"truth uncle unconsciously under understand understands union unite unity unnecessarily until " +
	"upper upset uptight urban usable usage usual valid value vertically video visit vital voice " +
	"wafting wailing waist waiving waning warding warping warring waste watch water weigh weird " +
	"weirdo weirdos wheel where white whittle whittles whole widow width woman women word words " +
	"world worry worse worst worth would wound wriest write writings writs wrong yield young youth"
