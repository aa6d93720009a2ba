/** `npm run score`: one line a corpus file, as written and as a recogniser would write it. `-- --errors 10` shows what differs. */

import { explain } from '../../grammar/explain.ts';
import { asHeard, casesOf, contextOf, corpusNames, outputOf } from './corpora.ts';
import { score } from './score.mjs';

const flag = process.argv.indexOf('--errors');
const errors = flag < 0 ? 0 : Number(process.argv[flag + 1] ?? 0);
const pc = (x: number) => (100 * x).toFixed(1).padStart(6);
console.log(`${'file'.padEnd(22)} notes  exact     P      R     F1  find P find R | unpunctuated F1  exact`);
for (const name of corpusNames()) {
  const cases = casesOf(name);
  const s = score(cases, outputOf(cases));
  const heard = cases.map((c) => ({ ...c, text: asHeard(c.text) }));
  const h = score(heard, outputOf(heard));
  const f = s.by.finding ?? { p: 1, r: 1 };
  console.log(
    name.padEnd(22),
    String(s.notes).padStart(5),
    pc(s.exact),
    pc(s.strict.p),
    pc(s.strict.r),
    pc(s.strict.f),
    pc(f.p),
    pc(f.r),
    '|',
    pc(h.strict.f).padStart(14),
    pc(h.exact),
  );
  for (const d of s.differing.slice(0, errors)) {
    console.log(`\n${d.id}: ${d.text}\n  missed ${d.missed.join('  ') || '-'}\n  extra  ${d.extra.join('  ') || '-'}`);
    const c = cases.find((x) => x.id === d.id);
    if (c) console.log(explain(c.text, contextOf(c)).replace(/^/gm, '    '));
  }
}
