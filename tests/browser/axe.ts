/** What every page is held to: axe-core's checks of WCAG 2.2 AA, the size of what has to be pressed, nothing wider than the screen. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** WCAG 2.2, 2.5.8 Target Size (Minimum): 24 by 24 CSS pixels. */
export const TARGET = 24;
/** On the Speak page, for mitts: the project's own measure. */
export const MITTS = 72;

/** What axe finds, a line each. The screen is made as tall as the page, so that nothing lies under the bar at its foot. */
export async function axe(
  page: Page,
  only: { type: 'tag' | 'rule'; values: string[] } = { type: 'tag', values: TAGS },
) {
  const { width = 0 } = page.viewportSize() ?? {};
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.max(600, height) });
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(
    (runOnly) =>
      (window as unknown as { axe: { run(root: Document, options: object): Promise<AxeResults> } }).axe.run(document, {
        runOnly,
        resultTypes: ['violations'],
      }),
    only,
  );
  return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.html.slice(0, 200)}`));
}

/** How far the page is wider than the screen. */
export const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Things to press that are smaller than `least` either way; links inside a sentence are measured by their line. */
export async function small(page: Page, least: number): Promise<string[]> {
  return page.evaluate((least) => {
    const found: string[] = [];
    for (const one of document.querySelectorAll<HTMLElement>('a[href], button, select, textarea, input, summary')) {
      const box = (one.matches('input') ? (one.closest('label') ?? one) : one).getBoundingClientRect();
      const inSentence =
        one.matches('a') && one.closest('p, li, dd') !== null && getComputedStyle(one).display === 'inline';
      const seen =
        one.checkVisibility({ checkVisibilityCSS: true, checkOpacity: false }) && box.width > 1 && box.height > 1;
      if (seen && !inSentence && Math.min(box.width, box.height) < least - 0.5)
        found.push(`${Math.round(box.width)}×${Math.round(box.height)} ${one.outerHTML.slice(0, 120)}`);
    }
    return found;
  }, least);
}
