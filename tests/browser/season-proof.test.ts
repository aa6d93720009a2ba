/**
 * The season's proof, in a browser, on the sample season with every note accepted: a sore wrist is found again with the
 * miles between, its dog's page says what the records say, the health sheet prints, and the whole store, taken along and
 * restored into an empty folder, shows the same.
 *
 * What is expected comes from the hand-worked list of the sample (tests/sample/expected.ts), from figures added up by hand
 * out of the notebook, which stand beside their check, and from the runs as the server gives them.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadSample } from '../../server/import/load-sample.ts';
import type { RunRecord } from '../../server/records/types.ts';
import { type Serving, serve } from '../../server/serve.ts';
import { dayWords } from '../../web/times.ts';
import { expected } from '../sample/expected.ts';
import { MISREAD } from '../sample/misread.ts';
import { getChromium, launch } from './chromium.ts';
import { DESK, type Look, openPage, PHONE } from './kennel.ts';

const executable = await getChromium();
/** NIST Special Publication 811, appendix B.8. */
const MILE = 1609.344;
const DOG = expected.wrist.dog;

interface Place extends Serving {
  runs(): Promise<RunRecord[]>;
}
const DAY_MS = 864e5;
const dayNumber = (day: string) => Date.parse(`${day}T00:00:00Z`) / DAY_MS;

