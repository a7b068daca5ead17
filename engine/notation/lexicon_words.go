package notation

// wordClasses are words that stand for one another in a phrase.
var wordClasses = []struct{ class, words string }{
	{"<fall>", "drop fall land"},
	{"<foot>", "foot heel toe"},
	{"<go>", "bounce carry come continue deflect drift fly go head pass rebound sail travel"},
	{"<hit>", "ball contact hit touch"},
	{"<net>", "net tape"},
	{"<wholly>", "completely entire entirely fully totally wholly"},
}

// fillers carry nothing by themselves: prepositions, auxiliaries, adverbs.
const fillers = "able about above again all along already also am any anybody anyone are around at away back be " +
	"because become been behind being between clearly close could course decide did do does doing " +
	"done down during each either enough even ever everyone exactly far for from got had happen has " +
	"have having here i if in inside instead is its itself just kind know like look lot made make " +
	"many maybe me might moment more most much must my near need new now of often on one only our " +
	"own part people piece place point quite rather ready really same see seem should since " +
	"situation small some somebody someone something soon sort still such sure take than thank " +
	"thanks there thing through to toward towards try under until upon usually very was way well " +
	"were where whether who whom will with within would yes yet you your"

// sceneryWords are known not to matter to a ruling.
const sceneryWords = "actually angry anyway apparently argued arguing assistant athletic awkward awkwardly backpedal " +
	"backpedals balance basically beautiful big boys championship chase chased chases chasing coed " +
	"complained corner crazy curious debate deciding deep discussion district districts dive dives " +
	"diving else everybody fans fast film final finals five folks freshman friday full funny furious " +
	"game girls great guys gym haha happy hard hey hi high honestly huge hustle hustles kids last " +
	"level literally lol long low mad match newbie nice night obviously officiated officiating " +
	"parent parents partner playoff playoffs quick quickly ran rec recreational refereed reffing " +
	"regional regionals replayed rookie running runs saturday saw scenario score scramble scrambling " +
	"screamed screaming season semifinal senior short slow slowly softly sophomore speed sprawl " +
	"sprawling state strong sunday tall tie tied today tonight tough tournament turn turning turns " +
	"upset video watched watching week weekend wild wondering worked working yelled yelling " +
	"yesterday"

// skipped are the words that may stand between the words of a phrase.
const skipped = "a accidentally actually also an are barely be been being clearly easily fully had has have her " +
	"his is its just legally my now only quickly really right simply slightly so still the then very " +
	"was were will would"

// leftAlone are common words near to a word of the trade; none is corrected.
const leftAlone = "about above afternoon alone among aside beach bead bear beat belt bend best bite blame blast " +
	"bleach blind board boats bone book born bowl brain brave bread brick bride brief broad brown " +
	"build burn cabin cable camp care carve case chain chalk charm chase cheap check cheer child " +
	"clash clear clock cloth cloud coast color could count cover crack craft crash cream crime cruel " +
	"dance death devil dirty draft drain drama dream dress drink drive eager early earth eight " +
	"entire equal event every exact extra faith false favor feast fence fever field fight fist flash " +
	"flat fleet flesh float flood focus force forget forth found frame fresh fruit funny giant glass " +
	"globe gloves grace grade grain grand grant grass grave great green greet grief gross group " +
	"grown guard guess guest habit happy harsh haste heart heavy hello hence hobby honor horse hotel " +
	"house human humor ideal image inner issue joint judge juice knife label labor large laser later " +
	"laugh layer learn lease least leave lemon level light likes limit lines links lists lived liver " +
	"local logic loose lower lucky lunch magic major maker march match maybe mayor medal media mercy " +
	"metal meter might minor minus mixed model money month moral motor mount mouse mouth movie music " +
	"naked nasty naval nerve newly night noble north noted novel nurse occur ocean offer often older " +
	"opera orbit order ought paint panel panic paper party patch pause peace phase phone photo piano " +
	"piece pilot pitch place plain plane plant plate plays plaza point power price pride prime print " +
	"prior prize proof proud prove queen quick quiet quite quote radio raise range rapid ratio ready " +
	"refer rival river robot round route royal rural salad scale scare scene scope score sense seven " +
	"shade shake shall shame shape share sharp sheep sheet shelf shell shift shine shirt shock shoot " +
	"short shout shown sight silly since sixth skill sleep slice slope small smart smell smile smoke " +
	"snake solid solve sorry south space spare speak speed spend spent spite split spoke sport squad " +
	"staff stage stair stake stare start state steal steam steel steep stick still stock stone store " +
	"storm story strip study style sugar suite sunny super sweet taken taste teach teeth tempo thank " +
	"theft their theme there these thick thief thing those times tired title today token topic total " +
	"tower toxic trace track trade trail train trait trash treat trend trial tribe trick tried troop " +
	"truck truly trust truth uncle under union unite unity until upper upset urban usage usual valid " +
	"value video visit vital voice waist waste watch water weigh weird wheel where white whole widow " +
	"width woman women world worry worse worst worth would wound write wrong yield young youth"
