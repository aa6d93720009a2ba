/**
 * Phrases with small words in their middle: "stool is still a bit loose", "his tug has been slack", "lost a good bit of
 * weight". A row says what the phrase means, the words it begins with, those it ends with, and those that may stand
 * between. Checked when loaded: every list is non-empty.
 */
export interface Gapped {
  tag: string;
  value: unknown;
  heads: ReadonlySet<string>;
  /** Last words; a last phrase may have several ("like soup"). */
  tails: readonly string[][];
  fill: ReadonlySet<string>;
  /** Most words between. */
  most: number;
}

/** Among the words between: any dog of the kennel. */
export const DOG = '@dog';

const words = (s: string) => s.split(' ');
const set = (s: string): ReadonlySet<string> => new Set(words(s));
const BE =
  "is 's are was were been be being has have had 've looks looked look looking seems seemed still again now a an bit little touch tad way very really pretty quite rather so too fairly kind of kinda sort slightly just all got getting gets gone going went turned turning came come comes out today yesterday this morning tonight both always though however , more somewhat awfully mighty right only almost nearly";
const row = (tag: string, value: unknown, heads: string, tails: string, fill: string, most = 6): Gapped => {
  const ends = tails.split(';').map((t) => words(t.trim()));
  if (!heads || ends.some((e) => !e[0]))
    throw new Error(`a gapped phrase without words for [${tag}, ${String(value)}]`);
  return { tag, value, heads: set(heads), tails: ends, fill: set(fill), most };
};

const STOOL = 'stool stools poop poops poo poos bowels droppings motions motion crap turds';
const PEE = 'urine pee peed peeing pees wee weeing piss pissing urinating';
/** Where the skin is lifted, and whose. */
const SCRUFF = `${DOG} his her shoulder shoulders neck scruff withers back`;
const TUG = 'tug tugs tugline tuglines';

