/** The page Search in a real browser: asked in words, understood in parts that can be left out, found with what lies between. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE } from './kennel.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const executable = await getChromium();

/** What axe finds, a line each. The screen is made as tall as the page, so that nothing lies under the bar at its foot. */
async function axe(page: Page): Promise<string[]> {
  const { width = 0 } = page.viewportSize() ?? {};
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.max(600, height) });
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(
    (values) =>
      (window as unknown as { axe: { run(root: Document, options: object): Promise<AxeResults> } }).axe.run(document, {
        runOnly: { type: 'tag', values },
      }),
    TAGS,
  );
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`);
}

describe.runIf(executable)('the page Search', () => {
  let browser: Browser;
  let kennel: Kennel;
  beforeAll(async () => {
    browser = await launch(executable as string);
    kennel = await openKennel();
    await enterKennel(kennel);
    await kennel.call('PUT', '/settings', {
      kennel: 'Hollow Spruce',
      units: 'imperial',
      runGapHours: 5,
      season: '2026-27',
    });
    const notes = [
      ['2026-12-02T10:00', "Juniper's left wrist is sore."],
      ['2026-12-05T09:00', 'Juniper and Moss in lead.'],
      ['2026-12-05T11:00', 'Back in the yard, 20 miles.'],
      ['2026-12-20T10:00', "Juniper's left wrist is sore again."],
      ['2026-12-21T10:00', "Juniper's wrist, no soreness."],
      ['2026-12-28T09:00', 'Juniper and Moss in lead.'],
      ['2026-12-28T11:00', 'Back in the yard, 12 miles.'],
      ['2027-01-08T10:00', "Juniper's left wrist is sore, a moose stood on the trail."],
    ].map(([at, text], i) => ({
      id: `0190b3a0-0000-7000-8000-00000000010${i}`,
      text,
      at: `${at}:00-09:00`,
      by: 'Wren',
    }));
    await kennel.call('POST', '/notes', { notes });
    for (const { id } of notes.slice(0, 7)) await kennel.call('POST', `/notes/${id}/review`, { act: 'accept-all' });
  });
  afterAll(async () => {
    await browser?.close();
    await kennel?.end();
  });

  test('says what it understood, shows three episodes with the miles between, and changes with its parts', async () => {
    const { page, errors, close } = await openPage(browser, DESK);
    await page.goto(`${kennel.url}/search`);
    await page.getByText('Ask as you would speak').waitFor();
    await page.getByRole('searchbox').fill('juniper sore wrist');
    await page.keyboard.press('Enter');
    await page.getByText('Juniper · wrist · sore, not counting “no soreness” and “fine now”').waitFor();
    await expect.poll(() => page.locator('.timeline > li').count()).toBe(3);
    await expect
      .poll(() => page.locator('.timeline .between').allInnerTexts())
      .toEqual([
        expect.stringContaining('19 days, 12 mi in 1 run'),
        expect.stringContaining('18 days, 20 mi in 1 run'),
      ]);
    await expect.poll(() => page.locator('.timeline > li').first().textContent()).toContain('not reviewed yet');
    await expect.poll(async () => (await page.locator('.foundnotes mark').allInnerTexts()).join(' ')).toMatch(/wrist/);
    // What was told absent, on demand.
    await page.getByRole('button', { name: 'Show them too' }).click();
    await expect.poll(() => page.locator('.timeline > li').count()).toBe(4);
    await page.getByRole('button', { name: 'Show what was told to be so' }).click();
    await expect.poll(() => page.locator('.timeline > li').count()).toBe(3);
    // A part less, from the keyboard alone.
    await page.getByRole('button', { name: 'Leave out: sore' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('Juniper · wrist, not counting').waitFor();
    await page.goBack();
    await page.getByText('Juniper · wrist · sore, not counting').waitFor();
    // A part changed.
    await page.getByText('Change the parts').click();
    await page.getByLabel('To day').fill('2026-12-10');
    await page.getByRole('button', { name: 'Search with these' }).click();
    await expect.poll(() => page.locator('.timeline > li').count()).toBe(1);
    await page.getByRole('link', { name: 'Note of Wed 2 Dec', exact: true }).click();
    await page.waitForURL(/\/review\//);
    expect(errors).toEqual([]);
    await close();
  });

  test.each([
    ['phone', PHONE],
    ['desk', DESK],
  ] as const)('has nothing that axe finds, on a %s', async (_, look) => {
    const { page, errors, close } = await openPage(browser, look);
    for (const [path, ready] of [
      ['/search', '.examples'],
      ['/search?q=juniper+sore+wrist', '.timeline'],
      ['/search?q=moose', '.foundnotes'],
      ['/search?q=zeppelin', '.empty'],
    ] as const) {
      await page.goto(kennel.url + path);
      await page.locator(ready).waitFor();
      for (const one of await page.locator('.main details > summary').all()) await one.click();
      expect(await axe(page), path).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
        path,
      ).toBe(0);
    }
    expect(errors).toEqual([]);
    await close();
  });
});
