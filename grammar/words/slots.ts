/**
 * Which words stand around a name and around a thing. Dogs are called Storm, Biscuit and Miles; whether the word is the
 * dog is decided by its slot, never by its capital letter.
 */
const set = (s: string): ReadonlySet<string> => new Set(s.split(' '));

/** Before a thing, not before a call name: "the storm", "a biscuit", "her boots", "will ask", "twelve miles". */
export const BEFORE_THING = set(
  "a an the this these some any every another what my your his her its their i we you they he she it will would can could should must might 'll please much many more less such per cannot",
);
/** Before a thing when nothing after it speaks for a dog: "good trip", "mad dash", "big patch". */
export const ADJECTIVE_BEFORE = set(
  'good big mad bad nice long short great quick small warm hot cold wet dry fresh thick light heavy real first last next whole same own new pure fat fine that of no winter summer spring fall mountain ice snow rusty old-time of got get getting gets',
);
/** After a word that is then a thing or a verb: "otter tracks", "patch of", "scout the creek", "ask if". */
export const AFTER_THING = set(
  'of tracks track brush tea woods wood tree trees forest bushes bush grove country bread season warning clouds scat den stew meat skin me us them if whether about the ahead that this hard-boiled root seeds berries leaves street road river lake creek hill valley pass point cove bay island mountain mountains ridge flats cabin lodge inn hut station',
);
/** After a call name: what a dog is, has or does. */
export const AFTER_DOG = set(
  "'s is was are were has had have does did do will wo 'll would could ca can should might may and & + / , : ; . - – — n lost threw pulled pulls pulling looks looked looking got gets getting goes going went came comes keeps kept keep just only still also already really never both in at up on off back out left right l r lf rf lh rh lr rr ran runs running took takes turned started seems seemed felt feels needs wants wanted wouldn't next too again then but to with weighed weighs ripped tore chewed cut split broke sat quit balked slipped fell who now today tonight tomorrow yesterday ain't not barely hardly alone moved moves joined swapped picked drank ate refused hates loves likes thinks knows acts stands jumps stopped stops decided settled eats drinks slept leaned leans limps limped coughs coughed vomited barks barked digs dug dropped drops led leads handled finished finishes passed tried coming starting getting favoring favors hit hits missed skipped turned hasn't does bit bites snapped growled shook rolled jumped leaped leapt figured managed he she caught totally literally actually finally suddenly basically completely always usually mostly generally normally often rarely seldom frequently occasionally constantly sometimes kinda sorta apparently probably absolutely immediately seriously happily slowly quickly nearly almost definitely clearly simply even ever once twice again snagged stole grabbed landed spit spat puked barfed threw whined yelped nipped wiggled chased spotted settled enjoyed stayed stays sits sat rides rode weighs ! ?",
);
/** Adjectives that are also call names after "it's", "got" and the like: weather and luck, by their ending. */
export const COPULA = set(
  "is 's was are were looks look got gets get getting turned gone feels felt so very really pretty bit too been be seems quite",
);
/** Adjectives of weather, ground and luck that are call names too. */
export const ADJECTIVE_Y = set(
  'sunny misty foggy cloudy stormy windy breezy frosty chilly icy snowy rainy drizzly slushy muddy rocky sandy dusty smoky hazy murky gusty blustery squally crusty punchy lumpy bumpy hilly grassy swampy boggy soggy mossy shady dewy balmy steamy nippy toasty lucky happy crazy easy steady funny fancy crispy spicy salty rusty dirty cosy cozy rowdy feisty perky',
);
/** Impersonal subjects: "it's misty", "the trail's sandy". */
export const IMPERSONAL = set(
  'it its that there else everything trail weather sky lake river we light day morning night afternoon',
);
/** After a person's name that is meant as a verb: "hope it", "hope she". */
export const AFTER_WISH = set('it its he she they the we so that to for i not this you there nobody everyone');
/** After "'s" of "is" or "has". */
export const VERB_AFTER_S = set(
  'been got gone lost a an the still already not just really very pretty so all only also now back in on up at out too never always doing going looking getting trying had having being taken eaten drunk thrown no one both done kept come turned home running pulling riding limping moved moving off about quite kind kinda probably maybe again barely hardly fine ok good great down ours mine like with done developed coming starting keeping holding chewed chewing ripped torn wearing worn split cut broken',
);
/** After "her" as an object: "moved her up", "left her with Pelle". */
export const AFTER_OBJECT = set(
  'up back down to in into out at off on again and when if once before after with w until till for from here there tomorrow today tonight now home over . , ; ! ? : so but because since as this inside that then a the we i she he it while next too through around along by too well still anyway - / +',
);
/** Verbs that take a dog as their object. */
export const TAKES_DOG = set(
  'offered offer kneaded iced stitched bandaged bootied rebooted coaxed loaded load loading dropped drop dropping moved move put putting pulled swapped massaged wrapped weighed weigh fed watered snacked gave give left kept keep took take ran hooked booted boot harnessed checked rested rest trimmed cleaned had have has bagged bag replaced stretched trade traded with and beside behind on for by to from than except but minus plus like unhooked hitched bumped brought switched told let',
);
