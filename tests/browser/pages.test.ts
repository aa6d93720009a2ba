/** What each page does: the roster, the settings, old notebooks, listening, the banner. */
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();

describe.runIf(executable)('the pages', () => {
  let kennel: Kennel;
  let browser: Browser;
  let watched: Watched;
  let page: Page;
  beforeAll(async () => {
    browser = await launch(executable as string);
  });
  afterAll(async () => {
    await browser?.close();
  });
  beforeEach(async () => {
    kennel = await openKennel();
    watched = await openPage(browser, DESK);
    page = watched.page;
  });
  afterEach(async () => {
    await watched.close();
    await kennel.end();
  });

  test('an empty kennel says what to do first, and dogs are entered one after the other', async () => {
    await page.goto(`${kennel.url}/load`);
    await page.locator('.empty').getByRole('link', { name: 'Dogs' }).click();
    await page.getByRole('heading', { name: 'No dog on the roster' }).waitFor();
    for (const [name, sex] of [
      ['Juniper', 'female'],
      ['Moss', 'male'],
    ] as const) {
      await page.getByLabel('Call name').fill(name);
      await page.getByText(sex, { exact: true }).click();
      await page.getByRole('button', { name: 'Add to the roster' }).click();
      await page.getByText(`${name} is on the roster.`).waitFor();
      // Ready for the next one.
      await expect
        .poll(() => page.getByLabel('Call name').evaluate((box) => box === document.activeElement))
        .toBe(true);
      await expect.poll(() => page.getByLabel('Call name').inputValue()).toBe('');
    }
    const { dogs } = await kennel.call<{ dogs: { name: string; sex: string }[] }>('GET', '/dogs');
    expect(dogs.map((dog) => `${dog.name} ${dog.sex}`)).toEqual(['Juniper F', 'Moss M']);
  });

  test('a dog is renamed, its old name stays known; a taken name is refused with a sentence; it retires', async () => {
    await enterKennel(kennel);
    await page.goto(`${kennel.url}/dogs`);
    await page.getByRole('button', { name: 'Change Otter' }).click();
    const form = page.locator('.editing');
    await form.getByLabel('Call name').fill('Moss');
    await form.getByRole('button', { name: 'Keep' }).click();
    await form.getByRole('alert').getByText('is taken').waitFor();
    await form.getByLabel('Call name').fill('River');
    await form.getByLabel('Also called').fill('Riv, Otto');
    await form.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('Kept: River. Otter before').waitFor();
    await expect
      .poll(() => page.getByRole('row', { name: /^River/ }).textContent())
      .toContain('Riv, Otto · Otter before');
    await page.getByRole('button', { name: 'Change River' }).click();
    await form.getByLabel('Retired').check();
    await form.getByRole('button', { name: 'Keep' }).click();
    await page.getByRole('heading', { name: 'Retired' }).waitFor();
    await page.getByRole('button', { name: 'Change Kodiak' }).click();
    await form.getByRole('button', { name: 'Take off the roster' }).click();
    await page.getByText('Kodiak was taken off the roster.').waitFor();
    expect(watched.errors.filter((error) => !error.includes('409'))).toEqual([]);
  });

  test('what is missing in a form is said at the field', async () => {
    await page.goto(`${kennel.url}/dogs`);
    await page.getByRole('button', { name: 'Add to the roster' }).click();
    await page.getByText('A dog needs a call name.').waitFor();
    await page.getByText('Say whether it is a female or a male').waitFor();
    expect(await page.getByLabel('Call name').getAttribute('aria-invalid')).toBe('true');
  });

  test('settings: the kennel, its units and its people', async () => {
    await enterKennel(kennel);
    await page.goto(`${kennel.url}/settings`);
    await page.getByLabel('Kennel').fill('Low Birch');
    await page.getByText('km, °C, kg').click();
    await page.getByLabel('Hours of silence').fill('99');
    await page.getByRole('button', { name: 'Keep the settings' }).click();
    await page.getByText('from 0.5 to 24').waitFor();
    await page.getByLabel('Hours of silence').fill('3,5');
    await page.getByRole('button', { name: 'Keep the settings' }).click();
    await page.getByText('The settings are kept.').waitFor();
    await page.getByText('Low Birch').waitFor();
    const { settings } = await kennel.call<{ settings: object }>('GET', '/settings');
    expect(settings).toMatchObject({ kennel: 'Low Birch', units: 'metric', runGapHours: 3.5 });
    await page.getByLabel('Name', { exact: true }).fill('Ada');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByRole('button', { name: 'Rename Ada' }).click();
    await page.getByLabel('New name of Ada').fill('Inga');
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByRole('button', { name: 'Remove Wren' }).click();
    await expect.poll(() => page.locator('.peoplelist .name').allTextContents()).toEqual(['Inga', 'Tobias']);
  });

  test('an old notebook is looked through first, then taken in, and once only', async () => {
    await enterKennel(kennel);
    const lines = Array.from(
      { length: 95 },
      (_, i) =>
        `2025-11-${String(1 + (i % 28)).padStart(2, '0')} ${String(6 + Math.floor(i / 28)).padStart(2, '0')}:10 Mile ${i + 1}, all good.`,
    );
    const text = ['Notes of a wet fall', ...lines].join('\n');
    await page.goto(kennel.url);
    await page.locator('.notebook summary').first().click();
    await page
      .getByLabel('Choose a file')
      .setInputFiles({ name: 'fall.txt', mimeType: 'text/plain', buffer: Buffer.from(text) });
    await page.getByText('fall.txt').waitFor();
    await page.getByRole('button', { name: 'Look through it' }).click();
    await page.getByText('95 notes found, Sat 1 Nov 2025 to Fri 28 Nov 2025.').waitFor();
    await page.getByText('1 line could not be read as a note').waitFor();
    await page.getByText('Line 1:').waitFor();
    expect((await kennel.call<{ total: number }>('GET', '/notes?state=all&season=2025-26')).total).toBe(0);
    await page.getByRole('button', { name: 'Take in 95 notes' }).click();
    await page.getByText('95 notes taken in').waitFor();
    expect((await kennel.call<{ total: number }>('GET', '/notes?state=all&season=2025-26')).total).toBe(95);
    await page.getByRole('button', { name: 'Look through it' }).click();
    await page.getByRole('button', { name: 'Take in 95 notes' }).click();
    await page.getByText('95 kept already').waitFor();
    expect((await kennel.call<{ total: number }>('GET', '/notes?state=all&season=2025-26')).total).toBe(95);
  });

  test('a notebook goes on where it was broken off', async () => {
    const lines = Array.from(
      { length: 90 },
      (_, i) =>
        `2025-12-01 ${String(8 + Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')} Mile ${i + 1}.`,
    );
    await page.goto(kennel.url);
    await page.locator('.notebook summary').first().click();
    await page.getByLabel('Text of the notebook').fill(lines.join('\n'));
    await page.getByRole('button', { name: 'Look through it' }).click();
    let calls = 0;
    await page.route('**/api/notes', (route) => (++calls === 2 ? route.abort('connectionreset') : route.continue()));
    await page.getByRole('button', { name: 'Take in 90 notes' }).click();
    await page.getByText('Snackstop did not answer').waitFor();
    await page.getByText('40 of 90 notes sent').waitFor();
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.getByText('90 notes taken in').waitFor();
  });

  test('damaged files: the banner stands on every page', async () => {
    await enterKennel(kennel);
    await kennel.stop();
    const file = (await readdir(kennel.folder)).find((name) => name === 'kennel.json') ?? '';
    await writeFile(join(kennel.folder, file), '{"schema": 1, "dogs": [');
    await kennel.start();
    const { warnings } = await kennel.call<{ warnings: string[] }>('GET', '/status');
    expect(warnings.length).toBeGreaterThan(0);
    for (const path of ['/', '/review', '/runs', '/load', '/dogs', '/settings']) {
      await page.goto(kennel.url + path);
      await page
        .getByRole('region', { name: 'About the kept files' })
        .getByText(warnings[0] as string)
        .waitFor();
    }
  });
});

