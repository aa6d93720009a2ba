/**
 * Trade words that a recogniser writes as another word, and where they may be taken for what was meant. Pairs that only
 * sound alike in general stay out: a row is here because the trade says the word. The pairs ate/eight, lead/led,
 * paws/pause, gait/gate, sore/soar, weight/wait, toe/tow, tail/tale, feet/feat, team/teem, bootie/booty, muscle/mussel,
 * bruise/brews and packed/pact are facts from a dictation project's list of homophones (MIT); "buddies" for booties, "breast" for
 * wrist, "smack" for snack and "cable" for kibble are what a small offline recogniser wrote; the rest is from memory.
 *
 * A place is one or more conditions that must all hold: `<x` right before stands a word of class x, `<<x` two before,
 * `>x` right behind, `>>x` two behind, `~x` within four words in the sentence, `!` in front of any of these for "not"; `=x` is the word x itself.
 * `|` parts places of which one is enough.
 */
import { LEXICON_WORDS } from './index.ts';
import { NUMBERS } from './numbers.ts';

/** Words that stand around. `#` is any number, `.` an end of the note or of a part of a sentence, `dog` a dog as the
 * caller knows it; the classes' words stand here once. */
const CLASSES: Record<string, string> = {
  side: 'left right lf rf lh rh both',
  end: 'front fronts hind hinds rear fore back',
  part: 'wrist wrists shoulder shoulders elbow elbows triceps neck hip knee hock leg legs foot feet paw paws pad pads web webs webbing toe toes nail nails dewclaw wrap carpus thigh pastern',
  foot: 'foot feet paw paws pad pads web webs webbing toe toes nail nails leg legs',
  whose: "his her its their 's everybody's everyone's all four",
  be: "is was 's are were still bit little slightly pretty very really looks feels felt seems got went going gone",
  sign: 'sore stiff swollen lame limping tender hot puffy split cut raw cracked bleeding warm tight worn torn rub rubbed chafed cold iced off better worse fine good ok okay clean',
  put: 'put putting on off wearing wore lost lose losing threw pulled change changed changing new torn tore fresh spare need needs replaced fit kicked took chewed',
  eat: 'ate eat eats eating eaten refused refuse refuses took finished all her his their some half of more cleaned licked left',
  refuse: 'refused refuses ate took wanted skipped left want for at of fish beef her his their a the salmon',
  food: 'all her his their everything some half most the well good none nothing fine kibble fish beef snack salmon meat fat it',
  drink: 'drank drink lapped broth water warm cup litre liter bowl of drinking drinks',
  be2: "is was 's are were been started keeps kept still",
  gait: "off short uneven stiff funny wrong smooth even trot good odd choppy looks looked is was change changed his her 's",
  pounds: 'pounds pound lb lbs kilos kilo kg kgs',
  time: 'minute minutes min mins hour hours second seconds days day for till until',
  unit: 'miles mile pounds dogs hours below above minutes degrees booties kilometers kilometres km inches bags cups feet',
  mile: 'mile',
  at: 'at near by around about past since until till',
  place: 'in at up single double on',
  gear: 'chewed chew chews broke broken snapped tangled new his her harness harnesses rub rubs rubbing rubbed tore torn neckline necklines wore',
  trail: 'trail snow ice crust river road lake hill punchy soft hard fast slow surface base',
  line: 'line lines',
  harness: 'harness harnesses bootie collar neckline',
  soft: 'loose soft bloody runny blood her his',
  ice: 'ice',
  well: 'hard well strong good great steady steadily together',
  hide: 'side dog dogs turn corner fork bend bank line lane',
  the: 'the a an my your this that some any no',
  mine: 'my your i me our',
  medicine: 'put on some rubbed applied used pad pads web webs wrist foot split feet',
  tail: 'up down tucked wagging low between her his dragging',
  pack: 'pack packed packing',
  claw: 'claw claws',
  point: 'number # and on in',
  article: 'a an',
  size: 'small tiny little deep bad new nasty slight a',
  tender: 'sore swollen tender puffy stiff wrapped',
  verb: 'be power not have',
  eye: 'eye eyes ear',
  refused: 'refused refuse refuses skipped wanted',
  eaten: 'ate eat eats eaten eating bags bag finished refused scoop scoops bowl fed',
  eaters: 'she he they everyone everybody dogs leaders team rest others',
  direction: 'close way down up back over out next according',
  care: 'shoulder shoulders wrist wrists triceps back neck elbow hip thigh muscles',
};

