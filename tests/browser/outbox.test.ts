/** Nothing spoken is lost: with the server away, refused by it, or with another page open. UUIDs against RFC 9562. */
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();
type Notes = { total: number; notes: { id: string; text: string; at: string; by?: string; source?: string }[] };

describe.runIf(executable)('the outbox', () => {
  let kennel: Kennel;
  let browser: Browser;
  let phone: Watched;
  beforeAll(async () => {
    browser = await launch(executable as string);
  });
  afterAll(async () => {
    await browser?.close();
  });
  beforeEach(async () => {
    kennel = await openKennel();
    await enterKennel(kennel);
    phone = await openPage(browser, PHONE);
    await phone.page.goto(kennel.url);
  });
  afterEach(async () => {
    await phone.close();
    await kennel.end();
  });
  const type = async (text: string) => {
    await phone.page.getByLabel('Note', { exact: true }).fill(text);
    await phone.page.getByRole('button', { name: 'Keep' }).click();
    await phone.page.getByText('Kept.', { exact: true }).waitFor();
  };
  const kept = () => kennel.call<Notes>('GET', '/notes?state=all');

  test('keeps notes while the server is away, over a closed page as well, and sends them afterwards', async () => {
    const { page } = phone;
    await page.getByText('No note waits').waitFor();
    await kennel.stop();
    await type('Mile ten, all good.');
    await type('Mile twelve, Moss in lead.');
    await page.getByText('2 notes wait').waitFor();
    await page.getByText('No connection to Snackstop').waitFor();

    await kennel.start();
    // The page as it is opened the next day: the notes are still on the device and go out by themselves.
    await page.reload();
    await page.getByText('No note waits').waitFor();
    const { total, notes } = await kept();
    expect(total).toBe(2);
    expect(notes.map((note) => note.text).sort()).toEqual(['Mile ten, all good.', 'Mile twelve, Moss in lead.']);
    for (const { id, at, source } of notes) {
      // RFC 9562, 5.7: version 7, variant 10, the first 48 bits are milliseconds since 1970.
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
      const made = Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16);
      expect(Math.abs(made - Date.parse(at))).toBeLessThan(60_000);
      expect(at).toMatch(/-0[89]:00$/);
      expect(source).toBe('typed');
    }
  });

  test('sends by itself when the server is back, without a touch', async () => {
    await kennel.stop();
    await type('Glare ice from mile six.');
    await phone.page.getByText('1 note waits').waitFor();
    await kennel.start();
    await phone.page.getByText('No note waits').waitFor();
    expect((await kept()).total).toBe(1);
  });

  test('an answer that is lost on the way costs nothing: the note is kept once', async () => {
    const { page } = phone;
    let swallowed = 0;
    await page.route('**/api/notes', async (route) => {
      if (swallowed++ > 0) return route.continue();
      // The server takes the note; its answer never arrives.
      await route.fetch();
      return route.abort('connectionreset');
    });
    await type('Tansy ate everything.');
    await page.getByText('No note waits').waitFor();
    expect(swallowed).toBeGreaterThan(1);
    expect((await kept()).total).toBe(1);
  });

  test('a note the server will not take is shown with its sentence, and the words are given back', async () => {
    const { page } = phone;
    const long = `${'mush '.repeat(5000)}end`;
    await type(long);
    await page.getByText('This note was not taken').waitFor();
    await type('Mile two.');
    await page.getByText('No note waits').waitFor();
    expect((await kept()).total).toBe(1);
    await page.getByRole('button', { name: 'Put the words back in the box' }).click();
    await expect.poll(() => page.getByLabel('Note', { exact: true }).inputValue()).toBe(long.trim());
    await expect.poll(() => page.getByText('This note was not taken').count()).toBe(0);
  });

  test('the words stand in the box before their note leaves the device', async () => {
    const { page, errors } = phone;
    const long = `${'gee '.repeat(6000)}end`;
    await type(long);
    await page.getByText('This note was not taken').waitFor();
    await page.evaluate(() => {
      IDBObjectStore.prototype.delete = () => {
        throw new DOMException('this disk will not be written', 'UnknownError');
      };
    });
    await page.getByRole('button', { name: 'Put the words back in the box' }).click();
    await expect.poll(() => page.getByLabel('Note', { exact: true }).inputValue()).toBe(long);
    await expect.poll(() => errors.join()).toContain('this disk will not be written');
    await page.reload();
    await page.getByText('This note was not taken').waitFor();
    await expect.poll(() => page.getByLabel('Note', { exact: true }).inputValue()).toBe(long);
  });

  test('a full disk is no end: the note waits, with the server’s sentence', async () => {
    const { page } = phone;
    await page.route('**/api/notes', (route) =>
      route.fulfill({
        status: 503,
        json: { error: { code: 'not-kept', message: 'The disk is full, the note was not kept.' } },
      }),
    );
    await type('Kodiak limping.');
    await page.getByText('The disk is full, the note was not kept.').waitFor();
    await page.getByText('1 note waits').waitFor();
    await page.unroute('**/api/notes');
    await page.getByRole('button', { name: 'Send now' }).click();
    await page.getByText('No note waits').waitFor();
    expect((await kept()).total).toBe(1);
  });

  test('words that were not kept yet are in the box after the page was closed', async () => {
    const { page } = phone;
    await page.getByLabel('Note', { exact: true }).fill('Half a sent');
    await page.reload();
    await expect.poll(() => page.getByLabel('Note', { exact: true }).inputValue()).toBe('Half a sent');
  });

  test('who speaks goes with the note', async () => {
    await phone.page.getByLabel('Who speaks').selectOption('Tobias');
    await type('Mile three.');
    await phone.page.getByText('No note waits').waitFor();
    expect((await kept()).notes[0]?.by).toBe('Tobias');
  });
});