export const GAPPED: readonly Gapped[] = [
  row(
    'sign',
    'bloody-stool',
    STOOL,
    'bloody; red; tarry; blood in it; blood in them; blood streaked',
    `${BE} with has some`,
  ),
  row(
    'sign',
    'loose-stool',
    STOOL,
    'loose; soft; runny; watery; mushy; liquid; sloppy; like soup; like pudding; like water; squirty; like porridge; like oatmeal; pudding; soup; mush; slop; unformed; gone to water',
    `${BE} on the side poss . possibly possible maybe perhaps probably prob might may could seem be`,
  ),
  row(
    'stool-firm',
    true,
    STOOL,
    'firm; normal; solid; formed; fine; good; ok; okay; back to normal; firmed up; firming up; better; well formed; firmer',
    `${BE} perfectly nice and well`,
  ),
  row(
    'sign',
    'dark-urine',
    PEE,
    'dark; brown; red; reddish; brownish; coffee; tea; cola; rusty; rust; bloody; port; chocolate; molasses; maple syrup; dark brown',
    `${BE} the colour color of like strong weak cold as black deep old it out something some stuff that he she`,
    9,
  ),
  row(
    'sign',
    'dehydrated',
    'gums gum',
    'tacky; sticky; dry; pasty; stick; sticking; stick to',
    `${BE} on side the feel feels felt`,
  ),
  row(
    'hydrated',
    true,
    'gums gum',
    'pinked up; pink up; pinked right up; pink right up; pinks up; pinked back up; pink back up; refilled; refill; wet; moist; pink; good; fine; slick; slimy; ok; okay; normal; healthy; nice',
    `${BE} on side the feel feels felt and`,
  ),
  row('sign', 'dehydrated', 'mm mms', 'tacky; sticky; dry', `${BE} : = and pink`, 3),
  row('hydrated', true, 'mm mms', 'pink; moist; pink moist; pink and moist; pink & moist', `${BE} : = and`, 3),
  row('hydrated', true, 'well fully nicely properly plenty perfectly', 'hydrated', 'and still', 1),
  row('hydrated', true, 'hydrated hydration', 'well; fine; good; great; ok; okay; nicely; normal', `${BE} is`, 3),
  row('sign', 'dehydrated', 'eyes eye', 'sunken; sunk in; sunk; hollow', `${BE} in`, 4),
  row('sign', 'dehydrated', 'sunken hollow', 'eyes', 'looking', 1),
  row(
    'hydrated',
    true,
    'skin',
    'snaps back; snapped back; snaps right back; springs back; sprang back; bounces back; goes right back; went right back; falls back; fell back; goes back; went back; drops back; dropped back; flat',
    `${BE} right straight pinch fold on over at the he she ${SCRUFF}`,
    9,
  ),
  row(
    'sign',
    'dehydrated',
    'skin',
    'stays up; stayed up; staying up; stays tented; stayed tented; stays put; slow; slow to go back; slow to fall back; slow to drop; slow to flatten; slow going back; goes back slowly; went back slowly; falls back slowly; fell back slowly; goes back slow; snaps back slowly',
    `${BE} pinch fold on over at the he she ${SCRUFF}`,
    9,
  ),
  row(
    'sign',
    'lame',
    'wo won would ca can could does did is was not refuses refusing',
    'foot down; paw down; leg down; hind down; front down; rear down; back down; hindleg down; left down; right down; it down; that down; that one down; foot on the ground; paw on the ground; it on the ground; leg on the ground',
    "n't not put putting set setting touch place placing to his her its the that right left front hind back rear foot paw leg",
    8,
  ),
  row(
    'sign',
    'infected',
    'eye eyes',
    'watering; watery; runny; running; weeping; weepy; goopy; gunky; mattery; matted; crusty; crusted; glued shut; gummed up; gummy',
    `${BE} on left right side`,
    5,
  ),
  row(
    'sign',
    'licking',
    'wo won would can ca could',
    'alone',
    "n't not leave let be his her its the that those left right front hind back rear foot feet paw paws pad pads web nail toe dewclaw leg wrist hock elbow tail it them outside inside outer inner",
    8,
  ),
  row(
    'sign',
    'lame',
    'holding holds held keeps carrying carries carried lifting lifts lifted',
    'up; off the ground; off the snow; in the air',
    'his her its the that left right front back hind rear foot feet paw leg sore bad lifting holding one up',
    7,
  ),
  row(
    'sign',
    'stiff',
    'feels feel felt feeling',
    'like a rock; like rock; like a board; like wood; like a brick; like rope; like a rope; like cables; like concrete; like cement',
    'just all really kind of kinda pretty still hard',
    2,
  ),
  row('part', 'armpit', 'under underneath', 'arm; arms', 'his her the its both left right front that', 3),
  row(
    'sign',
    'overheated',
    'panting panted pants breathing breathes breathed puffing huffing',
    "wo n't settle; wo n't settle down; wo n't calm down; wo n't quit; wo n't stop; wo n't slow down; would n't settle; would n't settle down; would n't calm down; would n't quit; would n't stop; would n't slow down; ca n't settle; ca n't stop; will not settle; would not settle; will not quit; not settling; did n't settle; could n't settle",
    'hard heavy heavily fast really super so very like crazy mad and still all just a dog train out of breath quickly she he too not',
    8,
  ),
  row(
    'sign',
    'vomiting',
    'brought threw bring brings bringing coughed sicked chucked throws heaved',
    'back up; up',
    'his her their the breakfast supper dinner snack fish food it all meal most of some everything water just straight right whole lot kibble beef broth half that theirs hers',
  ),
  row(
    'sign',
    'rub',
    'hair fur',
    'thin; gone; missing; thinning; rubbed off; worn off; worn; falling out; coming out; coming off; rubbed away; rubbed',
    `${BE} there`,
    4,
  ),
  row(
    'sign',
    'thin',
    'lost losing loses dropped dropping drops shed shedding',
    'weight; condition',
    'a an some little bit lot of too much more his her good considerable fair quite noticeable their any',
  ),
  row(
    'sign',
    'sore',
    'jumped jumps jerked jerks shied shies snatched snatches drew draws backed backs pulled pulls yanked yanks',
    'when i touched; when i touch; when i pressed; when i press; when i squeezed; when i squeeze; when i felt; when i feel; when i bent; when i bend; when i flexed; when i flex; when i handled; when i handle; when i poked; when i poke; when you touch; when you press; when you squeeze; when you feel; when you bend; when you flex; when touched; when pressed',
    'away back off it his her the leg foot paw hard every time',
    4,
  ),
  row(
    'manner',
    'slack',
    TUG,
    'slack; slackened; slackening; loose; hanging; hang; hangs; drooping; droopy; drooped; droop; saggy; sagged; sagging; sag; limp; floppy; dragging; like a clothesline; like a washing line; like a clothes line; like a jump rope; like a jumprope; like a skipping rope; like a noodle; like a wet noodle; like spaghetti; like a hammock; like a dead snake; swinging',
    `${BE} line lines kept keeps hung hangs for most of the for stayed stays on other hand meanwhile hanging swinging drooping sagging`,
    8,
  ),
  row(
    'manner',
    'eager',
    'bark barks barked barking scream screams screamed screaming howl howls howled howling yell yells yelled yelling holler hollers hollered hollering whine whined whining yip yipping',
    'to go; to leave; to run; to be off; to get going; to get moving; to start; to hurry up; to keep going; at hookup; at the hookup; at hook up; in the chute',
    'at me us everyone everybody the hook sled so impatiently loudly hard all again for dear life just like crazy mad and',
  ),
  row(
    'manner',
    'balky',
    'turned turns turning turn spun spinning spins spin swung swinging swings wheeled wheeling flipped flipping',
    'team around; outfit around; string around; lot around; gang around; bunch around; works around; thing around; team round; outfit round; string round; lot of us around; line around',
    'the whole entire damn darn all my our',
  ),
  row(
    'manner',
    'slack',
    'let lets letting',
    'line hang; line sag; line droop; line drag; line go slack; line go loose; tug hang; tug sag; tug droop; tug go slack; tug go loose; tugline hang; tugline sag; tugline droop; tugline go slack; lines hang; tugs hang; line dangle; tug dangle',
    'his her their the its own',
    3,
  ),
  row('manner', 'slack', 'line lines', 'dangling; drooping; sagging; hanging; slack', `${BE} just on`),
  row('manner', 'tired', 'tail tails', 'down; drooping; low; dragging; hanging; droopy', `${BE} hanging`),
  row('manner', 'tired', 'head heads', 'down; low; hanging; drooping', BE, 3),
  row(
    'manner',
    'strong',
    TUG,
    'tight; taut; humming; singing; twanging; tight enough; like a bar; like iron; like steel; bar tight; rock tight; like a fiddle string; like a guitar string; like a banjo string; like a violin string; like a harp string; like a bowstring; like a bow string; like piano wire; like a piano wire; like a wire; like a rod; like a steel rod; like a steel bar; like a steel cable; like a cable; like a drum; like a drumhead',
    `${BE} : line lines kept keeps stayed stays as stretched drawn strung straight`,
  ),
  row(
    'manner',
    'strong',
    'pull pulls pulling pulled work works working worked haul hauls hauling hauled drive drives driving drove lean leans leaning leaned',
    'hard; strong; strongly; well; steady; steadily; solid; solidly; hard enough',
    'really real super so very extra mighty awfully incredibly insanely crazy stupid plenty pretty quite extremely unbelievably amazingly too damn darn awful equally twice',
    3,
  ),
  row(
    'gear-state',
    'chewed',
    'chewed chew chews chewing bit bitten ate eaten eating gnawed gnawing',
    'through; in two; in half; off; to bits; to pieces; to shreds',
    'right clean halfway half nearly almost most of the way all straight three quarters damn darn near part partway',
  ),
  row(
    'condition',
    'calm',
    'wind winds breeze',
    'nil; none; zip; dead; calm; nothing; dropped; died',
    `${BE} : - down to`,
    3,
  ),
  row(
    'condition',
    'flat-light',
    'light',
    'flat; milky; poor; awful; terrible; dead',
    `${BE} totally completely dead absolutely flat`,
  ),
  row('condition', 'blowing', 'blow blows blowing blew', 'snow', 'some the fine loose dry new fresh a lot of'),
  row(
    'condition',
    'windy',
    'wind winds',
    'up; stiff; strong; howling; fierce; brutal; nasty; biting; gusty; gusting; rising; bad; wicked; terrible; raw; bitter; cutting; strengthening; increasing; freshening; something fierce',
    `${BE} picked picking blowing on the off in lake ridge here there`,
    5,
  ),
  row(
    'ate',
    'all',
    'bowl bowls dish dishes pan pans',
    'clean; empty; emptied; shiny; licked shiny; shining; spotless; polished; gleaming; licked; licked clean; licked out; scraped clean; wiped clean; bare',
    `${BE} : - every one were licked scraped wiped`,
  ),
  row(
    'ate',
    'all',
    'licked cleaned emptied polished finished',
    'clean; bowl; bowls; dish; dishes; pan; pans; plate; plates',
    'his her their the its every all both off out up own snow ground ice floor',
  ),
  row(
    'ate',
    'none',
    'turned turns turning turn',
    'down; down flat; away from',
    'his her their hers the it head nose heads noses fish salmon beef meat kibble broth supper dinner breakfast snack food meal',
    3,
  ),
  row(
    'quantity',
    'body-condition',
    'nine 9',
    'point scale; point chart; point thing; point system; point score; point; pointer; scale; chart',
    '- to',
    1,
  ),
  row('act', 'warmed', 'warm warming', 'up', `${DOG} him her them it back all right`, 3),
  row(
    'act',
    'trimmed',
    'did do doing does done',
    'nails; toenails; claws',
    `${DOG} his her their the 's all both of everyone everybody front hind back`,
    6,
  ),
  row('ate', 'all', 'had got gets', 'down', 'his hers theirs it all of half straight', 3),
  row(
    'ate',
    'none',
    'bowl bucket dish pan food snack supper breakfast dinner kibble',
    'untouched; still full; not touched',
    BE,
    3,
  ),
  row('ate', 'none', 'handed gave brought', 'back untouched; back to me untouched', 'his hers theirs it'),
  row(
    'ate',
    'none',
    'left leaving',
    'lying; untouched; where it lay; where it fell',
    'his hers theirs it the whole lot all of food there',
  ),
  row('ate', 'none', 'appetite', 'gone; zero; none; nil; nonexistent; nothing', BE),
  row(
    'ate',
    'some',
    'appetite',
    'poor; down; off; light; low; so so; reduced; picky; lousy; fair; not great; not good; half what it was',
    BE,
  ),
  row(
    'ate',
    'all',
    'appetite appetites',
    'good; great; fine; normal; back; excellent; healthy; strong; hearty; huge; enormous; super; back to normal',
    BE,
  ),
];

/** Rows by the word they begin with. */
export const GAPPED_BY_HEAD: ReadonlyMap<string, readonly Gapped[]> = (() => {
  const by = new Map<string, Gapped[]>();
  for (const g of GAPPED) for (const h of g.heads) by.set(h, [...(by.get(h) ?? []), g]);
  return by;
})();
