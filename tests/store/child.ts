/**
 * A process of its own for the tests: opens a store in the folder and says in lines of JSON what it sees.
 * `add ID`: tries to add a note. `fill`: adds large notes until the disk takes no more, makes room, adds one more, and
 * starts again. `hold`: keeps the folder until it is stopped. `busy`: the same, doing nothing else and hearing nothing, until
 * there is a file `enough`.
 */
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openStore, type Store } from '../../server/store/index.ts';

const [folder = '', command, argument = ''] = process.argv.slice(2);
const SEASON = '2026-27';
const say = (line: unknown) => process.stdout.write(`${JSON.stringify(line)}\n`);

function newNote(id: string, text: string) {
  const at = '2026-11-02T10:40:00Z';
  return { id, text, at, received: at, aside: false, entries: [], unknownNames: [], history: [] };
}

const append = (store: Store, id: string, text: string) =>
  store.changeSeason(SEASON, (s) => [{ ...s, notes: [...s.notes, newNote(id, text)] }, s.notes.length + 1]);

async function fill(): Promise<void> {
  // What lies beside the kennel's files and can be thrown away to make room.
  const ballast = join(folder, 'ballast');
  writeFileSync(ballast, Buffer.alloc(300_000, 1));
  const store = await openStore(folder);
  let kept = 0;
  let error = '';
  for (; !error && kept < 1_000; ) {
    const id = crypto.randomUUID();
    await append(store, id, 'snow '.repeat(2_000)).then(
      () => kept++,
      (e) => {
        error = e.message;
      },
    );
  }
  const notes = store.season(SEASON).notes.length;
  rmSync(ballast);
  await append(store, crypto.randomUUID(), 'room again');
  await store.close();
  const again = await openStore(folder);
  say({ kept, error, notes, after: again.season(SEASON).notes.length, warnings: again.warnings });
  await again.close();
}

async function main(): Promise<void> {
  if (command === 'fill') return fill();
  const store = await openStore(folder);
  say({ notes: store.season(SEASON).notes.map((n) => n.id), warnings: store.warnings });
  if (command === 'add') {
    const error = await append(store, argument, 'A note.').then(
      () => undefined,
      (e) => e.message,
    );
    say({ error, notes: store.season(SEASON).notes.map((n) => n.id) });
    await store.close();
  }
  if (command === 'hold') {
    await store.announce(4600);
    say('held');
    setInterval(() => {}, 1_000);
  }
  if (command === 'busy') {
    say('busy');
    while (!existsSync(join(folder, 'enough')));
    say('done');
    await store.close();
  }
}

await main().catch((error) => say({ error: error.message, name: error.name }));
