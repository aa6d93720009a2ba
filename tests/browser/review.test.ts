/** Review in a real browser: names nobody knows, changing in place, adding, setting aside, undo, keys and their switch. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { NoteView } from '../../server/routes/schemas.ts';
import { getChromium, launch } from './chromium.ts';
import { DESK, enterKennel, type Kennel, openKennel, openPage, PHONE, type Watched } from './kennel.ts';

const executable = await getChromium();
const TEAM = 'Juniper and Moss in lead, Otter and Bramble in swing, Tansy and Kodiak in wheel.';

describe.runIf(executable)('review', () => {
  let kennel: Kennel;
  let browser: Browser;
  let watched: Watched;
  let page: Page;
  let made = 0;
  beforeAll(async () => {
    browser = await launch(executable as string);
  });
  afterAll(async () => {
    await browser?.close();
  });
  beforeEach(async () => {
    made = 0;
    kennel = await openKennel();
    await enterKennel(kennel);
    watched = await openPage(browser, DESK);
    page = watched.page;
  });
  afterEach(async () => {
    expect(watched.errors).toEqual([]);
    await watched.close();
    await kennel.end();
  });

  /** Sends notes of this day, a minute apart. */
  const send = async (...texts: string[]) => {
    const started = Date.now() - 3_600_000;
    const notes = texts.map((text) => {
      made++;
      return {
        id: `0190b3a0-0000-7000-8000-${String(made).padStart(12, '0')}`,
        text,
        at: new Date(started + made * 60_000).toISOString().replace('Z', '+00:00'),
      };
    });
    await kennel.call('POST', '/notes', { notes });
  };
  const noteOf = async (number: number) =>
    (await kennel.call<{ note: NoteView }>('GET', `/notes/0190b3a0-0000-7000-8000-${String(number).padStart(12, '0')}`))
      .note;
  const open = async (path = '/review?order=time') => {
    await page.goto(kennel.url + path);
    await page.locator('.entry[aria-current=true]').waitFor();
  };
  const looked = () => page.locator('.entry.looked');
  const told = (text: string) => page.locator('.toldline').getByText(text).waitFor();

  test('a name nobody knows is added to the roster in one step, and the notes that wait are read again', async () => {
    await send('Nimbus and Moss in lead.', 'Nimbus is limping on the left front.');
    await open('/review');
    await page.getByText('“Nimbus” is not on the roster. New dog?').waitFor();
    await page.getByRole('button', { name: 'Add her' }).click();
    await told('Nimbus is on the roster.');
    await told('read again');
    const { dogs } = await kennel.call<{ dogs: { name: string; sex: string }[] }>('GET', '/dogs');
    expect(dogs).toContainEqual(expect.objectContaining({ name: 'Nimbus', sex: 'F' }));
    for (const number of [1, 2]) {
      const note = await noteOf(number);
      expect(note.unknownNames).toEqual([]);
      expect(note.entries.flatMap((e) => e.entry.dogs)).toContain('Nimbus');
    }
    await expect.poll(() => page.getByText('is not on the roster').count()).toBe(0);
    await expect.poll(() => page.locator('.entries').textContent()).toContain('Nimbus');
  });

  test('a name that was heard wrong is learned for a dog of the roster', async () => {
    await send('Zorbulak is limping.');
    await open('/review');
    await page.getByText('“Zorbulak” is not on the roster').waitFor();
    await page.getByText('It is a dog of the roster').click();
    await page.getByLabel('“Zorbulak” is').selectOption('Kodiak');
    await page.getByRole('button', { name: 'Take it so from now on' }).click();
    await told('“Zorbulak” is taken as Kodiak from now on.');
    expect((await noteOf(1)).entries.flatMap((e) => e.entry.dogs)).toContain('Kodiak');
  });

  test('a name corrected twice in the same way is offered as a learned word', async () => {
    await send(TEAM, 'Zorbulak is limping.', 'Zorbulak threw up.');
    for (const number of [2, 3]) {
      await open(`/review/0190b3a0-0000-7000-8000-${String(number).padStart(12, '0')}`);
      await page
        .locator('.entry', { hasText: /lame|vomiting/ })
        .getByRole('button', { name: 'Change' })
        .click();
      const form = page.locator('.entryform');
      await form.getByText('Kodiak', { exact: true }).click();
      await form.getByRole('button', { name: 'Change and accept' }).click();
      await told('Changed and accepted: Kodiak');
    }
    await page.getByText('“Zorbulak” was Kodiak again.').waitFor();
    await page.getByRole('button', { name: 'Yes, learn it' }).click();
    await told('Learned: “Zorbulak” is Kodiak.');
    const { dogs } = await kennel.call<{ dogs: { name: string; heard: string[] }[] }>('GET', '/dogs');
    expect(dogs.find((dog) => dog.name === 'Kodiak')?.heard).toEqual(['Zorbulak']);
  });

  test('an entry shows the words it was read from; words nothing was read from are visible as such', async () => {
    await send(TEAM, 'Juniper’s favoring her left wrist a bit, and the purple zeppelin waved.');
    await open();
    await page.keyboard.press('n');
    await page.getByText('2 of 2').waitFor();
    const finding = page.locator('.entry', { hasText: 'left wrist · lame, mild' });
    await finding.waitFor();
    await finding.hover();
    const shown = (await page.locator('.notetext .looked').allTextContents()).join('');
    expect(shown).toContain('favoring her left wrist');
    expect(shown).not.toContain('zeppelin');
    expect((await page.locator('.notetext .unread').allTextContents()).join('')).toContain('purple zeppelin');
    await expect.poll(() => page.locator('.paper').textContent()).toContain('Not read: “');
  });

  test('changing in place: the form is filled, the change is accepted, what was read stays known', async () => {
    await send(TEAM, 'Juniper is limping, left wrist is sore.');
    await open();
    await page.keyboard.press('n');
    await page.getByText('2 of 2').waitFor();
    await page.locator('.entry', { hasText: 'sore' }).getByRole('button', { name: 'Change' }).click();
    const form = page.locator('.entryform');
    await expect.poll(() => form.getByLabel('Kind').inputValue()).toBe('finding');
    await expect.poll(() => form.getByLabel('Part').inputValue()).toBe('wrist');
    // The focus is in the form: its keys belong to it, not to the page.
    await form.getByLabel('Kind').focus();
    await page.keyboard.press('u');
    await form.getByText('right', { exact: true }).click();
    await form.getByText('mild', { exact: true }).click();
    await form.getByRole('button', { name: 'Change and accept' }).click();
    await told('Changed and accepted: Juniper · right wrist · sore, mild.');
    const changed = (await noteOf(2)).entries.find((e) => e.was);
    expect(changed).toMatchObject({
      state: 'accepted',
      entry: { kind: 'finding', part: 'wrist', side: 'right', sign: 'sore', severity: 'mild', dogs: ['Juniper'] },
      was: { side: 'left' },
    });
    await page.getByText('was read as: Juniper · left wrist · sore').waitFor();
    await page.keyboard.press('u');
    await told('Taken back');
    expect((await noteOf(2)).entries.every((e) => e.state === 'proposed')).toBe(true);
  });

  test('Escape leaves the form as it was; what is wrong is said at the field', async () => {
    await send(TEAM);
    await open();
    await page.keyboard.press('+');
    const form = page.locator('.entryform');
    await form.getByLabel('Kind').selectOption('distance');
    await form.getByRole('button', { name: 'Add', exact: true }).click();
    await form.getByText('This has to be given.').or(form.getByText('Give a number, like 14.5.')).waitFor();
    await form.getByLabel('Number').fill('14,5');
    await form.getByRole('button', { name: 'Add', exact: true }).click();
    await told('Added: 14.5 mi, the whole run.');
    expect((await noteOf(1)).entries.at(-1)).toMatchObject({
      from: 'person',
      state: 'accepted',
      entry: { kind: 'distance', measure: 'total', value: 14.5, unit: 'mi', dogs: [] },
    });
    await page.keyboard.press('c');
    await form.waitFor();
    await page.keyboard.press('Escape');
    await form.waitFor({ state: 'detached' });
    await looked().and(page.locator(':focus')).waitFor();
  });

  test('every key does what the page says of it', async () => {
    await send(TEAM, 'Mile ten. Minus twenty.', 'Mile twelve.');
    await open();
    const number = () => looked().locator('.no').textContent();
    const first = await number();
    await page.keyboard.press('ArrowDown');
    await expect.poll(number).not.toBe(first);
    await page.keyboard.press('ArrowUp');
    await expect.poll(number).toBe(first);
    await page.keyboard.press('n');
    await page.getByText('2 of 3').waitFor();
    await page.keyboard.press('p');
    await page.getByText('1 of 3').waitFor();
    await page.keyboard.press('n');
    await page.getByText('2 of 3').waitFor();
    await page.keyboard.press('a');
    await told('Accepted:');
    await page.keyboard.press('r');
    await told('Removed:');
    expect((await noteOf(2)).entries.map((e) => e.state)).toEqual(['accepted', 'removed']);
    await page.keyboard.press('s');
    await told('Set aside');
    expect((await noteOf(2)).aside).toBe(true);
    await page.getByText('3 of 3').waitFor();
    // Undo goes back to the note that was set aside, and further back from there.
    await page.keyboard.press('u');
    await page.getByText('2 of 3').waitFor();
    await page.keyboard.press('u');
    await page.keyboard.press('u');
    await expect.poll(async () => (await noteOf(2)).entries.map((e) => e.state)).toEqual(['proposed', 'proposed']);
    await page.keyboard.press('Shift+A');
    await told('Accepted 2 entries');
    await page.getByText('3 of 3').waitFor();
    expect((await noteOf(2)).state).toBe('reviewed');
  });

  test('keys pressed faster than the server answers are all carried out, in their order', async () => {
    await send(TEAM, ...Array.from({ length: 8 }, (_, i) => `Mile ${i + 1}.`));
    await open();
    await page.route('**/review', async (route) => {
      // Every answer is held back until the keys have all been pressed.
      await held;
      await route.continue();
    });
    let letGo = () => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    for (let i = 0; i < 9; i++) await page.keyboard.press('Shift+A');
    letGo();
    await page.getByRole('heading', { name: 'All reviewed' }).waitFor();
    expect((await kennel.call<{ total: number }>('GET', '/notes?state=waiting')).total).toBe(0);
  });

  test('single keys can be turned off', async () => {
    await send(TEAM);
    await open();
    await page.getByLabel('Single keys work on this page').uncheck();
    await looked().focus();
    await page.keyboard.press('Shift+A');
    await page.keyboard.press('a');
    await page.reload();
    await page.locator('.entry').first().waitFor();
    await looked().focus();
    await page.keyboard.press('a');
    await page.getByRole('button', { name: 'Accept all' }).waitFor();
    expect((await noteOf(1)).entries.every((e) => e.state === 'proposed')).toBe(true);
  });

  test('a note in which nothing was read is looked at, and goes', async () => {
    await send('Xylophone quartz.');
    await page.goto(`${kennel.url}/review`);
    await page.getByRole('button', { name: /Nothing to take|Accept all/ }).click();
    await page.getByRole('heading', { name: 'All reviewed' }).waitFor();
    expect((await noteOf(1)).state).toBe('reviewed');
    await page.getByRole('link', { name: 'Reviewed', exact: true }).click();
    await page.getByText('Xylophone quartz.').first().waitFor();
  });

  test('by the thumb on a phone', async () => {
    await send(TEAM, 'Mile ten.');
    const phone = await openPage(browser, PHONE);
    await phone.page.goto(`${kennel.url}/review?order=time`);
    await phone.page.locator('.entry').first().getByRole('button', { name: 'Accept' }).click();
    await phone.page.locator('.entry.accepted').first().waitFor();
    await phone.page.getByRole('button', { name: 'Accept all' }).click();
    await phone.page.getByText('2 of 2').waitFor();
    // The next note begins at its words.
    expect(await phone.page.locator('.notetext').evaluate((words) => words.getBoundingClientRect().top)).toBeLessThan(
      844 / 2,
    );
    await phone.page.getByRole('button', { name: 'Accept all' }).click();
    await phone.page.getByRole('heading', { name: 'All reviewed' }).waitFor();
    await phone.page.getByRole('button', { name: 'Take the last back' }).click();
    await phone.page.getByText('2 of 2').waitFor();
    expect(phone.errors).toEqual([]);
    await phone.close();
  });
});