describe.runIf(executable)('the season', () => {
  let browser: Browser;
  let place: string;
  let full: Place;
  let empty: Place;
  let id = '';
  beforeAll(async () => {
    browser = await launch(executable as string);
    place = await mkdtemp(join(tmpdir(), 'snackstop-proof-'));
    const { end, waiting } = await loadSample(join(place, 'full'), { waitingDays: 0 });
    expect(waiting).toBe(0);
    const open = async (name: string): Promise<Place> => {
      const serving = await serve({ port: 0, folder: join(place, name), now: () => end });
      const runs = async () =>
        ((await (await fetch(`${serving.url}/api/runs?season=2026-27`)).json()) as { runs: RunRecord[] }).runs;
      return { ...serving, runs };
    };
    full = await open('full');
    empty = await open('empty');
    const { dogs } = (await (await fetch(`${full.url}/api/dogs`)).json()) as { dogs: { id: string; name: string }[] };
    id = dogs.find((dog) => dog.name === DOG)?.id ?? '';
  });
  afterAll(async () => {
    await browser?.close();
    await full?.stop();
    await empty?.stop();
    await rm(place, { recursive: true, force: true });
  });

  async function at<T>(url: string, act: (page: Page) => Promise<T>, look: Look = DESK): Promise<T> {
    const { page, errors, close } = await openPage(browser, look);
    try {
      await page.goto(url);
      const done = await act(page);
      expect(errors).toEqual([]);
      return done;
    } finally {
      await close();
    }
  }

  /** The dog's own runs after one day and before another, added up from the run records. */
  async function between(from: string, to: string): Promise<string> {
    const mine = (await full.runs())
      .filter((run) => run.day > from && run.day < to)
      .flatMap((run) => run.dogs.filter((dog) => dog.dog === DOG && dog.stretches.length > 0));
    const miles = mine.reduce((sum, dog) => sum + (dog.metres ?? 0), 0) / MILE;
    return `${Math.round(miles * 10) / 10} mi and ${mine.length} runs since the`;
  }

  const searched = async (page: Page) => {
    await page.getByRole('searchbox').fill('sore wrist');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'What came back' }).waitFor();
    // The names become links when the roster has come.
    await page.locator('.cameback').getByRole('link', { name: DOG, exact: true }).first().waitFor();
  };

  test('“sore wrist” finds the wrist that came back twice, with the miles and runs between', async () => {
    await at(`${full.url}/search`, async (page) => {
      await searched(page);
      const wrist = page.locator('.cameback > li', { hasText: `${DOG} · left wrist, 3 times` });
      const times = await wrist.locator('ol > li').allInnerTexts();
      expect(times).toHaveLength(3);
      // The days on which the notebook speaks of that wrist for the first time.
      expect(times.map((words) => words.split(' · ')[0])).toEqual(['Sat 24 Oct', 'Sat 12 Dec', 'Sat 13 Feb']);
      // Added up by hand from the notebook's line-ups and distances: after 25 October 12, 15, 18, 18, 18 and 20 mi, after
      // 13 December 12, 24, 26, 28, 16 (in the other team), 30, 28 and 26 mi.
      expect(times[1]).toContain('101 mi and 6 runs since the time before, 48 days');
      expect(times[2]).toContain('190 mi and 8 runs since the time before, 62 days');
      expect(times[1]).toContain(await between('2026-10-25', '2026-12-12'));
      expect(times[2]).toContain(await between('2026-12-13', '2027-02-13'));
      // The time line numbers what it shows.
      const line = await page.locator('.timeline').textContent();
      expect(line).toContain('1st time this season, left wrist');
      expect(line).toContain('2nd time this season, left wrist: 101 mi and 6 runs since the 1st, 48 days');
      await wrist.getByRole('link', { name: DOG, exact: true }).click();
      await page.getByRole('heading', { name: DOG, level: 1 }).waitFor();
      expect(new URL(page.url()).pathname).toBe(`/dogs/${id}`);
    });
  });

  /** The dog's page once its pictures are drawn; everything that stands on it, the pictures' own words as well. */
  const pageOf = async (page: Page) => {
    await page.locator('.dogpage .drawn').nth(3).waitFor();
    await page.waitForFunction(() => [...document.querySelectorAll('.drawn')].every((one) => one.querySelector('svg')));
    return page.locator('.dogpage').textContent();
  };

  test('the dog’s page says what the records say', async () => {
    const runs = (await full.runs()).flatMap((run) =>
      run.dogs.filter((dog) => dog.dog === DOG && dog.stretches.length > 0).map((dog) => ({ day: run.day, dog })),
    );
    const milesIn = (from: number, to: number) => {
      const sum = runs
        .filter(({ day }) => dayNumber(day) >= from && dayNumber(day) <= to)
        .reduce((metres, { dog }) => metres + (dog.metres ?? 0), 0);
      return Math.round((sum / MILE) * 10) / 10;
    };
    await at(`${full.url}/dogs/${id}`, async (page) => {
      const words = await pageOf(page);
      expect(words).toContain(`Season${milesIn(0, 1e6)} mi${runs.length} runs`);
      expect(words).toContain('3rd time this season · 190 mi and 8 runs since the last, 62 days');
      expect(words).toContain('2nd time this season · 101 mi and 6 runs since the last, 48 days');
      await page.getByRole('img', { name: /left wrist: 3 times/ }).waitFor();
      // Any day by key: from the last one back to that of the second time, and its seven days added up anew.
      const day = page.getByRole('slider', { name: 'Day of the picture' });
      await day.focus();
      await page.keyboard.press('Home');
      const first = '2026-09-05';
      await page.getByText('Sat 5 Sep: 4 mi in 1 run').waitFor();
      const second = dayNumber('2026-12-12');
      for (let step = dayNumber(first); step < second; step++) await page.keyboard.press('ArrowRight');
      const readout = page.locator('.dayslider output');
      await readout.getByText(/^Sat 12 Dec: /).waitFor();
      const says = await readout.textContent();
      expect(says).toContain(`Sat 12 Dec: ${milesIn(second, second)} mi in 1 run`);
      expect(says).toContain(`7 days ${milesIn(second - 6, second)} mi`);
      expect(says).toContain(`28 days ${Math.round(milesIn(second - 27, second) * 2.5) / 10} mi`);
      expect(says).toContain('Left wrist begins, 2nd time.');
      await page.getByRole('link', { name: 'The run of this day' }).click();
      await page.getByRole('heading', { name: 'Sat 12 Dec 2026' }).waitFor();
    });
  });

  test('the weights of the notebook stand in the table behind the picture, and no others', async () => {
    const [[name, weights]] = Object.entries(expected.weights) as [[string, Record<string, number>]];
    const listed = Object.entries(weights).map(([day, pounds]) => ({
      day,
      row: `${dayWords(day)}weight ${pounds} lb`,
    }));
    await at(`${full.url}/dogs`, async (page) => {
      await page.getByRole('link', { name, exact: true }).click();
      await page.getByRole('heading', { name, level: 1 }).waitFor();
      await page.getByText('Measures as a table').click();
      const table = page.getByRole('region', { name: 'Measures as a table' });
      await table.getByRole('row').first().waitFor();
      const rows = (await table.getByRole('row').allTextContents()).filter((row) => row.includes('weight'));
      const shown = rows.map((row) => row.replace(/ lb.*/, ' lb')).reverse();
      expect(listed.map(({ row }) => row).filter((row) => shown.includes(row))).toEqual(shown);
      // What the grammar is known not to read is listed with its words in misread.ts.
      const missing = listed.filter(({ row }) => !shown.includes(row)).map(({ day }) => `weight ${day} ${name}`);
      expect(missing.filter((one) => !(one in MISREAD))).toEqual([]);
      expect(shown.length).toBeGreaterThan(4);
    });
  });

  test.each(['A4', 'Letter'] as const)('the health sheet and the dog’s page print on %s', async (format) => {
    await at(`${full.url}/dogs/${id}`, async (page) => {
      await pageOf(page);
      const shown = await page.pdf({ format });
      expect(shown.subarray(0, 5).toString()).toBe('%PDF-');
      await page.getByRole('link', { name: 'Health sheet' }).click();
      await page.getByText(`For your veterinarian: what was said and seen of ${DOG}`).waitFor();
      await page.emulateMedia({ media: 'print' });
      const paper = await page.getByRole('article').textContent();
      expect(paper).toMatch(/left wrist.*no\. 3 this season, 62 days, 8 runs, 190 mi/s);
      expect(
        await page.locator('.nav, .no-print').evaluateAll((all) => all.filter((one) => one.checkVisibility()).length),
      ).toBe(0);
      const pdf = await page.pdf({ format });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      // A sheet of text with the fonts it needs; an empty page is a few hundred bytes.
      expect(pdf.length).toBeGreaterThan(10_000);
      expect(pdf.length).not.toBe(shown.length);
    });
  });

  test('taken along and restored into an empty folder, search and page show the same', async () => {
    const file = await at(`${full.url}/export`, async (page) => {
      const coming = page.waitForEvent('download');
      await page.getByRole('link', { name: 'The whole store' }).click();
      const download = await coming;
      const to = join(place, 'store.zip');
      await download.saveAs(to);
      return to;
    });
    expect((await readFile(file)).subarray(0, 2).toString()).toBe('PK');
    await at(`${empty.url}/dogs`, async (page) => {
      await page.getByText('No dog on the roster').waitFor();
    });
    await at(`${empty.url}/export`, async (page) => {
      await page.getByLabel('ZIP of a whole store').setInputFiles(file);
      await page.getByRole('button', { name: 'Restore' }).click();
      await page.getByText(/^Restored: \d+ dogs, \d+ notes of the season 2026-27/).waitFor();
    });
    const foundIn = (url: string) =>
      at(`${url}/search`, async (page) => {
        await searched(page);
        return [
          await page.locator('.cameback').textContent(),
          await page.locator('.timeline').textContent(),
          await page.locator('.foundnotes').textContent(),
        ];
      });
    const found = await foundIn(full.url);
    expect(found.join()).toContain('190 mi and 8 runs');
    expect(await foundIn(empty.url)).toEqual(found);
    for (const look of [DESK, PHONE]) {
      const pictured = (url: string) =>
        at(
          `${url}/dogs/${id}`,
          async (page) => [
            await pageOf(page),
            await page
              .locator('.dogpage svg')
              .evaluateAll((all) => all.map((one) => one.outerHTML.replace(/plot-[0-9a-f]+/g, ''))),
          ],
          look,
        );
      const before = await pictured(full.url);
      expect(before[1]?.length).toBeGreaterThan(4);
      expect(await pictured(empty.url)).toEqual(before);
    }
    // One note put aside, and the two are no longer the same: what was compared is what the notes say.
    const { hits } = (await (await fetch(`${empty.url}/api/search?q=sore%20left%20wrist&dog=${DOG}`)).json()) as {
      hits: { note: string; day: string }[];
    };
    const note = hits.find((hit) => hit.day === '2026-12-12')?.note;
    const response = await fetch(`${empty.url}/api/notes/${note}/review`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ act: 'set-aside', aside: true }),
    });
    expect(response.status).toBe(200);
    await expect.poll(() => foundIn(empty.url)).not.toEqual(found);
  });
});
