/**
 * `npm run explain -- "note text" [--lineup "June lead left, Moss lead right"] [--dogs "June F, Moss M"]` prints the steps of a
 * reading: what was heard, mentions, dogs, sites, which rule took what, what was left.
 */
import { parseArgs } from 'node:util';
import { explain } from '../explain.ts';
import { type Context, contextSchema } from '../index.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    context: { type: 'string' },
    dogs: { type: 'string' },
    lineup: { type: 'string' },
    people: { type: 'string' },
    units: { type: 'string' },
    at: { type: 'string' },
  },
});

const list = (s: string | undefined) => (s ? s.split(',').map((x) => x.trim().split(/\s+/)) : []);

function contextOf(): Context {
  if (values.context) return contextSchema.parse(JSON.parse(values.context));
  const places = list(values.lineup).map(([dog, position, side]) => ({ dog, position, side }));
  const named = list(values.dogs).map(([name, sex]) => ({ name, sex: sex ?? 'F' }));
  const known = new Set(named.map((d) => d.name));
  return contextSchema.parse({
    dogs: [...named, ...places.filter((p) => !known.has(p.dog)).map((p) => ({ name: p.dog, sex: 'F' }))],
    people: list(values.people).map(([n]) => n),
    lineup: places,
    units: values.units ?? 'imperial',
    at: values.at,
  });
}

const text = positionals.join(' ');
if (!text) {
  process.stderr.write(
    'usage: npm run explain -- "note text" [--dogs "June F, Moss M"] [--lineup "June lead left"] [--people Wren] [--units metric] [--at 2027-01-14T10:40]\n',
  );
  process.exitCode = 1;
} else process.stdout.write(`${explain(text, contextOf())}\n`);
