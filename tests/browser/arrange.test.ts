import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, ready, seriousFaults, tally } from './open-page.ts';

const open = opener();

const title = (page: Page): Promise<string | null> => page.getByTestId('selection-panel').locator('h2').textContent();

/** Draws a path round places of the plan, feet, with Ctrl held. */
async function encircle(page: Page, path: readonly (readonly [number, number])[]): Promise<void> {
  await page.keyboard.down('Control');
  for (const [i, at] of path.entries()) {
    const [x, y] = await onScreen(page, at);
    await page.mouse.move(x, y, { steps: 4 });
    if (i === 0) await page.mouse.down();
  }
  await page.mouse.up();
  await page.keyboard.up('Control');
}

/** Round D03, D04 and D05 of the library lot, and none of the stalls under them. */
const ROUND = [
  [31, 12],
  [55, 12],
  [55, 7.5],
  [31, 7.5],
] as const;

test('a path takes what lies inside it, and leaves locked and hidden kinds alone', async () => {
  const { page, offences, close } = await open();
  await encircle(page, ROUND);
  await expect.poll(() => title(page)).toBe('3 drops');
  await page.getByTestId('board').press('Escape');
  await page.locator('summary', { hasText: 'Show and lock' }).click();
  await page.getByLabel('Lock drops').check();
  await encircle(page, ROUND);
  await expect.poll(() => page.getByTestId('selection-panel').count()).toBe(0);
  const before = Number((await tally(page)).baseMarks);
  await page.getByLabel('Show stalls').uncheck();
  await page.waitForFunction(
    (was) => Number(document.querySelector<HTMLElement>('[data-testid=board]')?.dataset.baseMarks) < was,
    before,
  );
  await expect.poll(() => page.locator('.board-foot').textContent()).toContain('1 kind hidden, 1 locked');
  expect(offences).toEqual([]);
  await close();
});

test('a selection is arrayed and turned by typed values, each in one step that undo takes back', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, [74.5, 12]);
  await page.mouse.click(x, y);
  await expect.poll(() => title(page)).toBe('S08');
  await page.locator('summary', { hasText: 'Move, copy, turn' }).click();
  const panel = page.getByTestId('selection-panel');
  const array = panel.getByRole('region', { name: 'Array' });
  await array.getByLabel('copies across', { exact: true }).fill('4');
  await array.getByLabel('across every').fill("4' 6 * 2");
  await array.getByLabel('across every').press('Enter');
  await array.getByRole('button', { name: 'Array' }).click();
  await expect.poll(() => title(page)).toBe('3 stalls');
  await page.getByRole('button', { name: /^Undo ?: array stall S08/ }).click();
  const turn = panel.getByRole('region', { name: 'Turn' });
  await page.mouse.click(x, y);
  await page.locator('summary', { hasText: 'Move, copy, turn' }).click();
  await turn.getByRole('button', { name: 'Turn', exact: true }).click();
  await expect.poll(() => panel.getByLabel('heading').inputValue()).toBe('0 degrees');
  await page.getByRole('button', { name: /^Undo ?: rotate stall S08/ }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a field of several says "various" where they differ, and is set for all in one named step', async () => {
  const { page, offences, close } = await open();
  await encircle(page, ROUND);
  const panel = page.getByTestId('selection-panel');
  const drops = panel.getByRole('region', { name: 'Fields of 3 drops' });
  const elevation = drops.getByLabel('box elevation');
  await expect.poll(() => elevation.inputValue()).toBe('11\' 0"');
  await elevation.fill("11' + 6in");
  await elevation.press('Enter');
  await page.getByRole('button', { name: /^Undo ?: set the box elevation of 3 drops/ }).waitFor();
  await panel.getByRole('region', { name: 'Fields of 3 chargers' }).getByLabel('rated').waitFor();
  await panel.getByRole('button', { name: 'D04', exact: true }).click();
  const box = panel.locator('fieldset', { hasText: 'box' }).first();
  await expect.poll(() => box.getByLabel('z').inputValue()).toBe('11\' 6"');
  await box.getByLabel('z').fill('11');
  await box.getByLabel('z').press('Enter');
  await page.getByTestId('board').press('Escape');
  await encircle(page, ROUND);
  await expect.poll(() => elevation.inputValue()).toBe('various');
  await expect.poll(() => drops.getByLabel('mount').inputValue()).toBe('overhead');
  await elevation.fill('');
  await expect
    .poll(() => drops.getByRole('alert').textContent())
    .toBe('box elevation: a length such as 9\' 0" or 2.7 m');
  await elevation.press('Escape');
  expect(offences).toEqual([]);
  await close();
});

