/** Without a connection: the page comes up, understands, keeps, and sends when Snackstop is back. From the first visit on. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getChromium, launch } from './chromium.ts';
import { enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();

describe.runIf(executable)('without a connection', () => {
  let kennel: Kennel;
  let browser: Browser;
  let phone: Watched;
  beforeAll(async () => {
    browser = await launch(executable as string);
    kennel = await openKennel();
    await enterKennel(kennel);
    phone = await openPage(browser, PHONE, 'allow');
  });
  afterAll(async () => {
    await browser?.close();
    await kennel?.end();
  });

  test('the page comes up after one visit, the dogs are known, a note is kept and sent later', async () => {
    const { page } = phone;
    await page.goto(kennel.url);
    await page.getByText('No note waits').waitFor();
    // The first visit is over when the pages are on the device and the roster is known there.
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.waitForFunction(() => (localStorage.getItem('snackstop.context') ?? '').includes('Juniper'));
    await kennel.stop();

    await page.goto(`${kennel.url}/`);
    await page.getByText('No connection to Snackstop').waitFor();
    await page.getByLabel('Note', { exact: true }).fill('Juniper’s favoring her left wrist a bit');
    await page.getByText('left wrist · lame, mild').waitFor();
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('1 note waits').waitFor();

    // Every other page comes up too and says what is the matter.
    await page.goto(`${kennel.url}/load`);
    await page.getByRole('alert').getByText('Snackstop did not answer').waitFor();
    await page.getByText('Notes waiting on this device are safe.').waitFor();

    await kennel.start();
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('columnheader', { name: 'Today' }).waitFor();
    await page.goto(`${kennel.url}/`);
    await page.getByText('No note waits').waitFor();
    const { notes } = await kennel.call<{ notes: { text: string }[] }>('GET', '/notes?state=all');
    expect(notes.map((note) => note.text)).toEqual(['Juniper’s favoring her left wrist a bit']);
  });
});
