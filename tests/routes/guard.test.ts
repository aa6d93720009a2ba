/** Who may ask: programs on this machine and Snackstop's own pages. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createApp } from '../../server/app.ts';
import { newKennel, type Wrong } from './setup.ts';

const PORT = 4600;
async function guarded(web?: string) {
  const { store } = await newKennel();
  const app = createApp({ store, version: 'test', port: () => PORT, ...(web ? { web } : {}) });
  return async (method: string, path: string, headers: Record<string, string> = {}, body?: string) =>
    app.request(`http://127.0.0.1:${PORT}${path}`, { method, headers, ...(body === undefined ? {} : { body }) });
}
const JSON_TYPE = { 'content-type': 'application/json' };
const OWN = `http://127.0.0.1:${PORT}`;

describe('the Host header', () => {
  it.each(['127.0.0.1:4600', 'localhost:4600', 'LOCALHOST:4600', '[::1]:4600'])('%s is this machine', async (host) => {
    const ask = await guarded();
    expect((await ask('GET', '/api/status', { host })).status).toBe(200);
  });

  it.each([
    'example.org',
    'example.org:4600',
    '127.0.0.1',
    '127.0.0.1:80',
    '127.0.0.1:46000',
    'localhost.example.org:4600',
    '127.0.0.1.example.org:4600',
    '10.0.0.7:4600',
    '0.0.0.0:4600',
    '[::2]:4600',
    '127.0.0.1:4600:4600',
    'user@127.0.0.1:4600',
    ' ',
    '2130706433:4600',
  ])('“%s” is refused, for the interface and for the pages', async (host) => {
    const ask = await guarded();
    for (const path of ['/api/status', '/', '/review']) {
      const answer = await ask('GET', path, { host });
      expect(answer.status).toBe(403);
      const { error } = (await answer.json()) as Wrong;
      expect(error.code).toBe('foreign-host');
      expect(error.message).toContain('http://127.0.0.1:4600');
    }
  });
});

describe('where a request comes from', () => {
  it.each([
    ['no browser', {}],
    ['the own page', { origin: OWN, 'sec-fetch-site': 'same-origin' }],
    ['the own page under its other name', { host: 'localhost:4600', origin: 'http://localhost:4600' }],
    ['the address bar', { 'sec-fetch-site': 'none' }],
  ])('%s is let through', async (_name, headers) => {
    const ask = await guarded();
    expect((await ask('GET', '/api/dogs', headers)).status).toBe(200);
    const body = JSON.stringify({ name: 'Moss', sex: 'M' });
    expect((await ask('POST', '/api/dogs', { ...JSON_TYPE, ...headers }, body)).status).toBe(201);
  });

  it.each([
    ['another site', { origin: 'https://example.org' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:3000', 'sec-fetch-site': 'same-site' }],
    ['another name of this machine', { origin: 'http://localhost:4600' }],
    ['the same place over TLS', { origin: `https://127.0.0.1:${PORT}` }],
    ['a page without an origin', { origin: 'null' }],
    ['a link or a picture on another site', { 'sec-fetch-site': 'cross-site' }],
    ['a page on another port, without an origin', { 'sec-fetch-site': 'same-site' }],
  ])('%s is refused, whatever it asks', async (_name, headers) => {
    const ask = await guarded();
    for (const [method, path, body] of [
      ['GET', '/api/notes'],
      ['GET', '/api/openapi.json'],
      ['POST', '/api/notes', '{"notes":[]}'],
      ['POST', '/api/dogs', '{"name":"Moss","sex":"M"}'],
      ['PUT', '/api/settings', '{}'],
      ['PATCH', '/api/dogs/1', '{}'],
      ['DELETE', '/api/dogs/1'],
      ['OPTIONS', '/api/notes'],
    ] as const) {
      const answer = await ask(method, path, { ...(body ? JSON_TYPE : {}), ...headers }, body);
      expect(answer.status, `${method} ${path}`).toBe(403);
      expect(((await answer.json()) as Wrong).error.code).toBe('foreign-origin');
      expect(answer.headers.get('access-control-allow-origin')).toBeNull();
    }
    expect(await (await ask('GET', '/api/dogs')).json()).toEqual({ dogs: [] });
  });
});

describe('answers', () => {
  it('carry headers that keep the pages to themselves', async () => {
    const ask = await guarded();
    const { headers } = await ask('GET', '/api/status');
    const csp = headers.get('content-security-policy') ?? '';
    for (const part of [
      "default-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
      "form-action 'self'",
    ])
      expect(csp).toContain(part);
    expect(csp).not.toMatch(/script-src|https?:|\*/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    expect(headers.get('cache-control')).toBe('no-store');
    expect(headers.get('strict-transport-security')).toBeNull();
  });

  it('to what is not there have the one shape of errors', async () => {
    const ask = await guarded();
    for (const [method, path] of [
      ['GET', '/api/nothing'],
      ['DELETE', '/api/status'],
      ['GET', '/api'],
      ['POST', '/api/runs'],
    ]) {
      const answer = await ask(method as string, path as string);
      expect(answer.status).toBe(404);
      expect(await answer.json()).toEqual({
        error: { code: 'not-found', message: `There is no ${method} ${path} here.` },
      });
    }
  });
});

describe('the pages', () => {
  async function built() {
    const above = await mkdtemp(join(tmpdir(), 'snackstop-web-'));
    onTestFinished(() => rm(above, { recursive: true, force: true }));
    const web = join(above, 'web');
    await mkdir(join(web, 'assets'), { recursive: true });
    await writeFile(join(web, 'index.html'), '<!doctype html><title>Snackstop</title>');
    await writeFile(join(web, 'sw.js'), '// worker');
    await writeFile(join(web, 'assets', 'app-1a2b3c.js'), 'export {};');
    await writeFile(join(above, 'secret.txt'), 'secret');
    return guarded(web);
  }

  it('are one page for every address that is no file', async () => {
    const ask = await built();
    for (const path of ['/', '/review', '/dogs/0190-abc', '/runs/a~Wren', '/index.html']) {
      const answer = await ask('GET', path);
      expect(answer.status, path).toBe(200);
      expect(await answer.text()).toContain('<title>Snackstop</title>');
      expect(answer.headers.get('cache-control')).toBe('no-cache');
      expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
    }
  });

  it('come with their files, which are kept for good where their name holds a hash', async () => {
    const ask = await built();
    const script = await ask('GET', '/assets/app-1a2b3c.js');
    expect(script.headers.get('content-type')).toMatch(/javascript/);
    expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    const worker = await ask('GET', '/sw.js');
    expect(worker.headers.get('content-type')).toMatch(/javascript/);
    expect(worker.headers.get('cache-control')).toBe('no-cache');
    expect((await ask('HEAD', '/sw.js')).status).toBe(200);
  });

  it('have no files but their own', async () => {
    const ask = await built();
    for (const path of ['/assets/gone.js', '/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/.env']) {
      const answer = await ask('GET', path);
      expect(await answer.text(), path).not.toContain('secret');
    }
    expect((await ask('GET', '/assets/gone.js')).status).toBe(404);
    expect((await ask('POST', '/review')).status).toBe(405);
  });

  it('say so where they have not been built', async () => {
    const ask = await guarded('/nowhere/at/all');
    const answer = await ask('GET', '/review');
    expect(answer.status).toBe(503);
    expect(await answer.text()).toContain('have not been built');
  });
});
