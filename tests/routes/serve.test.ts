/** Snackstop as it is started: flags, the line that says where, the address it is bound to, and how it stops. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, request } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { homedir, networkInterfaces, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { v7 } from 'uuid';
import { describe, expect, it, onTestFinished } from 'vitest';
import { dataFolder, readFlags } from '../../server/main.ts';
import { PortInUseError, serve, version } from '../../server/serve.ts';
import { FolderInUseError } from '../../server/store/index.ts';
import { read } from './reader.ts';

async function folder(): Promise<string> {
  const path = await mkdtemp(join(tmpdir(), 'snackstop-serve-'));
  onTestFinished(() => rm(path, { recursive: true, force: true }));
  return path;
}
async function serving() {
  const data = await folder();
  const it = await serve({ port: 0, folder: data, read });
  onTestFinished(() => it.stop());
  return { ...it, data };
}
const note = (text = 'Juniper is lame') => ({ id: v7(), text, at: '2027-01-14T10:40:00-09:00' });
const post = (url: string, path: string, body: unknown) =>
  fetch(url + path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });

describe('flags', () => {
  it('are a port and a folder, each with what stands for it when it is left out', () => {
    expect(readFlags([], { SNACKSTOP_DATA: '/data/a' })).toEqual({ port: 4600, folder: '/data/a' });
    expect(readFlags(['--port', '80', '--data', '/data/b'], { SNACKSTOP_DATA: '/data/a' })).toEqual({
      port: 80,
      folder: '/data/b',
    });
    expect(readFlags(['--port=0', '--data=notes'], {})).toEqual({ port: 0, folder: resolve('notes') });
    expect(readFlags(['-h'], {})).toEqual({ help: true });
  });

  // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, and that relative paths in it are to be ignored.
  it('keep the notes where the environment says, else in the home folder', () => {
    expect(dataFolder({ SNACKSTOP_DATA: 'here', XDG_DATA_HOME: '/xdg' })).toBe('here');
    expect(dataFolder({ XDG_DATA_HOME: '/xdg' })).toBe('/xdg/snackstop');
    expect(dataFolder({ XDG_DATA_HOME: 'xdg' })).toBe(join(homedir(), '.snackstop'));
    expect(dataFolder({})).toBe(join(homedir(), '.snackstop'));
  });

  it.each([
    [['--port', 'many'], /“many” is no port/],
    [['--port', '65536'], /0 to 65535/],
    [['--port', '-1'], /port/],
    [['--port'], /port/],
    [['--data', ' '], /name of a folder/],
    [['--fast'], /--fast/],
    [['notes'], /notes/],
  ])('%j say what is wrong', (args, says) => {
    expect(readFlags(args, {})).toEqual({ says: expect.stringMatching(says) });
  });
});

describe('running', () => {
  it('answers on 127.0.0.1 and nowhere else', async () => {
    const { url, port } = await serving();
    expect(url).toBe(`http://127.0.0.1:${port}`);
    expect(((await (await fetch(`${url}/api/status`)).json()) as { version: string }).version).toBe(version());
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter((one) => one.family === 'IPv4' && !one.internal)
      .map((one) => one.address);
    for (const host of [...others, '127.0.0.2']) {
      const socket = connect({ host, port });
      const [error] = (await once(socket, 'error')) as [NodeJS.ErrnoException];
      expect(error.code, host).toBe('ECONNREFUSED');
    }
  });

  it('refuses a Host that is another, with the port it has', async () => {
    const { port } = await serving();
    const statusFor = async (host: string) => {
      const asked = request({ host: '127.0.0.1', port, path: '/api/status', headers: { host } });
      asked.end();
      const [answer] = await once(asked, 'response');
      answer.resume();
      return answer.statusCode as number;
    };
    expect(await statusFor(`localhost:${port}`)).toBe(200);
    expect(await statusFor(`kennel.example.org:${port}`)).toBe(403);
    expect(await statusFor('127.0.0.1')).toBe(403);
    expect(await statusFor(`127.0.0.1:${port + 1}`)).toBe(403);
  });

  it('answers 413 to a body that is too long, told beforehand or not', async () => {
    const { url } = await serving();
    const told = await post(url, '/api/notes', { notes: [note('x'.repeat(1_100_000))] });
    expect(told.status).toBe(413);
    const chunk = new TextEncoder().encode('x'.repeat(64 * 1024));
    let left = 40;
    const stream = new ReadableStream({
      pull(controller) {
        if (left-- > 0) controller.enqueue(chunk);
        else controller.close();
      },
    });
    const streamed = await fetch(`${url}/api/notes`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: stream,
      duplex: 'half',
    } as RequestInit);
    expect(streamed.status).toBe(413);
    expect(((await streamed.json()) as { error: { code: string } }).error.code).toBe('too-large');
    expect((await post(url, '/api/notes', { notes: [note('x'.repeat(20_000))] })).status).toBe(200);
  });

  it('keeps what it took over a restart, with review and undo', async () => {
    const data = await folder();
    const first = await serve({ port: 0, folder: data, read });
    const sent = note();
    await post(first.url, '/api/dogs', { name: 'Juniper', sex: 'F' });
    await post(first.url, '/api/notes', { notes: [sent] });
    await post(first.url, `/api/notes/${sent.id}/review`, { act: 'accept-all' });
    const before = await (await fetch(`${first.url}/api/notes/${sent.id}`)).json();
    await first.stop();
    const second = await serve({ port: 0, folder: data, read });
    onTestFinished(() => second.stop());
    expect(await (await fetch(`${second.url}/api/notes/${sent.id}`)).json()).toEqual(before);
    const undone = await post(second.url, `/api/notes/${sent.id}/review`, { act: 'undo' });
    expect(await undone.json()).toMatchObject({ note: { state: 'waiting', canUndo: false } });
  });

  it('reads the notes that wait again when it starts, with the grammar it has then', async () => {
    const data = await folder();
    const first = await serve({ port: 0, folder: data, read: () => ({ entries: [], unknownNames: [] }) });
    const sent = note();
    await post(first.url, '/api/dogs', { name: 'Juniper', sex: 'F' });
    await post(first.url, '/api/notes', { notes: [sent] });
    await first.stop();
    const second = await serve({ port: 0, folder: data, read });
    onTestFinished(() => second.stop());
    await second.ready;
    const answer = await (await fetch(`${second.url}/api/notes/${sent.id}`)).json();
    expect(answer).toMatchObject({
      note: { entries: [{ state: 'proposed', entry: { kind: 'finding', dogs: ['Juniper'] } }] },
    });
  });

  it('says who has the folder, and lets it go when it stops', async () => {
    const { data, stop, port } = await serving();
    await expect(serve({ port: 0, folder: data })).rejects.toThrow(FolderInUseError);
    await expect(serve({ port: 0, folder: data })).rejects.toThrow(String(port));
    await Promise.all([stop(), stop()]);
    const again = await serve({ port: 0, folder: data });
    await again.stop();
  });

  it('says that the port is taken, and leaves the folder free', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const data = await folder();
    await expect(serve({ port, folder: data })).rejects.toThrow(PortInUseError);
    await expect(serve({ port, folder: data })).rejects.toThrow(`Port ${port} is taken`);
    const free = await serve({ port: 0, folder: data });
    await free.stop();
    other.close();
  });

  it('lets a request that is under way finish when it is stopped', async () => {
    const { url, stop } = await serving();
    const sent = post(url, '/api/notes', { notes: Array.from({ length: 200 }, () => note()) });
    const early = fetch(`${url}/api/status`);
    await early;
    const [answer] = await Promise.all([sent, stop()]);
    expect(answer.status).toBe(200);
    await expect(fetch(`${url}/api/status`)).rejects.toThrow();
  });
});

describe('npm start', () => {
  function start(...args: string[]): {
    child: ChildProcess;
    lines: string[];
    errors: () => string;
    first: Promise<string>;
  } {
    const main = resolve(import.meta.dirname, '../../server/main.ts');
    const child = spawn(process.execPath, ['--import', 'tsx', main, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    onTestFinished(() => void child.kill('SIGKILL'));
    const lines: string[] = [];
    let errors = '';
    child.stderr?.on('data', (part) => {
      errors += part;
    });
    const reader = createInterface({ input: child.stdout as NodeJS.ReadableStream });
    reader.on('line', (line) => lines.push(line));
    const first = new Promise<string>((resolve, reject) => {
      reader.once('line', resolve);
      child.once('exit', () => reject(new Error(`it ended without a line: ${errors}`)));
    });
    // Where it is meant to end without one, nobody waits for it.
    first.catch(() => {});
    return { child, lines, errors: () => errors, first };
  }

  it.each(['SIGINT', 'SIGTERM'] as const)(
    'says in one line where it answers, once it does, and stops cleanly at %s',
    async (signal) => {
      const data = await folder();
      const { child, lines, errors, first } = start('--port', '0', '--data', data);
      const line = await first;
      const url = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0] ?? '';
      expect(line).toBe(`Snackstop answers at ${url} and keeps its notes in ${data}`);
      const sent = note();
      expect((await post(url, '/api/notes', { notes: [sent] })).status).toBe(200);
      child.kill(signal);
      expect(await once(child, 'exit')).toEqual([0, null]);
      expect(lines).toHaveLength(1);
      expect(errors()).toBe('');
      const next = await serve({ port: 0, folder: data, read });
      expect((await fetch(`${next.url}/api/notes/${sent.id}`)).status).toBe(200);
      await next.stop();
    },
  );

  it('puts what the store warns of into that line', async () => {
    const data = await folder();
    const before = await serve({ port: 0, folder: data, read });
    for (const text of ['one', 'two']) await post(before.url, '/api/notes', { notes: [note(text)] });
    await before.stop();
    await writeFile(join(data, 'season-2026-27.json'), '{"schema": 1 "season": "2026-27"}');
    const { first, lines, child } = start('--port', '0', '--data', data);
    expect(await first).toMatch(/ · .*season-2026-27/);
    child.kill('SIGTERM');
    await once(child, 'exit');
    expect(lines).toHaveLength(1);
  });

  it('says on standard error why it does not start', async () => {
    const { data } = await serving();
    for (const [args, code, says] of [
      [['--port', 'x'], 2, /“x” is no port/],
      [['--fast'], 2, /--fast[\s\S]*--data FOLDER/],
      [['--port', '0', '--data', data], 1, /in use|used|another/i],
    ] as const) {
      const { child, lines, errors } = start(...args);
      expect((await once(child, 'exit'))[0]).toBe(code);
      expect(errors()).toMatch(says);
      expect(errors()).not.toMatch(/^\s+at /m);
      expect(lines).toEqual([]);
    }
    const help = start('--help');
    expect((await once(help.child, 'exit'))[0]).toBe(0);
    expect(help.lines.join('\n')).toContain('--port N');
  });
});
