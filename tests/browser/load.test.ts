/**
 * Load and watch in a browser: who is open stands on top, the picture is gone through by keyboard, the table sorts and its
 * columns are chosen, notices to call a veterinarian come at once from what is typed and stand where they were reviewed,
 * wind chill on the run, days of silence in the settings; each page held to axe on a phone and on a desk.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { axe, MITTS, sideways, small, TARGET } from './axe.ts';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();
const TEAM = 'Juniper and Moss in lead, Otter and Bramble in swing, Tansy and Kodiak in wheel.';
/** Two days; what was told of Juniper on the first is open when the second run goes out. */
const NOTES: [at: string, text: string][] = [
  ['2026-11-10T09:00:00-09:00', TEAM],
  ['2026-11-10T11:00:00-09:00', 'Back in the yard, 12 miles. Juniper sore left wrist.'],
  ['2026-11-16T10:00:00-09:00', 'Juniper’s left wrist is fine now.'],
  ['2027-01-12T09:00:00-09:00', TEAM],
  ['2027-01-12T11:00:00-09:00', 'Back in the yard, 10 miles. Juniper sore left wrist, mild.'],
  ['2027-01-14T09:00:00-09:00', `${TEAM} Minus 20, wind 15 mph.`],
  ['2027-01-14T12:00:00-09:00', 'Back in the yard, 20 miles. Moss collapsed. Otter maybe dark urine.'],
];
const uuid = (n: number) => `0190b3a0-0000-7000-8000-00000000010${n}`;
const WAITING = uuid(9);