/** Heard, what it means, and its places. */
const ROWS: readonly (readonly [heard: string, means: string, near: string])[] = [
  // Feet and booties
  ['buddies', 'booties', '~put ~foot | ~put ~end | <put !<=the | >put | <whose'],
  ['buddy', 'bootie', '~put ~foot | ~put ~side | ~put ~end'],
  ['beauty', 'bootie', '~put ~foot | ~put ~side | ~put ~end | <whose >=on ~put'],
  ['beauties', 'booties', '~put'],
  ['bodies', 'booties', '~put'],
  ['movie', 'bootie', '~put ~foot | ~put ~side ~end'],
  ['movies', 'booties', '~put'],
  ['pause', 'paws', '<side | <end | <whose !<be | >sign !<=the | <sign'],
  ['pores', 'paws', '<side | <end | <whose'],
  ['feat', 'feet', '<side | <end | <whose | >sign | <sign | ~sign'],
  ['tow', 'toe', '<side | <end | <whose ~sign | ~sign ~side !>line'],
  ['tows', 'toes', '<side | <end | <whose | ~sign'],
  ['webb', 'web', '<side | <end | <whose | ~side'],
  ['wed', 'web', '<side ~sign | <end'],
  ['pat', 'pad', '<end | <side ~sign'],
  ['pats', 'pads', '<end | <side | ~sign ~foot'],
  ['mail', 'nail', '<end | <side ~sign'],
  ['food', 'foot', '<end <<side'],
  ['claws', 'nails', '<=long'],
  ['due', 'dew', '>claw'],
  ['do', 'dew', '>claw'],
  // The body
  ['breast', 'wrist', '<side | ~side ~sign | ~tender'],
  ['rest', 'wrist', '<side >be | <side >sign | <tender'],
  ['risk', 'wrist', '<side'],
  ['wrest', 'wrist', '<side | ~sign'],
  ['soldier', 'shoulder', '<side'],
  ['soldiers', 'shoulders', '<side | <whose | ~sign'],
  ['folder', 'shoulder', '<side'],
  ['oboe', 'elbow', '<side'],
  ['hawk', 'hock', '<side'],
  ['hawks', 'hocks', '<side | <whose'],
  ['hog', 'hock', '<side'],
  ['mussel', 'muscle', '~side | ~sign | ~part'],
  ['mussels', 'muscles', '~side | ~sign | ~part'],
  ['tale', 'tail', '<whose | >tail'],
  ['hand', 'hind', '<side !>hide !<<mine !>eye'],
  ['high', 'hind', '<side !>hide'],
  ['find', 'hind', '<side !>hide'],
  ['hint', 'hind', '<side'],
  ['mind', 'hind', '<side'],
  ['timed', 'hind', '<side'],
  ['font', 'front', '<side'],
  ['frond', 'front', '<side'],
  ['gate', 'gait', '<whose | ~gait !<the !~at !~=of'],
  // Signs
  ['soar', 'sore', '~part | ~side | <be'],
  ['sour', 'sore', '>part | <be ~part'],
  ['lane', 'lame', '<be ~part | <be ~side | <be >.'],
  ['laim', 'lame', '<be | ~side'],
  ['stuff', 'stiff', '<dog >place ~side | >place ~end !<=the | >place ~part !<=the | <be ~part'],
  ['sullen', 'swollen', '~part | ~side'],
  ['stolen', 'swollen', '<be ~part'],
  ['splint', 'split', '~foot !<put'],
  ['spit', 'split', '<size ~foot'],
  ['slit', 'split', '~foot'],
  ['stole', 'stool', '<soft'],
  ['stools', 'stool', '<soft'],
  ['coffin', 'coughing', '<be2'],
  ['painting', 'panting', '<be2 | >well'],
  ['brews', 'bruise', '<article | ~part'],
  ['brewed', 'bruised', '<be'],
  ['rob', 'rub', '<harness | <article ~part'],
  ['robe', 'rub', '<harness'],
  ['rug', 'rub', '<harness'],
  // Eating and drinking
  ['eight', 'ate', '<dog >food | <eaters >food'],
  ['8', 'ate', '<dog >food | <eaters >food'],
  ['hate', 'ate', '<dog >food'],
  ['ate', 'eight', '<mile | >unit'],
  ['smack', 'snack', '<refuse | ~refused'],
  ['smacks', 'snacks', '<refuse | ~refused'],
  ['cable', 'kibble', '~eaten'],
  ['kindle', 'kibble', '~eaten'],
  ['cobble', 'kibble', '~eaten'],
  ['nibble', 'kibble', '<whose ~eaten | <=the ~eaten'],
  ['froth', 'broth', '~drink'],
  // The team, the gear, the trail
  ['led', 'lead', '<place | <side'],
  ['leed', 'lead', '<place | <side'],
  ['teem', 'team', '<=the | <whose | <place'],
  ['will', 'wheel', '<=in !>verb'],
  ['weal', 'wheel', '<=in | <side'],
  ['swim', 'swing', '<=in'],
  ['sling', 'swing', '<=in'],
  ['wing', 'swing', '<=in'],
  ['message', 'massage', '~care'],
  ['messaged', 'massaged', '~care | ~side'],
  ['appointment', 'ointment', '~medicine'],
  ['hardness', 'harness', '~gear'],
  ['harvest', 'harness', '~gear'],
  ['decline', 'neckline', '~gear'],
  ['tag', 'tug', '>line'],
  ['gain', 'gang', '>line'],
  ['pooling', 'pulling', '>well'],
  ['polling', 'pulling', '>well'],
  ['paunchy', 'punchy', '~trail | <be'],
  ['bunchy', 'punchy', '~trail | <be'],
  ['heart', 'hard', '>pack'],
  ['pact', 'packed', '<well | ~trail'],
  ['where', 'glare', '>ice <. !>>be | >ice <# !>>be | >ice <unit !>>be'],
  ['layer', 'glare', '>ice'],
  ['my', 'mile', '>number <at'],
  ['mild', 'mile', '>number <at'],
  ['mail', 'mile', '>number'],
  ['male', 'mile', '>number <at'],
  // Numbers and weights
  [
    'wait',
    'weight',
    '!<=no !<=oh >number >>pounds | !<=no !<=oh !<=, >number >>. | <whose >number | <=body | <whose >be',
  ],
  ['blow', 'below', '<number'],
  ['bellow', 'below', '<number'],
  ['won', 'one', '<mile | >unit'],
  ['too', 'two', '<mile | >unit'],
  ['to', 'two', '<mile >. | >=miles !<direction'],
  ['for', 'four', '<mile >. | >=below'],
];