test('an array goes along the row by its pitch unless a direction is typed, and then slants as a whole', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, [74.5, 12]);
  await page.mouse.click(x, y);
  await page.locator('summary', { hasText: 'Move, copy, turn' }).click();
  const panel = page.getByTestId('selection-panel');
  const array = panel.getByRole('region', { name: 'Array' });
  await expect.poll(() => array.getByLabel('along').inputValue()).toBe('the row');
  await expect.poll(() => array.getByLabel('direction').inputValue()).toBe('0°');
  await expect.poll(() => array.getByLabel('across every').inputValue()).toBe('9\' 0"');
  const at = panel.locator('fieldset', { hasText: 'entry' }).first();
  const was = await at.getByLabel('x').inputValue();
  await array.getByLabel('direction').fill('15 * 6');
  await array.getByLabel('direction').press('Enter');
  await expect.poll(() => array.getByLabel('along').inputValue()).toBe('as typed');
  await array.getByRole('button', { name: 'Array' }).click();
  await expect.poll(() => title(page)).not.toBe('S08');
  await expect.poll(() => at.getByLabel('x').inputValue()).toBe(was);
  await page.getByRole('button', { name: /^Undo ?: array stall S08/ }).click();
  expect(offences).toEqual([]);
  await close();
});

test('an array that would put a stall on another says so beforehand', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, [38.5, 12]);
  await page.mouse.click(x, y);
  await page.locator('summary', { hasText: 'Move, copy, turn' }).click();
  const array = page.getByTestId('selection-panel').getByRole('region', { name: 'Array' });
  await expect.poll(() => array.getByRole('status').textContent()).toMatch(/^A copy would lie on stall \w+\.$/);
  expect(await seriousFaults(page)).toEqual([]);
  await array.getByLabel('across every').fill('200');
  await array.getByLabel('across every').press('Enter');
  await expect.poll(() => array.getByRole('status').count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

test('the forms of the drawing actions have no serious fault of access, in either theme', async () => {
  for (const theme of ['light', 'dark'] as const) {
    const { page, close } = await open({ theme });
    for (const key of ['s', 'e', 'd']) {
      await page.getByTestId('board').focus();
      await page.keyboard.press(key);
      await page.getByTestId('draw-panel').waitFor();
      expect(await seriousFaults(page)).toEqual([]);
    }
    await close();
  }
});

test('elements are copied from one tab and pasted at the pointer in another', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, [74.5, 12]);
  await page.mouse.click(x, y);
  await page.keyboard.press('Control+c');
  const other = await page.context().newPage();
  await other.goto(page.url());
  await ready(other);
  await other.getByRole('button', { name: 'Open', exact: true }).click();
  await other.getByRole('menuitem', { name: 'An empty site' }).click();
  await other.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
  await other.getByTestId('board').focus();
  const [px, py] = await onScreen(other, [10, 20]);
  await other.mouse.move(px, py);
  await other.keyboard.press('Control+v');
  await other.getByRole('button', { name: /^Undo ?: paste stall/ }).waitFor();
  await expect.poll(() => other.getByTestId('selection-panel').getByLabel('width').inputValue()).toBe('9\' 0"');
  expect(offences).toEqual([]);
  await close();
});
