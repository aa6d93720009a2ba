/** When a word that can mean a sign does mean it: most of them mean other things too. */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';
import { limbHeld, muscleHard } from './sign-plain.ts';
import { guards, nearItem } from './sign-words.ts';

const NEEDS_SITE = new Set(
  'lifting his;lifting her;lifts his;lifts her;keeps lifting;no weight on;iced;iced up;icing up;ices up;carrying his;carrying her;holding up;holding up his;holding up her;holding up a;guarding;not using;short on;skipping on;ginger on;gingerly;uneven;hopping;dragging the;off in;off on;short in;short up;warm;warmth;warmer;hot;burning;toasty;filled;filled up;filling;fat;thick;lump;bump;lumpy;puff;ballooned;blown up;fluid;enlarged;discharge;runny;crusty;smelly;weeping;rough;wear;wearing;worn;worn down;worn thin;worn smooth;pink;pinkish;pinking;pink spot;red;raw spot;irritated;angry;reddish;thinning;chapped;skinned;scuffed;scuff;broke;broken;breaks;break;torn;tore;tear;tearing;tears;ripped;rip;rips;ripping;missing;lost;caught;hanging off;snapped off;knocked off;pulled off;broke off;broken off;split off;tear in;frozen;frosted;frost;tight;tightened;tightening;tightness;knots;knot;knotty;rigid;locked up;wooden;cut up;slit;slits;bit;bitten;bite;nick;nicks;nicked;stabbed;scratch;scratches;scratched;scrape;scrapes;scraped;rubbed;rubbed off;rubbing;rub;rubs;heat;heat in;cracked;cracking;crack;icing;ice;balled;ice packed;packed with snow;packed with ice;caked;clumps;clumped;snow packed;licks;lick;licked;nibbling at;holes;pinhole;hanging by a thread;hanging by a string;hanging on by a thread;dangling;skin off;nibbled at;nibbles on;nibbling on;nibbled on;gnawing on;gnaws on;gnawing at;gnaw at;gnaws at;licked on;licked at;lick at;lick on;mouthing at;working at;obsessing over;strain;strained;twisted;tweaked;wrenched;pulled a muscle in;strained a muscle in;bothering;worrying;nursing;pulling at;messing with;going after;bothering with;short through;red;not level;hurt;painful;sore;sores;bumps;thickened;swell;engorged;cramp;blisters;wound'.split(
    ';',
  ),
);
/** These stand without a part too when a dog is their subject. */
const DOG_ENOUGH = new Set([
  'iced up',
  'icing up',
  'sore',
  'hurt',
  'painful',
  'tight',
  'sores',
  'cramp',
  'rub',
  'rubs',
  'icing',
  'worn',
  'balled',
  'uneven',
  'hopping',
  'wound',
]);
const WARMING = /^(pack|packs|lamp|lamps|wrap|wraps|bag|bottle|bottles|gun|compress|towel|towels)$/;

/** "no heat in it", "lick it", "warm there": the word behind points back at a part told before, also over a longer way. */
function pointsBack(f: Frame, m: Mention): boolean {
  const k = /^(in|on|at|to|of|about|around|near)$/.test(f.low(m.to)) ? m.to + 1 : m.to;
  return (
    /^(it|that|there|them|either)$/.test(f.low(k)) && /^([.,;!?]|and|but|so|or|at|now|today|yet|)$/.test(f.low(k + 1))
  );
}

/** Is the mention a sign here? */
export function signStands(f: Frame, m: Mention, sites: readonly Site[], found: readonly ReadFinding[]): boolean {
  const words = f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .filter((w) => w !== '-')
    .join(' ');
  const g = { f, m, words, sites, prev: f.low(m.from - 1), next: f.low(m.to), found };
  const guard = guards[words] ?? (m.tag === 'sign-off' ? guards.off : undefined);
  if (guard && !guard(g)) return false;
  if (/^(h[eo]ld|keep|carr|lift)\w* .*(up|ground|snow|air)$/.test(words) && !limbHeld(f, m)) return false;
  if (/^feel\w* .*like /.test(words) && !muscleHard(g)) return false;
  // "2 mm dry": a length
  if (/^mms? /.test(words) && f.quantityAt(m.from - 1)) return false;
  if (!guard && NEEDS_SITE.has(words)) {
    const reach = pointsBack(f, m) ? 40 : 12;
    const carried = found.some((r) => r.site && m.from - r.to < reach && r.from < m.from);
    const dog = DOG_ENOUGH.has(words) && f.lastDogs(m.from);
    if (!sites.some((s) => s.part || s.end) && !carried && !dog) return false;
  }
  // "warmed her with a heat pad": a thing for warming
  if (/^(heat|hot|warm)$/.test(words) && (WARMING.test(g.next) || (words === 'heat' && /^pads?$/.test(g.next))))
    return false;
  // "rubbed his ears to warm them up"
  if (words === 'warm' && (f.m.from('act', m.from)?.to ?? 0) > m.to) return false;
  // Booties and gear have their own ways to wear and tear.
  if (/^(torn|worn|cut|split|rub|lost)$/.test(m.value) && bootieNear(f, m, sites)) return false;
  if (/^(torn|worn|cut|split)$/.test(m.value) && !sites.some((s) => s.part && s.part !== 'foot') && nearItem(f, m))
    return false;
  if (words === 'twisted' && gearTwisted(f, m)) return false;
  // "he licked my eyeball"
  if (m.value === 'licking' && /^(my|me|our|us|your|you)$/.test(f.low(f.low(m.to) === 'at' ? m.to + 1 : m.to)))
    return false;
  if (m.value === 'licking' && f.m.at('ate', m.from) && !sites.length) return false;
  return true;
}

/** "it was only the bootie twisted", "a twisted neckline": what it wears, not the dog. */
const gearTwisted = (f: Frame, m: Mention): boolean =>
  [m.from - 1, m.from - 2, m.to].some((k) => f.m.at('bootie', k) || (f.m.at('item', k) && !f.siteAt(k)));

function bootieNear(f: Frame, m: Mention, sites: readonly Site[]): boolean {
  if (m.value === 'rub') return false;
  const site = sites[0];
  if (site?.part && site.part !== 'foot' && site.part !== 'leg') return false;
  for (let k = Math.max(0, m.from - 6); k < Math.min(f.tokens.length, m.to + 7); k++) {
    if (f.m.at('bootie', k) && !f.strongBetween(Math.min(k, m.from), Math.max(k, m.from))) return true;
  }
  return (
    /^(torn|worn|lost)$/.test(m.value) &&
    (!site?.part || site.part === 'foot') &&
    f.m.of('bootie').some((b) => b.from < m.from)
  );
}