/** Looks at the words around token `i`; filled in by the step that reads them. */
export interface Around {
  /** The word `k` places away, '' at an end of the sentence. */
  at(k: number): string;
  /** Is the word `k` places away (the last word) of a dog that the caller knows? */
  dog(k: number): boolean;
}
const SETS = new Map(Object.entries(CLASSES).map(([name, words]) => [name, new Set(words.split(' '))]));
const WITHIN = 4;

const isNumber = (word: string) => /^[-+−]?\.?\d/.test(word) || NUMBERS.has(word);

function of(name: string): (around: Around, k: number) => boolean {
  if (name === '.') return (a, k) => /^[.,;!?]?$/.test(a.at(k));
  if (name === 'number' || name === '#') return (a, k) => isNumber(a.at(k));
  if (name.startsWith('=')) return (a, k) => a.at(k) === name.slice(1);
  if (name === 'dog') return (a, k) => a.dog(k);
  const words = SETS.get(name);
  if (!words) throw new Error(`no class of words is called "${name}"`);
  return (a, k) => words.has(a.at(k));
}

type Test = (around: Around) => boolean;
function condition(text: string): Test {
  const [, not, where, name] = /^(!?)(<<|>>|<|>|~)(\S+)$/.exec(text) ?? [];
  if (!where || !name) throw new Error(`"${text}" is no place`);
  const is = of(name);
  const places = where === '<' ? [-1] : where === '<<' ? [-2] : where === '>' ? [1] : where === '>>' ? [2] : [];
  if (where === '~') for (let k = 1; k <= WITHIN; k++) places.push(-k, k);
  return (a) => places.some((k) => is(a, k)) !== Boolean(not);
}

/** One word that may have been heard for another. */
export interface Homophone {
  heard: string;
  means: string;
  /** Does one of the row's places hold here? */
  fits: Test;
}

/** Rows by the word that was heard. Throws when a row is wrong, and prints it. */
export function compileHomophones(rows: readonly (readonly [string, string, string])[]): Map<string, Homophone[]> {
  const out = new Map<string, Homophone[]>();
  for (const [heard, means, near] of rows) {
    const where = `homophone "${heard}" → "${means}" (${near})`;
    if (heard === means) throw new Error(`a word that means itself: ${where}`);
    if (!LEXICON_WORDS.has(means) && !NUMBERS.has(means) && means !== 'below')
      throw new Error(`the meaning is no word of the lexicon: ${where}`);
    const list = out.get(heard) ?? [];
    if (list.some((h) => h.means === means)) throw new Error(`the same pair twice: ${where}`);
    try {
      const places = near.split('|').map((p) => p.trim().split(/\s+/).map(condition));
      list.push({ heard, means, fits: (a) => places.some((tests) => tests.every((t) => t(a))) });
    } catch (error) {
      throw new Error(`${(error as Error).message}: ${where}`);
    }
    out.set(heard, list);
  }
  return out;
}

export const HOMOPHONES = compileHomophones(ROWS);