/** The browser's recogniser, spoken to by the test. */
declare global {
  interface Window {
    hears?: { say(words: string, final: boolean): void; fail(error: string): void };
  }
}

describe.runIf(executable)('speaking', () => {
  let kennel: Kennel;
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch(executable as string);
    kennel = await openKennel();
    await enterKennel(kennel);
  });
  afterAll(async () => {
    await browser?.close();
    await kennel?.end();
  });

  /** A page whose recogniser is played by the test: the shape of the Web Speech API, none of its network. */
  const open = async (has: boolean): Promise<Watched> => {
    const watched = await openPage(browser, PHONE);
    await watched.page.addInitScript((has) => {
      class Recogniser {
        onresult: ((event: object) => void) | null = null;
        onerror: ((event: object) => void) | null = null;
        onend: (() => void) | null = null;
        results: { 0: { transcript: string }; length: number; isFinal: boolean }[] = [];
        start() {
          window.hears = {
            say: (transcript, isFinal) => {
              if (this.results.at(-1)?.isFinal === false) this.results.pop();
              this.results.push({ 0: { transcript }, length: 1, isFinal });
              this.onresult?.({ resultIndex: 0, results: this.results });
            },
            fail: (error) => {
              this.onerror?.({ error });
              this.onend?.();
            },
          };
        }
        stop() {
          this.onend?.();
        }
        abort() {
          this.onend?.();
        }
      }
      Object.assign(window, { SpeechRecognition: has ? Recogniser : undefined, webkitSpeechRecognition: undefined });
    }, has);
    await watched.page.goto(kennel.url);
    return watched;
  };

  test('press, talk, press again, keep', async () => {
    const { page, errors, close } = await open(true);
    const box = page.getByLabel('Note', { exact: true });
    await box.fill('Otter back in.');
    await page.getByRole('button', { name: /^Speak/ }).click();
    await page.getByRole('button', { name: /^Stop/, pressed: true }).waitFor();
    await page.evaluate(() => window.hears?.say('mile ten all', false));
    await expect.poll(() => box.inputValue()).toBe('Otter back in. mile ten all');
    await page.evaluate(() => window.hears?.say('mile ten all good', true));
    await page.evaluate(() => window.hears?.say('minus twenty', true));
    await page.getByRole('button', { name: /^Stop/ }).click();
    await page.getByRole('button', { name: /^Speak/, pressed: false }).waitFor();
    await expect.poll(() => box.inputValue()).toBe('Otter back in. mile ten all good minus twenty');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('last sent at').waitFor();
    const { notes } = await kennel.call<{ notes: { text: string; source: string }[] }>('GET', '/notes?state=all');
    expect(notes.map(({ text, source }) => [text, source])).toEqual([
      ['Otter back in. mile ten all good minus twenty', 'dictated'],
    ]);
    expect(errors).toEqual([]);
    await close();
  });

  test('what goes wrong is said in a sentence, and the words heard stay', async () => {
    const { page, close } = await open(true);
    await page.getByRole('button', { name: /^Speak/ }).click();
    await page.evaluate(() => window.hears?.say('mile eleven', true));
    await page.evaluate(() => window.hears?.fail('network'));
    await page.getByText('needs a connection and has none').waitFor();
    await expect.poll(() => page.getByLabel('Note', { exact: true }).inputValue()).toBe('mile eleven');
    await page.getByRole('button', { name: /^Speak/, pressed: false }).waitFor();
    await close();
  });

  test('a browser that can’t listen says so, and takes typed notes', async () => {
    const { page, close } = await open(false);
    await page.getByText('Typed notes only').waitFor();
    await expect.poll(() => page.getByRole('button', { name: /^Speak/ }).count()).toBe(0);
    await page.getByLabel('Note', { exact: true }).fill('Mile two.');
    await page.keyboard.press('Control+Enter');
    await page.getByText('Kept.', { exact: true }).waitFor();
    await close();
  });
});
