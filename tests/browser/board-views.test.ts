import { expect, test } from 'vitest';
import { D05, drag, place } from './board-page.ts';
import { opener } from './open.ts';
import { onScreen, tally } from './open-page.ts';

const open = opener();

test('the raised board is taken hold of where it is drawn, and its plan stays where it was', async () => {
  const { page, offences, close } = await open();
  const board = page.getByTestId('board');
  const flat = await onScreen(page, D05);
  const before = await tally(page);
  await page.getByRole('button', { name: 'Raise' }).click();
  await page.locator('[data-testid=board][data-raised=yes]').waitFor();
  await expect.poll(() => page.getByRole('button', { name: 'Raise' }).getAttribute('aria-pressed')).toBe('true');
  await expect.poll(async () => Number((await tally(page)).baseDraws)).toBeGreaterThan(Number(before.baseDraws));
  // The retractor of D05 hangs at 10 ft: it is drawn so much higher up.
  const [x, y] = await onScreen(page, [D05[0], D05[1] + 10]);
  await page.mouse.click(x, y);
  await page.getByRole('heading', { name: 'D05' }).waitFor();
  const was = await place(page, 'box');
  await drag(page, [D05[0], D05[1] + 10], 30, 0);
  await page.mouse.up();
  const now = await place(page, 'box');
  expect(now[0]).toBeGreaterThan(was[0] + 1);
  expect(now[1]).toBeCloseTo(was[1], 6);
  await page.keyboard.press('Control+z');
  // By the key it lies flat again, and a place is where it was before.
  await board.focus();
  await page.keyboard.press('h');
  await page.locator('[data-testid=board][data-raised=no]').waitFor();
  await page.keyboard.press('f');
  await expect.poll(async () => Math.abs((await onScreen(page, D05))[0] - flat[0])).toBeLessThan(40);
  expect(offences).toEqual([]);
  await close();
});

test('on a phone the board is raised by its button', async () => {
  const { page, close } = await open({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Lay out' }).click();
  await page.getByRole('button', { name: 'Raise' }).click();
  await page.locator('[data-testid=board][data-raised=yes]').waitFor();
  expect(Number((await tally(page)).baseMarks)).toBeGreaterThan(60);
  await close();
});

test('a section is cut through a drop and by two clicks, shown with its heights, and taken back', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  await page.getByRole('button', { name: 'Cut a section here' }).click();
  const panel = page.getByTestId('selection-panel');
  await panel.getByTestId('section-picture').waitFor();
  // As the file has them: the box at 11 ft, the retractor at 10 ft.
  const heights = await panel.getByTestId('section-picture').getAttribute('aria-label');
  expect(heights).toContain(`box 11' 0"`);
  expect(heights).toContain(`retractor 10' 0"`);
  await expect.poll(() => panel.getByText('clear over stall', { exact: false }).count()).toBe(2);
  await page.getByRole('button', { name: 'Show it with dimensions' }).click();
  await page.getByRole('dialog').getByTestId('section-picture').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page.getByTestId('board').focus();
  await page.keyboard.press('v');
  for (const at of [
    [20, -12],
    [20, 12],
  ] as const) {
    const [px, py] = await onScreen(page, at);
    await page.mouse.click(px, py);
  }
  await page.keyboard.press('j');
  await page.getByRole('button', { name: /^Undo ?: add section/ }).click();
  await page.getByRole('button', { name: /^Undo ?: add section/ }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('on a phone a section stands below the board, no wider than the window', async () => {
  const { page, close } = await open({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Lay out' }).click();
  await page.getByTestId('board').focus();
  await page.keyboard.press('.');
  await page.getByRole('button', { name: 'Cut a section here' }).click();
  const picture = (await page.getByTestId('section-picture').boundingBox())!;
  expect(picture.width).toBeGreaterThan(300);
  expect(picture.x + picture.width).toBeLessThanOrEqual(390);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await close();
});
