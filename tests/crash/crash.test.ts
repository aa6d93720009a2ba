/**
 * The real server, killed with SIGKILL at random moments while it takes notes: whatever it acknowledged is there, once,
 * and every file is valid. What was not acknowledged is sent again, as the outbox on the phone does.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { chances } from '../store/chances.ts';
import { uuid } from '../store/helpers.ts';

const NOTES = 500;
const ROUNDS = 20;
/** Decides how many notes a round takes and when in the next write the server is killed; the rest is the machine's chance. */
const SEED = 20_270_114;

const root = fileURLToPath(new URL('../..', import.meta.url));
/** The server in one plain file: made once, so that twenty starts do not each translate every source again. */
const main = join(root, 'dist', `crash-server-${process.pid}.mjs`);
const folder = mkdtempSync(join(tmpdir(), 'snackstop-crash-'));
let server: ChildProcess | undefined;
beforeAll(async () => {
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    build: {
      ssr: join(root, 'server', 'main.ts'),
      outDir: join(root, 'dist'),
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: basename(main), codeSplitting: false } },
    },
  });
});
afterAll(() => {
  server?.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
  rmSync(main, { force: true });
});

interface Sent {
  id: string;
  text: string;
  at: string;
}
/** Two seasons, so that two files are written at the same time. */
const notes: Sent[] = Array.from({ length: NOTES }, (_, n) => ({
  id: uuid(n),
  text: `Snack stop at mile ${n % 30}. Juniper’s left wrist is a bit sore, note ${n}.`,
  at: `${n % 2 ? '2026-11' : '2025-12'}-${String(1 + (n % 28)).padStart(2, '0')}T10:40:00-09:00`,
}));

/** Starts the server and resolves with its address and what it says beside it. */
async function start(): Promise<{ url: string; says: string }> {
  server = spawn(process.execPath, [main, '--port', '0', '--data', folder], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let errors = '';
  server.stderr?.on('data', (part) => {
    errors += part;
  });
  for await (const says of createInterface({ input: server.stdout as NodeJS.ReadableStream })) {
    const url = /http:\/\/127\.0\.0\.1:\d+/.exec(says)?.[0];
    if (url) return { url, says };
  }
  throw new Error(`the server did not start: ${errors}`);
}

async function kill(): Promise<void> {
  const gone = server && server.exitCode === null && server.signalCode === null ? once(server, 'exit') : undefined;
  server?.kill('SIGKILL');
  await gone;
}

/** Sends notes and resolves with what was acknowledged; with nothing where the server died over it. */
async function send(url: string, some: Sent[]): Promise<{ id: string; kept: string }[]> {
  try {
    const answer = await fetch(`${url}/api/notes`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ notes: some }),
    });
    const body = (await answer.json()) as { notes: { id: string; kept: string }[] };
    expect(answer.status, JSON.stringify(body)).toBe(200);
    return body.notes;
  } catch (error) {
    if (error instanceof TypeError || error instanceof SyntaxError) return [];
    throw error;
  }
}

/** Every file of the folder is valid JSON, and every note that was acknowledged is there once, word for word. */
function check(acknowledged: Set<string>): void {
  const found: Sent[] = [];
  for (const name of readdirSync(folder)) {
    // Half-written files under another name are nobody's data.
    if (!name.endsWith('.json')) continue;
    const text = readFileSync(join(folder, name), 'utf8');
    expect(() => JSON.parse(text), `${name} is not valid JSON`).not.toThrow();
    if (/^season-\d{4}-\d{2}\.json$/.test(name)) found.push(...JSON.parse(text).notes);
  }
  const ids = found.map(({ id }) => id);
  expect(new Set(ids).size, 'a note is there twice').toBe(ids.length);
  expect(
    [...acknowledged].filter((id) => !ids.includes(id)),
    'acknowledged and not there',
  ).toEqual([]);
  const sent = new Map(notes.map((note) => [note.id, note]));
  for (const { id, text, at } of found) expect({ id, text, at }).toEqual(sent.get(id));
}

it(`keeps each of ${NOTES} notes once though it is killed ${ROUNDS} times`, async () => {
  const chance = chances(SEED);
  const upTo = (most: number) => Math.floor(chance() * (most + 1));
  const acknowledged = new Set<string>();
  let lost = 0;

  /** Sends what is waiting, a few at a time, now and then something again that was acknowledged, until the server dies. */
  const sender = async (url: string, alive: () => boolean, onAck: (count: number) => void) => {
    while (alive()) {
      const waiting = notes.filter(({ id }) => !acknowledged.has(id) && !going.has(id));
      const again = notes.filter(({ id }) => acknowledged.has(id));
      const some = waiting.slice(0, 1 + upTo(2));
      for (const { id } of some) going.add(id);
      const extra = again[upTo(again.length)];
      if (extra && (some.length === 0 || chance() < 0.1)) some.push(extra);
      if (some.length === 0) return;
      const before = new Set(acknowledged);
      const answers = await send(url, some);
      if (answers.length === 0) lost++;
      for (const { id, kept } of answers) {
        expect(['new', 'already']).toContain(kept);
        if (before.has(id)) expect(kept, `${id} was acknowledged before`).toBe('already');
        acknowledged.add(id);
      }
      for (const { id } of some) going.delete(id);
      onAck(answers.length);
    }
  };
  const going = new Set<string>();

  for (let round = 0; round < ROUNDS; round++) {
    const { url, says } = await start();
    expect(says, 'nothing had to be mended').toMatch(/keeps its notes in [^·]*$/);
    const quota = 10 + upTo(26);
    let taken = 0;
    let alive = true;
    let enough: () => void = () => {};
    const quotaMet = new Promise<void>((resolve) => {
      enough = resolve;
    });
    const onAck = (count: number) => {
      taken += count;
      if (taken >= quota) enough();
    };
    const senders = Array.from({ length: 1 + upTo(3) }, () => sender(url, () => alive, onAck));
    await Promise.race([quotaMet, Promise.all(senders)]);
    // Anywhere in the next writes, not only between two.
    await pause(upTo(15));
    alive = false;
    await kill();
    await Promise.all(senders);
    check(acknowledged);
  }
  expect(lost, 'no kill met a request under way: the test shows nothing').toBeGreaterThan(ROUNDS / 4);

  const { url } = await start();
  const rest = notes.filter(({ id }) => !acknowledged.has(id));
  for (const { id } of rest.length > 0 ? await send(url, rest) : []) acknowledged.add(id);
  check(acknowledged);
  expect(acknowledged.size).toBe(NOTES);
  for (const season of ['2025-26', '2026-27']) {
    const answer = (await (await fetch(`${url}/api/notes?season=${season}&limit=1`)).json()) as { total: number };
    expect(answer.total).toBe(NOTES / 2);
  }
  await kill();
  check(acknowledged);
}, 900_000);
