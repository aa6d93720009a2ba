/**
 * Every page, on a phone and on a desk, by day and by night, empty and with a run in it: axe-core's checks of WCAG 2.2
 * AA, the size of what has to be pressed, nothing wider than the screen, and no error in the console.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe, MITTS, sideways, small, TARGET } from './axe.ts';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();
describe.runIf(executable)('pages', () => {
  let browser: Browser;
  const kennels: Record<string, Kennel> = {};
  let run = '';
  let note = '';
  beforeAll(async () => {
    browser = await launch(executable as string);
    kennels.empty = await openKennel();
    const full = await openKennel();
    kennels.full = full;
    await enterKennel(full);
    const at = (clock: string) => `2027-01-14T${clock}:00-09:00`;
    const notes = [
      ['09:00', 'Juniper and Moss in lead, Otter and Bramble in swing, Tansy and Kodiak in wheel. Minus eighteen.'],
      ['10:10', 'Snack stop at mile ten. Everyone ate except Bramble.'],
      ['10:40', 'Juniper’s favoring her left wrist a bit, no swelling. Loaded Bramble at mile 12.'],
      ['12:30', 'Back in the yard, 20 miles, then the moon came up over the ridge.'],
      ['14:00', 'Nimbus is limping.'],
    ].map(([clock = '', text], i) => ({
      id: `0190b3a0-0000-7000-8000-00000000000${i}`,
      text,
      at: at(clock),
      by: 'Wren',
    }));
    await full.call('POST', '/notes', { notes });
    for (const { id } of notes.slice(0, 4)) await full.call('POST', `/notes/${id}/review`, { act: 'accept-all' });
    await full.call('PUT', '/settings', {
      kennel: 'Hollow Spruce',
      units: 'imperial',
      runGapHours: 5,
      season: '2026-27',
    });
    const { runs } = await full.call<{ runs: { id: string; dogs: unknown[] }[] }>('GET', '/runs?season=2026-27');
    run = encodeURIComponent(runs.find((one) => one.dogs.length > 0)?.id ?? '');
    note = notes[2]?.id ?? '';
  });
  afterAll(async () => {
    await browser?.close();
    for (const kennel of Object.values(kennels)) await kennel.end();
  });

  const PAGES: {
    name: string;
    kennel: 'empty' | 'full';
    path: () => string;
    ready: string;
    act?: (page: Page) => Promise<void>;
  }[] = [
    { name: 'Speak', kennel: 'full', path: () => '/', ready: '#note' },
    {
      name: 'Speak, with words in the box and the notebook open',
      kennel: 'full',
      path: () => '/',
      ready: '#note',
      act: async (page) => {
        await page.locator('.notebook summary').click();
        await page.locator('#note').fill('Mile ten, then the moon came up');
        await page.locator('.understood').waitFor();
      },
    },
    { name: 'Review', kennel: 'full', path: () => '/review', ready: '.entry' },
    {
      name: 'Review, with a form open',
      kennel: 'full',
      path: () => `/review/${note}`,
      ready: '.entry',
      act: async (page) => {
        await page.keyboard.press('c');
        await page.locator('.entryform').waitFor();
      },
    },
    { name: 'Review with nothing waiting', kennel: 'empty', path: () => '/review', ready: '.empty' },
    { name: 'Runs', kennel: 'full', path: () => '/runs', ready: '.runline' },
    { name: 'Runs with none', kennel: 'empty', path: () => '/runs', ready: '.empty' },
    {
      name: 'Run',
      kennel: 'full',
      path: () => `/runs/${run}`,
      ready: '.gangline svg',
      act: async (page) => {
        for (const one of await page.locator('.main details > summary').all()) await one.click();
      },
    },
    { name: 'Load', kennel: 'full', path: () => '/load', ready: '.sortable' },
    { name: 'Load without dogs', kennel: 'empty', path: () => '/load', ready: '.empty' },
    {
      name: 'Dogs',
      kennel: 'full',
      path: () => '/dogs',
      ready: '.roster',
      act: async (page) => {
        await page.getByRole('button', { name: 'Change Juniper' }).click();
        await page.locator('.adding > summary').click();
      },
    },
    { name: 'Dogs with none', kennel: 'empty', path: () => '/dogs', ready: '.empty' },
    { name: 'Settings', kennel: 'full', path: () => '/settings', ready: '#kennel' },
    { name: 'no such page', kennel: 'empty', path: () => '/nowhere', ready: '.empty' },
  ];

  describe.each([
    { name: 'phone', look: PHONE },
    { name: 'desk', look: DESK },
  ])('$name', ({ look }) => {
    let watched: Watched;
    beforeAll(async () => {
      watched = await openPage(browser, look);
    });
    afterAll(() => watched.close());

    test.each(PAGES)('$name', async ({ name, kennel, path, ready, act }) => {
      const { page, errors } = watched;
      await page.setViewportSize(look);
      await page.goto((kennels[kennel] as Kennel).url + path());
      await page.locator(ready).first().waitFor();
      await act?.(page);
      expect(await sideways(page)).toBe(0);
      expect(await small(page, name.startsWith('Speak') && look === PHONE ? MITTS : TARGET)).toEqual([]);
      expect(await axe(page)).toEqual([]);
      // The night changes nothing but colours.
      await page.locator('.theme').click();
      expect(await axe(page, { type: 'rule', values: ['color-contrast'] })).toEqual([]);
      await page.locator('.theme').click();
      expect(errors).toEqual([]);
    });
  });

  test('nothing is wider than a narrow phone', async () => {
    const { page, close } = await openPage(browser, { width: 360, height: 740 });
    for (const { name, kennel, path, ready, act } of PAGES) {
      await page.goto((kennels[kennel] as Kennel).url + path());
      await page.locator(ready).first().waitFor();
      await act?.(page);
      expect([name, await sideways(page)]).toEqual([name, 0]);
    }
    await close();
  });

  test('a phone shows the other pages behind More', async () => {
    const { page, errors, close } = await openPage(browser, PHONE);
    await page.goto((kennels.full as Kennel).url);
    await page.getByRole('button', { name: 'More' }).click();
    expect(await axe(page)).toEqual([]);
    await page.getByRole('link', { name: 'Dogs' }).click();
    await page.getByRole('heading', { name: 'Dogs', exact: true }).waitFor();
    await expect.poll(() => page.locator('#rooms').isVisible()).toBe(false);
    expect(errors).toEqual([]);
    await close();
  });

  test('day and night: one switch, kept over a closed page', async () => {
    const { page, close } = await openPage(browser, PHONE);
    await page.goto((kennels.full as Kennel).url);
    const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    await expect.poll(paper).toBe('rgb(255, 255, 255)');
    await page.getByRole('button', { name: 'Night' }).click();
    await expect.poll(paper).not.toBe('rgb(255, 255, 255)');
    const night = await paper();
    await page.reload();
    await page.locator('#note').waitFor();
    await expect.poll(paper).toBe(night);
    await close();
  });
});
