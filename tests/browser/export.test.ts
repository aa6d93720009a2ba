/** Taking the season along in a browser: files downloaded, a store restored into an empty one, the sheets on paper. */
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** How many sheets of paper a PDF has: its page objects (ISO 32000-1, 7.7.3.3). */
const pagesIn = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

describe.runIf(executable)('export', () => {
  let browser: Browser;
  let full: Kennel;
  let place: string;
  let juniper = '';
  beforeAll(async () => {
    browser = await launch(executable as string);
    place = await mkdtemp(join(tmpdir(), 'snackstop-export-'));
    full = await openKennel();
    await enterKennel(full);
    // A season that is over is looked at on its last day with a run, whatever the day of the test.
    for (let day = 4; day < 26; day++) {
      const at = (clock: string) => `2026-01-${String(day).padStart(2, '0')}T${clock}:00-09:00`;
      const id = (n: number) => `0190b3a0-0000-7000-8000-00000000${day + 10}0${n}`;
      const notes = [
        { id: id(1), text: 'Juniper and Moss in lead, Otter and Bramble in swing.', at: at('09:00') },
        { id: id(2), text: `${8 + day} miles. Juniper’s left wrist is a bit sore.`, at: at('11:00') },
      ];
      await full.call('POST', '/notes', { notes });
      for (const note of notes) await full.call('POST', `/notes/${note.id}/review`, { act: 'accept-all' });
    }
    await full.call('PUT', '/settings', {
      kennel: 'Hollow Spruce',
      units: 'imperial',
      runGapHours: 5,
      season: '2025-26',
    });
    const { dogs } = await full.call<{ dogs: { id: string; name: string }[] }>('GET', '/dogs');
    juniper = dogs.find((dog) => dog.name === 'Juniper')?.id ?? '';
  });
  afterAll(async () => {
    await browser?.close();
    await full?.end();
    await rm(place, { recursive: true, force: true });
  });

  async function at<T>(url: string, look: typeof DESK, act: (page: Page) => Promise<T>): Promise<T> {
    const watched: Watched = await openPage(browser, look);
    try {
      await watched.page.goto(url);
      const done = await act(watched.page);
      expect(watched.errors).toEqual([]);
      return done;
    } finally {
      await watched.close();
    }
  }
  const kept = (kennel: Kennel) =>
    Object.fromEntries(
      readdirSync(kennel.folder)
        .filter((name) => !name.startsWith('lock-'))
        .map((name) => [name, readFileSync(join(kennel.folder, name), 'latin1')]),
    );

  test('season, spreadsheet and store come down; the store restores into an empty Snackstop to the byte', async () => {
    const download = (name: string) =>
      at(`${full.url}/export`, DESK, async (page) => {
        const coming = page.waitForEvent('download');
        await page.getByRole('link', { name }).click();
        const file = join(place, (await coming).suggestedFilename());
        await (await coming).saveAs(file);
        return file;
      });
    expect(Object.keys(unzipSync(readFileSync(await download('CSV files of 2025-26'))))).toContain('datapackage.json');
    expect(Object.keys(unzipSync(readFileSync(await download('Spreadsheet of 2025-26'))))).toContain('xl/workbook.xml');
    const store = await download('The whole store');
    const empty = await openKennel();
    try {
      await at(`${empty.url}/export`, DESK, async (page) => {
        await page.getByLabel('ZIP of a whole store').setInputFiles(store);
        await page.getByRole('button', { name: 'Restore' }).click();
        await page.getByText('Restored: 6 dogs, 44 notes of the season 2025-26.').waitFor();
        await page.getByText('A copy is restored only where nothing is kept yet').waitFor();
        await expect.poll(() => page.getByRole('button', { name: 'Restore' }).count()).toBe(0);
      });
      expect(kept(empty)).toEqual(kept(full));
      const sheet = (kennel: Kennel) => kennel.call('GET', `/dogs/${juniper}/sheet?season=2025-26&on=2026-01-25`);
      expect(await sheet(empty)).toEqual(await sheet(full));
    } finally {
      await empty.end();
    }
  });

  test('where something is kept nothing is restored, and a wrong file is told of', async () => {
    await at(`${full.url}/export`, DESK, async (page) => {
      await page.getByText('A copy is restored only where nothing is kept yet').waitFor();
      await expect.poll(() => page.getByLabel('ZIP of a whole store').count()).toBe(0);
    });
    const empty = await openKennel();
    try {
      const watched = await openPage(browser, DESK);
      await watched.page.goto(`${empty.url}/export`);
      await watched.page
        .getByLabel('ZIP of a whole store')
        .setInputFiles({ name: 'letter.zip', mimeType: 'application/zip', buffer: Buffer.from('Dear Wren') });
      await watched.page.getByRole('button', { name: 'Restore' }).click();
      await watched.page.getByRole('alert').getByText('no ZIP file').waitFor();
      await watched.page.getByRole('alert').getByText('Nothing was changed.').waitFor();
      await watched.close();
    } finally {
      await empty.end();
    }
  });

  test.each(['A4', 'Letter'])(
    'sheet and summary on %s: nothing beside the paper, no frame, no button',
    async (format) => {
      for (const [path, most] of [
        [`/dogs/${juniper}/sheet?season=2025-26`, 3],
        ['/summary?season=2025-26', 3],
      ] as const)
        await at(`${full.url}${path}`, DESK, async (page) => {
          await page.getByRole('table').first().waitFor();
          await page.emulateMedia({ media: 'print' });
          // A4 is 210 mm wide, Letter 216 mm (ISO 216, ANSI Y14.1), less two margins of 15 mm, at 96 pixels an inch.
          const width = Math.floor((((format === 'A4' ? 210 : 215.9) - 30) / 25.4) * 96);
          await page.setViewportSize({ width, height: 900 });
          const seen = await page.evaluate(() => ({
            over: [...document.querySelectorAll('.sheet *')].filter(
              (one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1,
            ).length,
            frame: [...document.querySelectorAll('.masthead, .nav, .no-print')].filter((one) => one.checkVisibility())
              .length,
            ink: getComputedStyle(document.querySelector('.sheet') as Element).color,
          }));
          expect(seen, path).toEqual({ over: 0, frame: 0, ink: 'rgb(0, 0, 0)' });
          const pdf = await page.pdf({ format: format as 'A4' | 'Letter', preferCSSPageSize: false });
          expect(pagesIn(pdf), path).toBeGreaterThanOrEqual(1);
          expect(pagesIn(pdf), path).toBeLessThanOrEqual(most);
        });
    },
  );

  test('the sheet tells the wrist, the miles and that it is for the veterinarian', async () => {
    await at(`${full.url}/dogs/${juniper}/sheet?season=2025-26`, DESK, async (page) => {
      const sheet = page.getByRole('article');
      await sheet.getByText('For your veterinarian: what was said and seen of Juniper').waitFor();
      await sheet.getByRole('rowheader', { name: 'left wrist' }).waitFor();
      await sheet.getByRole('cell', { name: '33 mi', exact: true }).first().waitFor();
    });
    await at(`${full.url}/summary?season=2025-26`, PHONE, async (page) => {
      await page.getByRole('rowheader', { name: 'Juniper' }).first().waitFor();
      await page.getByText('22', { exact: true }).first().waitFor();
    });
  });

  test.each(['day', 'night'] as const)('axe finds nothing on the three pages, on a phone, by %s', async (theme) => {
    for (const path of ['/export', `/dogs/${juniper}/sheet?season=2025-26`, '/summary?season=2025-26'])
      await at(`${full.url}${path}`, { ...PHONE, theme } as typeof DESK, async (page) => {
        await page.locator('h2').first().waitFor();
        await page.setViewportSize({ width: PHONE.width, height: 6000 });
        await page.evaluate(AXE);
        const { violations } = await page.evaluate(() =>
          (window as unknown as { axe: { run(root: Document, options: object): Promise<AxeResults> } }).axe.run(
            document,
            {
              runOnly: {
                type: 'tag',
                values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
              },
              resultTypes: ['violations'],
            },
          ),
        );
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 150)}`),
          path,
        ).toEqual([]);
        const sideways = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(sideways, path).toBeLessThanOrEqual(0);
      });
  });
});
