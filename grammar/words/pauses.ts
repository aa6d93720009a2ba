import { TAKES_DOG } from './slots.ts';

/** Words that tell where a statement ends and the next begins, in notes without marks. */
const set = (s: string): ReadonlySet<string> => new Set(s.split(' '));

/** Words after which something must still come: no pause stands behind them. */
export const GOES_ON = set(
  'a an the this that these those his her its their our my your each every some any no of in on at from with without to into onto between under around over near for by behind beside alongside inside through across along past since until till than like as and or nor but n & + plus minus / if when while where before after because so who which what how why not ' +
    "is 's are 're was were am 'm be been being has have 've had do does did will 'll would 'd can could might may should must shall " +
    'definitely certainly clearly obviously simply basically very really pretty quite too more less most just only even still also i we he she they you never always both all half another other same about around approx above below except bar excepting exc incl including per definitely certainly clearly basically simply unfortunately fortunately luckily sadly maybe perhaps probably possibly versus vs named called whose although though whether whereas facing underneath blowing fresh new old',
);
/** Verbs by which a statement with a subject is known. */
export const FINITE = set(
  "is 's are 're was were has have 've had does do did will 'll would 'd can could might may should must ca wo ai got gets get goes went came comes looks looked feels felt seems seemed keeps kept ran runs ate eats drank drinks took takes pulled pulls stays stayed stopped sat started starts left lost threw tore broke ripped chewed split refused picked finished barked slipped fell turned wants wanted likes loves needs needed hates barely hardly limps limped coughed coughs vomited puked barfed licked flinched shook snapped growled rode rides rests leads led swung trotted loped paced walked jumped quit balked cut hit bit weighs weighed popped spit spat dropped licks worked works managed nibbled left drained emptied gobbled wolfed cleaned polished swallowed sipped licked lapped inhaled turned ignored sniffed yelped whined stepped caught leaned drove drives gave gives says said",
);
/** Small words between a name and its verb. */
export const BETWEEN = set(
  'still also just never really only even already then now always actually kind sort ever yet both all too not meanwhile though however himself herself themselves',
);
/** Verbs that take a dog as their object: the name behind them begins nothing. */
export const TAKES = new Set([
  ...TAKES_DOG,
  ...'join joins joined joining stretched changed consider considered popped stuck stick tell tells told says said say think thinks thought guess reckon know knows knew hope hopes see saw seen heard watch watched hugged hug rubbed iced felt feel checking check called call calls asked ask shown send sent carried carry picked lifted tied tie clipped snapped caught get gets got getting take takes took run runs driving drove drives drive has have had unclipped reharnessed parked swung swing start starts starting using use used need needs want wants let lets give gives giving load loads drop drops move moves wash washed soaked soak salved bandage bandaged treat treated bandaging massaging stretching trimming checking resting leaving keeping taking putting moving loading dropping booting'.split(
    ' ',
  ),
]);
/** Words that stand before a name within its own statement. */
export const BEFORE_NAME = set(
  'want wanted wants otherwise then now also poor old little big meanwhile anyway anyways okay ok well uh um er course however again tomorrow today tonight yesterday although though whereas whether whose nearly almost underneath because since if that both neither only even just mr mrs miss dear good sweet silly young ' +
    'monday tuesday wednesday thursday friday saturday sunday morning afternoon evening night week oh hey sorry left boy girl',
);
/** Nouns that take a clause without a word between: "the way he looked", "the line I hung". */
export const NOUN_OF_CLAUSE = set(
  'way time day look thing things everything anything something minute moment second place reason one ones night year morning stuff kind place part spot second first last all week trip what guess think thought know knew hope wish say says said swear bet figure figured reckon told tell tells believe suppose see guessing mean means sure glad afraid wonder promise happy',
);
/** Verbs by which what was done begins without its subject. */
export const ACTIONS = set(
  'massaged rubbed wrapped trimmed cleaned cooled packed smeared stretched changed put gave took loaded dropped booted swapped moved watered fed snacked checked stopped replaced clipped washed rinsed dabbed slathered iced warmed treated bandaged flushed iodined salved taped',
);
/** Words that open something new wherever they stand. */
export const OPENERS = set('okay ok anyway anyways anyhow meanwhile oh');
/** What a note turns to without an article. */
export const TOPICS = set('fog sun rain trail wind snow sky weather feet gums temp temperature tugs');
/** Words that begin a clause that hangs on another. */
export const SUBORDINATE = set('if when while after before since because as once until though although whenever by');
/** Words of time and place that lead into a statement without ending it. */
export const LEADS_IN = set(
  'at on in around about after before last this since yesterday today tomorrow tonight next monday tuesday wednesday thursday friday saturday sunday so then now well okay ok and but also just right for one two three four five from when if while by after um uh oh no yes mile km kilometre kilometer mi k',
);
/** Behind "there is": what there is. */
export const IS_SOME = set('a an no some nothing not one two three any lots plenty ice snow water blood');
/** Words that do not begin a heading. */
export const NO_HEADING = set(
  'at on in around about after before last this since yesterday today tomorrow tonight next monday tuesday wednesday thursday friday saturday sunday so then now well and but also just from by um uh oh no yes',
);
/** Words that mostly go on, but end a statement where a name follows: "half of his | Rye turned away". */
export const AFTER_OWN = set('his hers theirs that this him them too more half most all less');
