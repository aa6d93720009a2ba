/** Putting a run right in the browser: its distance, cutting it, joining, moving a note; and the settings' units on it. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { RunRecord } from '../../server/records/types.ts';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, type Watched } from './kennel.ts';

const executable = await getChromium();
/** Two days with a run each. */
const NOTES: [string, string][] = [
  ['2027-01-12T09:00', 'Juniper and Moss in lead, Tansy and Kodiak in wheel.'],
  ['2027-01-12T12:00', 'Back in the yard, 18 miles.'],
  ['2027-01-14T09:00', 'Juniper and Moss in lead, Otter and Bramble in wheel.'],
  ['2027-01-14T10:30', 'Mile ten, everyone ate.'],
  ['2027-01-14T10:45', 'Glare ice on the river.'],
  ['2027-01-14T11:00', 'Juniper and Moss in lead, Tansy and Kodiak in wheel.'],
  ['2027-01-14T12:00', 'Back in the yard, 20 miles.'],
];
const idOf = (index: number) => `0190b3a0-0000-7000-8000-${String(index + 1).padStart(12, '0')}`;

describe.runIf(executable)('a run', () => {
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
    await enterKennel(kennel);
    const notes = NOTES.map(([at, text], i) => ({ id: idOf(i), at: `${at}:00-09:00`, text }));
    await kennel.call('POST', '/notes', { notes });
    for (const { id } of notes) await kennel.call('POST', `/notes/${id}/review`, { act: 'accept-all' });
    await kennel.call('PUT', '/settings', { units: 'imperial', runGapHours: 5, season: '2026-27' });
    watched = await openPage(browser, DESK);
    page = watched.page;
    await page.goto(`${kennel.url}/runs/${idOf(2)}`);
    await page.getByRole('heading', { name: 'Thu 14 Jan 2027' }).waitFor();
  });
  afterEach(async () => {
    expect(watched.errors).toEqual([]);
    await watched.close();
    await kennel.end();
  });
  const runs = async () => (await kennel.call<{ runs: RunRecord[] }>('GET', '/runs')).runs;
  const figure = () => page.locator('.bigfigures dd').first();
  const note = (index: number) => page.locator(`#note-${idOf(index)}`);

  test('its distance is set by hand, what was said stays beside it, and is taken again', async () => {
    await page.getByText('Set the distance by hand').click();
    await page.getByLabel('Distance, miles').fill('none');
    await page.getByRole('button', { name: 'Set', exact: true }).click();
    await page.getByText('Give the distance as a number of miles').waitFor();
    await page.getByLabel('Distance, miles').fill('21,3');
    await page.getByLabel('Where it comes from').fill('GPS');
    await page.getByRole('button', { name: 'Set', exact: true }).click();
    await page.getByText('set by hand (GPS); 20 mi was told').waitFor();
    await expect.poll(() => figure().textContent()).toContain('21.3');
    await page.getByText('Set the distance by hand').click();
    await page.getByRole('button', { name: 'Take again what was told' }).click();
    await page.getByText('as told', { exact: true }).waitFor();
    await expect.poll(() => figure().textContent()).toContain('20');
  });

  test('it is cut at a note, and joined again', async () => {
    const before = (await runs()).map((run) => run.notes.length);
    expect(before).toEqual([5, 2]);
    await note(5).getByText('Cut or move').click();
    await note(5).getByRole('button', { name: 'Cut here' }).click();
    await page.getByText('The run was cut').waitFor();
    await note(5).waitFor({ state: 'detached' });
    expect((await runs()).map((run) => run.notes.length)).toEqual([2, 3, 2]);
    await page.getByRole('link', { name: /Run after/ }).click();
    await note(5).waitFor();
    await page.getByRole('button', { name: /Join with the run before it/ }).click();
    await page.getByText('The two runs are one now.').waitFor();
    await note(2).waitFor();
    expect((await runs()).map((run) => run.notes.length)).toEqual(before);
  });

  test('a note is moved to another run', async () => {
    await note(4).getByText('Cut or move').click();
    const choice = note(4).getByLabel('Move this note to');
    const other = choice.locator('option', { hasText: 'Tue 12 Jan' });
    await other.waitFor({ state: 'attached' });
    await choice.selectOption((await other.getAttribute('value')) as string);
    await note(4).getByRole('button', { name: 'Move', exact: true }).click();
    await page.getByText('The note was moved.').waitFor();
    await note(4).waitFor({ state: 'detached' });
    expect((await runs()).find((run) => run.notes.includes(idOf(4)))?.day).toBe('2027-01-12');
  });

  test('what the server will not do is said with its sentence, and nothing changes', async () => {
    await page.route('**/cut', (route) =>
      route.fulfill({ status: 409, json: { error: { code: 'conflict', message: 'These notes can’t be parted.' } } }),
    );
    await note(5).getByText('Cut or move').click();
    await note(5).getByRole('button', { name: 'Cut here' }).click();
    await note(5).getByRole('alert').getByText('These notes can’t be parted.').waitFor();
    expect((await runs()).map((run) => run.notes.length)).toEqual([5, 2]);
    // Chromium itself reports every answer of 400 and more.
    expect(watched.errors.splice(0)).toEqual([expect.stringContaining('409')]);
  });

  test('a kennel that thinks in kilometres sees kilometres', async () => {
    await kennel.call('PUT', '/settings', { units: 'metric', runGapHours: 5, season: '2026-27' });
    await page.reload();
    // 20 miles of 1,609.344 m (NIST SP 811, appendix B.8) are 32.2 km.
    await expect.poll(() => figure().textContent()).toContain('32.2 km');
    await page.goto(`${kennel.url}/load`);
    await page.getByLabel('Day', { exact: true }).fill('2027-01-14');
    await page.getByText('Kilometres under harness up to Thu 14 Jan').waitFor();
    await expect
      .poll(() =>
        page
          .getByRole('region', { name: /^Load of each dog/ })
          .getByRole('row', { name: /^Juniper/ })
          .getByRole('cell')
          .allTextContents(),
      )
      .toEqual(expect.arrayContaining(['32.2', '61.2']));
  });

  test('the load table sorts by a press on a head', async () => {
    await page.goto(`${kennel.url}/load`);
    await page.getByLabel('Day', { exact: true }).fill('2027-01-14');
    const table = page.getByRole('region', { name: /^Load of each dog/ });
    const dogs = () => table.locator('tbody th').allTextContents();
    await page.getByText('up to Thu 14 Jan').waitFor();
    await expect.poll(async () => (await dogs()).slice(0, 2).sort()).toEqual(['Juniper', 'Moss']);
    await table.getByRole('button', { name: 'Dog' }).click();
    await expect.poll(dogs).toEqual(['Bramble', 'Juniper', 'Kodiak', 'Moss', 'Otter', 'Tansy']);
    expect(await table.getByRole('columnheader', { name: 'Dog' }).getAttribute('aria-sort')).toBe('ascending');
    await table.getByRole('button', { name: 'Dog' }).click();
    await expect.poll(async () => (await dogs())[0]).toBe('Tansy');
  });
});
