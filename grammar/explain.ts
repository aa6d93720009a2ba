/** The steps of one reading, in words: for a person who asks why, and for a corpus case that fails. */
import type { Context } from './entry.ts';
import { read } from './parse.ts';
import type { Frame } from './steps/frame.ts';

/** Prints what was heard, the mentions, dogs, sites, cues, what each rule took, and what was left. */
export function explain(text: string, context: Context): string {
  const trace: string[] = [];
  let frame: Frame | undefined;
  const reading = read(text, context, trace, (f) => {
    frame = f;
  });
  const f = frame;
  if (!f) return 'nothing was said';
  const words = (from: number, to: number) =>
    f.tokens
      .slice(from, to)
      .map((t) => t.low)
      .join(' ');
  const lines = [`heard      ${f.tokens.map((t) => t.low).join(' ')}${f.corrected ? '   (corrected)' : ''}`];
  for (const q of f.quantities)
    lines.push(
      `quantity   ${words(q.from, q.to)} = ${q.value} ${q.unit ?? ''} (${q.dimension}${q.weak ? ', weak' : ''})`,
    );
  for (const d of f.dogs)
    lines.push(
      `dogs       ${words(d.from, d.to)} = ${d.dogs.join(', ') || 'nobody'}${d.possessive ? ' (possessive)' : ''}${d.company ? ' (company)' : ''}${d.excepted ? ' (excepted)' : ''}${d.prep ? ` (after "${d.prep}")` : ''}${d.doubt ? ` ? ${d.doubt}` : ''}`,
    );
  for (const s of f.sites)
    lines.push(
      `site       ${words(s.from, s.to)} = ${[s.side, s.end, s.part].filter(Boolean).join(' ')}${s.plural ? ' plural' : ''}${s.anaphor ? ' (points back)' : ''} ${s.paws.join('+')}`,
    );
  for (const c of f.cues) lines.push(`cue        ${words(c.from, c.to)} = ${c.gives} ${c.direction}`);
  for (const tag of [
    'sign',
    'fine',
    'nothing',
    'act',
    'bootie',
    'boot-state',
    'ate',
    'drank',
    'gave',
    'food',
    'manner',
    'position',
    'drop',
    'surface',
    'condition',
    'item',
    'gear-state',
    'quantity',
    'severity',
    'trend',
    'idiom',
  ])
    for (const m of f.m.of(tag))
      lines.push(`mention    ${words(m.from, m.to)} = ${tag}${m.value === true ? '' : ` ${m.value}`}`);
  for (const t of trace) lines.push(`took       ${t}`);
  for (const e of reading.entries) if (e.kind === 'remark') lines.push(`left       "${e.text}"`);
  for (const u of reading.unknownNames) lines.push(`unknown    "${u.name}"`);
  return lines.join('\n');
}
