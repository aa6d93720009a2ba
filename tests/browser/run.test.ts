/** The main job in a real browser: a run of ten notes is typed, reviewed from the keyboard, and its miles stand on Load. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { DESK, DOGS, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();

const NOTES = [
  'Juniper and Moss in lead, Otter and Bramble in swing, Tansy and Kodiak in wheel.',
  'Minus eighteen, light wind, glare ice on the river.',
  'Mile five, everybody happy.',
  'Snack stop at mile ten. Everyone ate except Bramble, she wouldn’t touch the fish.',
  'Juniper’s favoring her left wrist a bit, no swelling.',
  'Loaded Bramble at mile 12.',
  'Kodiak lost his left hind bootie.',
  'Mile sixteen, trail is punchy.',
  'Otter pulling hard, Tansy a little tired.',
  'Back in the yard, 20 miles, feet all look clean.',
];
/** The dog loaded at mile 12 of 20 has 12 miles, the others 20: the project's own rule for stretches. */
const MILES: Record<string, string> = {
  Juniper: '20',
  Moss: '20',
  Otter: '20',
  Bramble: '12',
  Tansy: '20',
  Kodiak: '20',
};

describe.runIf(executable)('a run of ten notes', () => {
  let kennel: Kennel;
  let browser: Browser;
  let phone: Watched;
  let desk: Watched;
  beforeAll(async () => {
    kennel = await openKennel();
    await enterKennel(kennel);
    browser = await launch(executable as string);
    phone = await openPage(browser, PHONE);
    desk = await openPage(browser, DESK);
  });
  afterAll(async () => {
    await browser?.close();
    await kennel?.end();
  });

  test('is typed on a phone, understood at once, and sent', async () => {
    const { page } = phone;
    await page.goto(kennel.url);
    for (const note of NOTES) {
      await page.getByLabel('Note', { exact: true }).fill(note);
      await page.getByRole('button', { name: 'Keep' }).click();
      await page.getByText('Kept.', { exact: true }).waitFor();
    }
    await page.getByText('No note waits').waitFor();
    await page.getByText('last sent at').waitFor();
    const { total } = await kennel.call<{ total: number }>('GET', '/notes?state=waiting');
    expect(total).toBe(NOTES.length);
    await page.getByLabel('Note', { exact: true }).fill('Juniper’s favoring her left wrist a bit');
    await page.getByText('left wrist · lame, mild').waitFor();
    await page.getByRole('button', { name: 'Clear' }).click();
  });

  test('counts for nothing before it is reviewed', async () => {
    const { page } = desk;
    await page.goto(`${kennel.url}/load`);
    await page.getByText('10 notes still wait for review').waitFor();
    for (const [dog] of DOGS) expect(await todayOf(page, dog)).toBe('0');
  });

  test('is reviewed from the keyboard alone, in less than a minute', async () => {
    const { page } = desk;
    await page.goto(`${kennel.url}/review`);
    await page.getByText(`1 of ${NOTES.length}`).waitFor();
    const began = performance.now();
    // One note entry by entry, with a step back; the others at a stroke each.
    await page.locator('.entry[aria-current=true]:focus').waitFor();
    await page.keyboard.press('a');
    await page.locator('.entry.accepted').first().waitFor();
    await page.keyboard.press('u');
    await page.getByText('Taken back').waitFor();
    await expect.poll(() => page.locator('.entry.accepted').count()).toBe(0);
    for (let i = 0; i < NOTES.length; i++) await page.keyboard.press('Shift+A');
    await page.getByRole('heading', { name: 'All reviewed' }).waitFor();
    const seconds = (performance.now() - began) / 1000;
    console.log(`ten notes reviewed from the keyboard in ${seconds.toFixed(1)} s`);
    expect(seconds).toBeLessThan(60);
    const { total } = await kennel.call<{ total: number }>('GET', '/notes?state=waiting');
    expect(total).toBe(0);
  });

  test('stands as miles on the Load page, and as a team on its gangline', async () => {
    const { page } = desk;
    await page.getByRole('link', { name: 'Load' }).first().click();
    await page.getByRole('columnheader', { name: 'Today' }).waitFor();
    for (const [dog] of DOGS) expect([dog, await todayOf(page, dog)]).toEqual([dog, MILES[dog]]);
    await page.getByRole('link', { name: 'Runs' }).first().click();
    await page.locator('.runline').click();
    const picture = page.getByRole('img', { name: /The team at the start/ });
    // Nobody told a side, so a pair may stand either way round.
    const pair = (one: string, other: string) => `(${one} and ${other}|${other} and ${one})`;
    const team = `lead: ${pair('Juniper', 'Moss')}; swing: ${pair('Otter', 'Bramble')}; wheel: ${pair('Tansy', 'Kodiak')}`;
    expect(await picture.getAttribute('aria-label')).toMatch(new RegExp(team));
    await expect.poll(() => picture.textContent()).toContain('loaded at 12 mi');
    await expect
      .poll(() => page.getByRole('row', { name: /^Juniper/ }).textContent())
      .toContain('left wrist · lame, mild');
  });

  test('is taken back: the miles go', async () => {
    const { page } = desk;
    const { notes } = await kennel.call<{ notes: { id: string; text: string }[] }>('GET', '/notes?state=all');
    const last = notes.find((note) => note.text.startsWith('Back in the yard'));
    await page.goto(`${kennel.url}/review/${last?.id}`);
    await page.locator('.entry').first().waitFor();
    await page.keyboard.press('u');
    await page.getByText('Taken back').waitFor();
    await page.goto(`${kennel.url}/load`);
    await page.getByRole('columnheader', { name: 'Today' }).waitFor();
    // Without the total the last mark is what is known: mile 16.
    expect(await todayOf(page, 'Juniper')).toBe('16');
    expect(await todayOf(page, 'Bramble')).toBe('12');
  });

  test('without an error in the console', () => {
    expect([...phone.errors, ...desk.errors]).toEqual([]);
  });
});

/** The miles of today that stand in a dog's row. */
async function todayOf(page: Watched['page'], dog: string): Promise<string | undefined> {
  const cells = await page
    .getByRole('region', { name: /^Load of each dog/ })
    .getByRole('row', { name: new RegExp(`^${dog}`) })
    .getByRole('cell')
    .allTextContents();
  return cells[0];
}
