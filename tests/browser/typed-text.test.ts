import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { opener } from './open.ts';
import { onScreen, ready } from './open-page.ts';

const open = opener();

const panel = (page: Page) => page.getByTestId('selection-panel');

/** The site as it would be saved now. */
async function saved(page: Page): Promise<SiteFile> {
  const saving = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const read = readSite(await readFile(await (await saving).path(), 'utf8'));
  if (!read.ok) throw new Error('what was saved cannot be read');
  return read.file;
}

async function choose(page: Page, id: string, at: readonly [number, number]): Promise<void> {
  const [x, y] = await onScreen(page, at);
  await page.mouse.click(x, y);
  await panel(page).getByRole('heading', { level: 2, name: id }).waitFor();
}

test('what is typed is taken by its own drop when another is pressed on the board, with the mouse or a finger', async () => {
  const { page, offences, close } = await open({ touch: true });
  const cord = () => panel(page).getByLabel('cord', { exact: true }).first();
  await choose(page, 'D05', [52, 9]);
  await cord().fill('33');
  await choose(page, 'D07', [70, 9]);
  await cord().fill('31');
  const [x, y] = await onScreen(page, [79, 9]);
  await page.touchscreen.tap(x, y);
  await panel(page).getByRole('heading', { level: 2, name: 'D08' }).waitFor();
  const cords = new Map((await saved(page)).drops?.map((drop) => [drop.id, drop.cord]));
  expect([cords.get('D05'), cords.get('D06'), cords.get('D07'), cords.get('D08')]).toEqual([33, 25, 31, 25]);
  expect(offences).toEqual([]);
  await close();
});

test('what is typed in a field that is taken away from under the hand is its own drop’s, and of a file that is closed nobody’s', async () => {
  const { page, offences, close } = await open();
  const cord = () => panel(page).getByLabel('cord', { exact: true }).first();
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await choose(page, 'D05', [52, 9]);
  await cord().fill('33');
  // As an answer that comes late would: nothing leaves the field before.
  await page.locator('tr[data-row=EV07] th button').evaluate((row: HTMLElement) => row.click());
  await panel(page).getByRole('heading', { level: 2, name: 'D07' }).waitFor();
  const site = await saved(page);
  expect(site.drops?.map(({ id, cord: feet }) => `${id} ${feet}`).slice(4, 7)).toEqual(['D05 33', 'D06 25', 'D07 25']);
  await choose(page, 'D06', [61, 9]);
  await cord().fill('29');
  // A file that is dropped on the page presses nothing either.
  await page.evaluate(
    (text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'same.site.json', { type: 'application/json' }));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    JSON.stringify({ ...site, name: 'the same again' }),
  );
  await page.getByRole('application', { name: /the same again/ }).waitFor();
  const again = await saved(page);
  expect(again.name).toBe('the same again');
  expect(again.drops?.find(({ id }) => id === 'D06')?.cord).toBe(25);
  expect(offences).toEqual([]);
  await close();
});

const FIELD = { width: 390, height: 844, touch: true } as const;

test('the first notes of a device are kept where the page is left before anyone says who writes', async () => {
  const { page, close } = await open({ ...FIELD, asksWho: true });
  await page.locator('li[data-row=D11] button').tap();
  const card = page.getByRole('region', { name: 'Drop D11' });
  await card.getByRole('button', { name: 'Note', exact: true }).tap();
  await card.getByLabel('note').fill('lead is short');
  // What is pressed before the question stands waits with the note, and takes nothing from it.
  await card.getByRole('button', { name: 'As drawn' }).evaluate((button: HTMLElement) => {
    (document.activeElement as HTMLElement).blur();
    button.click();
  });
  await page.getByRole('dialog', { name: 'Who writes?' }).waitFor();
  await page.reload();
  await ready(page);
  const { records = [] } = await saved(page);
  expect(records.map(({ of, what, text }) => ({ of, what, text }))).toEqual(
    expect.arrayContaining([
      { of: 'D11', what: 'note', text: 'lead is short' },
      { of: 'D11', what: 'place', text: undefined },
    ]),
  );
  expect(records.filter(({ what }) => what === 'note')).toHaveLength(1);
  await close();
});

test('what had to be written when the page was left is signed by whoever answers when it is back', async () => {
  const { page, close } = await open({ ...FIELD, asksWho: true });
  await page.locator('li[data-row=D11] button').tap();
  const card = page.getByRole('region', { name: 'Drop D11' });
  await card.getByRole('button', { name: 'As drawn' }).tap();
  const asked = page.getByRole('dialog', { name: 'Who writes?' });
  await asked.waitFor();
  // Another program is looked at for a moment.
  await page.evaluate(() => {
    let state = 'hidden';
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => state });
    document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
    state = 'visible';
    document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
  });
  await asked.getByLabel('your initials').fill('JB');
  await asked.getByRole('button', { name: 'Go on' }).tap();
  await asked.waitFor({ state: 'detached' });
  const { records = [] } = await saved(page);
  const last = new Map(records.map(({ of, part, what, by }) => [`${of} ${part ?? ''} ${what}`, by]));
  expect([...last.values()].length).toBeGreaterThan(0);
  expect(new Set(last.values())).toEqual(new Set(['JB']));
  expect(records.some(({ by }) => by === '')).toBe(true);
  await close();
});

test('a note that is too long stands until it is cut down, and one that is typed when the page is left is kept', async () => {
  const { page, close } = await open({ ...FIELD, asksWho: true });
  await page.locator('li[data-row=D11] button').tap();
  const card = page.getByRole('region', { name: 'Drop D11' });
  await card.getByRole('button', { name: 'Note', exact: true }).tap();
  const note = card.getByLabel('note');
  await note.fill('x'.repeat(2001));
  await note.blur();
  await page.getByRole('alert').getByText('note: 2000 letters or fewer').waitFor();
  await expect.poll(() => note.inputValue()).toBe('x'.repeat(2001));
  await note.fill('y'.repeat(2000));
  await page.reload();
  await ready(page);
  const { records = [] } = await saved(page);
  expect(records.map(({ of, what, text }) => ({ of, what, text }))).toEqual([
    { of: 'D11', what: 'note', text: 'y'.repeat(2000) },
  ]);
  await close();
});

test('cautions that are folded and left at once stay folded', async () => {
  const { page, close } = await open();
  const cautions = page.locator('.cautions');
  await cautions.locator('summary').evaluate((summary: HTMLElement) => {
    summary.click();
    document.querySelector('.cautions')?.remove();
  });
  expect(await page.evaluate(() => localStorage.getItem('overrow.cautions-read'))).toBe('yes');
  await close();
});