describe.runIf(executable)('load and watch', () => {
  let browser: Browser;
  let kennel: Kennel;
  let run = '';
  let watched: Watched;
  let page: Page;
  beforeAll(async () => {
    browser = await launch(executable as string);
    kennel = await openKennel(() => '2027-01-15T19:00:00.000-09:00');
    await enterKennel(kennel);
    const notes = NOTES.map(([at, text], i) => ({ id: uuid(i), at, text }));
    await kennel.call('POST', '/notes', { notes });
    for (const { id } of notes) await kennel.call('POST', `/notes/${id}/review`, { act: 'accept-all' });
    const waits = { id: WAITING, at: '2027-01-14T15:00:00-09:00', text: 'Tansy won’t put weight on her right hind' };
    await kennel.call('POST', '/notes', { notes: [waits] });
    await kennel.call('PUT', '/settings', { season: '2026-27' });
    const { runs } = await kennel.call<{ runs: { id: string; day: string }[] }>('GET', '/runs?season=2026-27');
    run = runs.find(({ day }) => day === '2027-01-14')?.id ?? '';
  });
  afterAll(async () => {
    await browser?.close();
    await kennel?.end();
  });
  beforeEach(async () => {
    watched = await openPage(browser, DESK);
    page = watched.page;
  });
  afterEach(async () => {
    expect(watched.errors).toEqual([]);
    await watched.close();
  });

  const load = `/load?on=2027-01-15`;
  const region = (name: RegExp) => page.getByRole('region', { name });
  const openLoad = async () => {
    await page.goto(kennel.url + load);
    await page.getByRole('heading', { name: 'Who runs on Sat 16 Jan' }).waitFor();
  };

  test('who runs tomorrow: a notice first, then dogs with something open, with what it is', async () => {
    await openLoad();
    const notice = region(/^Stop and call a veterinarian/);
    await notice.getByText('Moss collapsed. Stop and call a veterinarian.').waitFor();
    await notice.getByText('Otter: perhaps dark urine. Stop and call a veterinarian.').waitFor();
    await expect.poll(() => notice.textContent()).toContain('Told Thu 14 Jan');
    await expect.poll(() => notice.textContent()).toContain('no diagnosis');
    const rows = page.locator('section[aria-labelledby=tomorrow] tbody');
    await expect
      .poll(async () => (await rows.locator('th').allTextContents()).slice(0, 3))
      .toEqual(['Moss', 'Otter', 'Juniper']);
    await rows.getByText('open: left wrist, day 4 · sore, mild · second time this season').waitFor();
    await page.getByRole('button', { name: 'Dog' }).first().click();
    await expect.poll(() => rows.locator('th').first().textContent()).toBe('Bramble');
    // What is open stays under its dog in every order.
    await expect
      .poll(() => rows.locator('tr.below').first().locator('xpath=preceding-sibling::tr[1]').textContent())
      .toContain('Juniper');
  });

  test('the picture gives its figures by the arrow keys and by hovering, and has a table behind it', async () => {
    await openLoad();
    const picture = page.getByRole('group', { name: /Distance of each dog/ });
    await picture.focus();
    const told = page.locator('.readout');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => told.textContent()).toMatch(/^\w+, Fri 15 Jan: no run/);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => told.textContent()).toMatch(/Thu 14 Jan: 20 mi/);
    await page.keyboard.press('Home');
    await expect.poll(() => told.textContent()).toMatch(/Sat 5 Dec/);
    const row = page.locator('.weekrow', { hasText: 'Juniper' }).locator('svg');
    const box = await row.boundingBox();
    // The fourth day from the right of 42.
    await row.hover({ position: { x: ((box?.width ?? 0) * 38.5) / 42, y: 10 } });
    await expect
      .poll(() => told.textContent())
      .toBe('Juniper, Tue 12 Jan: 10 mi; left wrist sore, mild, told that day, open since Tue 12 Jan');
    await page.getByText('The same as a table').click();
    const table = region(/Distance of each dog on each day, as a table/);
    const day = table.getByRole('row', { name: /^Thu 14 Jan/ });
    await expect.poll(() => day.getByRole('cell').first().textContent()).toMatch(/^20/);
    await expect.poll(() => table.getByRole('row', { name: /^Tue 12 Jan/ }).textContent()).toContain('finding told');
  });

  test('the table has every figure on a desk, a few on a phone, and keeps the columns chosen', async () => {
    await openLoad();
    const heads = () =>
      region(/^Load of each dog/)
        .getByRole('columnheader')
        .allTextContents();
    await expect
      .poll(async () => (await heads()).map((head) => head.replace(/[↓↑↕]/u, '')))
      .toEqual([
        ...['Dog', 'Today', '7 days', '28-day mean week', 'Change, rolling', 'Change, weighted', 'Days since run'],
        ...['Runs in a row', 'Longest gap', 'Monotony', 'Strain, mi', 'Hours, 7 days', 'Runs, 28 days'],
      ]);
    const cells = region(/^Load of each dog/)
      .getByRole('row', { name: /^Juniper/ })
      .getByRole('cell');
    // 30 miles in 7 days; 30 in 28 are 7.5 a week; 30/7.5 = 4. Hand-worked from the notes above.
    await expect
      .poll(async () => (await cells.allTextContents()).slice(0, 4))
      .toEqual(['0', '30', '7.5', '4.00×after 62 days off']);
    await page.getByText(/^Columns: 12 of 12/).click();
    await page.getByRole('checkbox', { name: /^Monotony/ }).uncheck();
    await expect.poll(heads).not.toContain('Monotony↕');
    await page.reload();
    await page.getByText(/^Columns: 11 of 12/).waitFor();
    await page.getByText(/not a chance of injury/).waitFor();
  });

  test('a dog with less than 28 days of record says so', async () => {
    await page.goto(`${kennel.url}/load?on=2026-11-12`);
    const row = region(/^Load of each dog/).getByRole('row', { name: /^Juniper/ });
    await row.getByText('3 of 28 days').first().waitFor();
    expect(await row.textContent()).not.toContain('×');
  });

  test('shares, and what keeps coming back with what lies between', async () => {
    await openLoad();
    await page.getByText('How the distance was made up').click();
    const shares = region(/^Share of each dog’s distance by position/);
    await expect.poll(() => shares.getByRole('row', { name: /^Moss/ }).textContent()).toContain('100 %');
    await page.getByLabel('By', { exact: true }).selectOption('temperature, °C');
    await region(/by temperature/)
      .getByRole('columnheader', { name: '−30 to −20' })
      .waitFor();
    const times = region(/^Juniper, left wrist, each time/);
    const last = times.getByRole('row', { name: /^Tue 12 Jan/ });
    // Seen last on 10 November, again on 12 January: 63 days, and no run on the days between.
    await expect.poll(() => last.textContent()).toContain('63 days, 0 runs, 0 mi');
    await expect
      .poll(() => times.getByRole('row', { name: /^Tue 10 Nov/ }).textContent())
      .toContain('told over Mon 16 Nov');
  });

  test('Speak: the notice comes from the words alone, also without a connection', async () => {
    await watched.close();
    watched = await openPage(browser, PHONE);
    page = watched.page;
    await page.goto(kennel.url);
    await page.getByText(/Open on Fri 15 Jan: .*Juniper left wrist, day 4/).waitFor();
    const box = page.getByLabel('Note', { exact: true });
    await box.fill('Kodiak');
    await page.locator('.understood').waitFor();
    await page.context().setOffline(true);
    await box.fill('Kodiak will not cool down');
    await page.getByRole('alert').getByText('Kodiak is overheated. Stop and call a veterinarian.').waitFor();
    await box.fill('Kodiak maybe dark urine');
    await page.getByRole('alert').getByText('Kodiak: perhaps dark urine. Stop and call a veterinarian.').waitFor();
    expect(await page.getByRole('alert').textContent()).not.toContain('overheated');
    await box.fill('Kodiak no dark urine');
    await page.locator('.understood').getByText('no dark urine').waitFor();
    await expect.poll(() => page.locator('.caution').count()).toBe(0);
    watched.errors.splice(0);
  });

  test('Review: the notice stands beside an entry that is only proposed', async () => {
    await page.goto(`${kennel.url}/review/${WAITING}`);
    await page.getByRole('alert').getByText('Tansy is severely lame. Stop and call a veterinarian.').waitFor();
    await page.getByRole('button', { name: /^Remove .*severe/ }).click();
    await expect.poll(() => page.locator('.caution').count()).toBe(0);
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.locator('.caution').waitFor();
  });

  test('the run: what was open when it went out, its notices, and the wind chill with its caution', async () => {
    await page.goto(`${kennel.url}/runs/${run}`);
    const open = page.locator('section[aria-labelledby=wasopen]');
    await open.getByText('left wrist').waitFor();
    await expect.poll(() => open.textContent()).toContain('day 3');
    await expect.poll(() => open.textContent()).toContain('second time this season');
    // Moss collapsed on this run: it was not open when the run went out.
    expect(await open.textContent()).not.toContain('Moss');
    await region(/^Stop and call a veterinarian/)
      .getByText('Moss collapsed.')
      .waitFor();
    // −20 °F in 15 mph: −45 °F in the 2001 table of the National Weather Service.
    await page.getByText('−45 °F, from −20 °F and 15 mph').waitFor();
    await page.getByText('Bare skin can freeze in 5 to 10 minutes').waitFor();
    await page.getByText('nobody has measured it on a running dog').waitFor();
  });

  test('Dogs: open findings before the roster, and under the name', async () => {
    await page.goto(`${kennel.url}/dogs`);
    await page.getByRole('heading', { name: 'Open findings' }).waitFor();
    const order = await page.locator('h2').allTextContents();
    expect(order.indexOf('Open findings')).toBeLessThan(order.indexOf('Roster'));
    await page
      .getByRole('row', { name: /Juniper/ })
      .getByText('open: left wrist, day 4')
      .waitFor();
    await kennel.call('PUT', '/settings', { season: '2026-27' });
  });

  test('Settings: the days of silence', async () => {
    await page.goto(`${kennel.url}/settings`);
    const field = page.getByLabel('Days without a word before a finding ends');
    await expect.poll(() => field.inputValue()).toBe('14');
    await field.fill('2.5');
    await page.getByRole('button', { name: 'Keep the settings' }).click();
    await page.getByText('Give a whole number of days from 1 to 365.').waitFor();
    await field.fill('21');
    await page.getByRole('button', { name: 'Keep the settings' }).click();
    await page.getByText('The settings are kept.').waitFor();
    const { settings } = await kennel.call<{ settings: { silenceDays: number } }>('GET', '/settings');
    expect(settings.silenceDays).toBe(21);
    await kennel.call('PUT', '/settings', { season: '2026-27' });
  });

  test.each([
    { name: 'a phone', look: PHONE },
    { name: 'a desk', look: DESK },
  ])('held to axe on $name: load, run, review, dogs, settings, speak with a notice', async ({ look }) => {
    await watched.close();
    watched = await openPage(browser, look);
    page = watched.page;
    const pages: [path: string, ready: string, act?: () => Promise<void>][] = [
      [
        load,
        '.weeks',
        async () => {
          for (const one of await page.locator('.main details > summary').all()) await one.click();
          await page.getByText('The same as a table').waitFor();
        },
      ],
      [`/runs/${run}`, '.caution'],
      [`/review/${WAITING}`, '.caution'],
      ['/dogs', '.roster'],
      ['/settings', '#silence'],
      [
        '/',
        '#note',
        async () => {
          await page.getByLabel('Note', { exact: true }).fill('Kodiak collapsed');
          await page.locator('.caution').waitFor();
        },
      ],
    ];
    for (const [path, ready, act] of pages) {
      await page.setViewportSize(look);
      await page.goto(kennel.url + path);
      await page.locator(ready).first().waitFor();
      await act?.();
      expect([path, await sideways(page)]).toEqual([path, 0]);
      const least = path === '/' && look === PHONE ? MITTS : TARGET;
      expect([path, await small(page, least)]).toEqual([path, []]);
      expect([path, await axe(page)]).toEqual([path, []]);
      await page.locator('.theme').click();
      expect([path, await axe(page, { type: 'rule', values: ['color-contrast'] })]).toEqual([path, []]);
      await page.locator('.theme').click();
    }
  });
});
