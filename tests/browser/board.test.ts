import { expect, test } from 'vitest';
import { D05, drag, MOVES, margins, place, stillMargins } from './board-page.ts';
import { opener } from './open.ts';
import { onScreen, openSample, tally } from './open-page.ts';

const open = opener();

test('a drop that is dragged shows its numbers while it moves, and undo brings them back', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  const before = await margins(page);
  await drag(page, D05, 0, -40);
  await expect.poll(() => margins(page)).not.toEqual(before);
  const during = await stillMargins(page);
  await expect.poll(() => page.getByTestId('board').getAttribute('data-doing')).toBe('dragging');
  await page.mouse.up();
  await expect.poll(() => margins(page)).toEqual(during);
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.keyboard.press('Control+z');
  await expect.poll(() => margins(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => margins(page)).toEqual(during);
  expect(offences).toEqual([]);
  await close();
});

test('while a drop moves only what moves is drawn anew; the rest leaves and returns once', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.getByRole('button', { name: 'Runs 240' }).click();
  await page.locator('tr[data-row=EV007] th button').click();
  const [bx, by] = await place(page, 'box');
  await drag(page, [bx, by], 0, -3);
  const start = await tally(page);
  const [x, y] = await onScreen(page, [bx, by]);
  for (let i = 0; i < MOVES; i++) {
    await page.mouse.move(x, y - 8 - i * 2);
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
  const end = await tally(page);
  const draws = (name: string): number => Number(end[name]) - Number(start[name]);
  expect(draws('liveDraws')).toBeGreaterThanOrEqual(MOVES - 2);
  expect(draws('baseDraws')).toBeLessThanOrEqual(3);
  expect(Number(end.liveMarks)).toBeLessThan(80);
  await page.mouse.up();
  await close();
});

test('what is out of view is not drawn', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  const whole = Number((await tally(page)).baseMarks);
  for (let i = 0; i < 6; i++) await page.getByRole('button', { name: 'Zoom in' }).click();
  await expect.poll(async () => Number((await tally(page)).baseMarks)).toBeLessThan(whole / 4);
  await close();
});

test('the wheel zooms to the pointer', async () => {
  const { page, close } = await open();
  const scale = async (): Promise<number> => Number((await tally(page)).camera!.split(' ')[2]);
  const before = await scale();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.move(x, y);
  await page.mouse.wheel(0, -300);
  await expect.poll(scale).toBeGreaterThan(before * 1.3);
  const [nowX, nowY] = await onScreen(page, D05);
  expect(Math.abs(nowX - x)).toBeLessThan(2);
  expect(Math.abs(nowY - y)).toBeLessThan(2);
  await close();
});

test('Escape puts a dragged drop back', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  const before = await margins(page);
  await drag(page, D05, 30, 30);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(() => margins(page)).toEqual(before);
  await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  await close();
});

test('a box takes the drops inside it, shift takes one out, and Delete deletes the rest until undo', async () => {
  const { page, close } = await open();
  const [ax, ay] = await onScreen(page, [41, 12]);
  const [bx, by] = await onScreen(page, [56, 6]);
  await page.mouse.move(ax, ay);
  await page.mouse.down();
  await page.mouse.move((ax + bx) / 2, (ay + by) / 2);
  await page.mouse.move(bx, by);
  await page.mouse.up();
  const chosen = await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent();
  expect(chosen).toBe('2 drops');
  await page.keyboard.down('Shift');
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  await page.keyboard.up('Shift');
  await page.getByTestId('board').focus();
  await page.keyboard.press('Delete');
  await page.getByRole('button', { name: 'Runs 15' }).waitFor();
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Runs 16' }).waitFor();
  await close();
});

test('a raceway’s vertex is moved by its handle, and every run through it with it', async () => {
  const { page, close } = await open();
  // R1 runs from P1 along the line of the columns to the far end of the row.
  const [x, y] = await onScreen(page, [70, 0]);
  await page.mouse.click(x + 20, y);
  await expect
    .poll(() => page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent())
    .toBe('R1');
  const [ex, ey] = await onScreen(page, [79, 0]);
  await page.mouse.move(ex, ey);
  await page.mouse.down();
  await page.mouse.move(ex + 30, ey);
  await page.mouse.move(ex + 60, ey);
  await page.mouse.up();
  await page.getByRole('button', { name: /^Undo ?: move vertex of R1/ }).waitFor();
  await close();
});

test('selecting does not move the drawing under the hand', async () => {
  const { page, close } = await open();
  const before = await onScreen(page, D05);
  await page.mouse.click(before[0], before[1]);
  await page.getByRole('region', { name: 'Run to D05' }).waitFor();
  const after = await onScreen(page, D05);
  expect(after[0]).toBeCloseTo(before[0], 0);
  expect(after[1]).toBeCloseTo(before[1], 0);
  await close();
});

test('table and board choose together, both ways', async () => {
  const { page, close } = await open();
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await page.locator('tr[data-row=EV11] th button').click();
  await expect
    .poll(() => page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent())
    .toBe('D11');
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  await expect.poll(() => page.locator('tr[aria-selected=true]').getAttribute('data-row')).toBe('EV05');
  await close();
});

test('choosing a finding selects what it speaks of and brings it into view', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.locator('.finding[data-rule=branch-limit] button.place').click();
  await expect
    .poll(() => page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent())
    .toBe('D240');
  const [x, y] = await place(page, 'box');
  const [px, py] = await onScreen(page, [x, y]);
  const box = (await page.getByTestId('board').boundingBox())!;
  expect(px).toBeGreaterThan(box.x);
  expect(px).toBeLessThan(box.x + box.width);
  expect(py).toBeGreaterThan(box.y);
  expect(py).toBeLessThan(box.y + box.height);
  await close();
});
