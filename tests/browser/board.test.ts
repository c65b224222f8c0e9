import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, openSample, tally } from './open-page.ts';

const open = opener();

/** Where D05 of the library lot hangs, feet. */
const D05 = [52, 9] as const;
const MOVES = 24;

/** The three margins in the ledger, as they are written. */
const margins = (page: Page): Promise<readonly string[]> =>
  page.getByTestId('selection-panel').locator('.margin-words').allTextContents();

/** Presses on a place of the plan and moves so many pixels, in small steps; the hand is not let go. */
async function drag(page: Page, from: readonly [number, number], dx: number, dy: number): Promise<void> {
  const [x, y] = await onScreen(page, from);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.getByTestId('selection-panel').waitFor();
  for (let i = 1; i <= MOVES; i++) {
    await page.mouse.move(x + (dx * i) / MOVES, y + (dy * i) / MOVES);
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
}

test('a drop that is dragged shows its numbers while it moves, and undo brings them back', async () => {
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  const before = await margins(page);
  await drag(page, D05, 0, -40);
  // Words follow a drag ten times a second.
  await page.waitForTimeout(200);
  const during = await margins(page);
  expect(during).not.toEqual(before);
  expect(await page.getByTestId('board').getAttribute('data-doing')).toBe('dragging');
  await page.mouse.up();
  expect(await margins(page)).toEqual(during);
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.keyboard.press('Control+z');
  expect(await margins(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+z');
  expect(await margins(page)).toEqual(during);
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

/** The plan coordinates in a group of fields, feet. */
async function place(page: Page, legend: string): Promise<readonly [number, number]> {
  const texts = await page
    .getByRole('group', { name: legend })
    .locator('input')
    .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));
  const feet = (text: string): number => {
    const [, sign, whole, inches] = /^(-?)(\d+)' (\d+)/.exec(text) ?? [];
    return (sign ? -1 : 1) * (Number(whole) + Number(inches) / 12);
  };
  return [feet(texts[0]!), feet(texts[1]!)];
}

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
  expect(await margins(page)).toEqual(before);
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  await close();
});

test('arrows nudge by three inches, with shift by a foot, each hold of the key one entry of undo', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  expect(await place(page, 'box')).toEqual([52, 9]);
  await page.keyboard.press('ArrowRight');
  expect(await place(page, 'box')).toEqual([52.25, 9]);
  await page.keyboard.press('Shift+ArrowUp');
  expect(await place(page, 'box')).toEqual([52.25, 10]);
  expect(await place(page, 'retractor')).toEqual([52.25, 10]);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await place(page, 'box')).toEqual([52, 9]);
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
  expect(await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent()).toBe('R1');
  const [ex, ey] = await onScreen(page, [79, 0]);
  await page.mouse.move(ex, ey);
  await page.mouse.down();
  await page.mouse.move(ex + 30, ey);
  await page.mouse.move(ex + 60, ey);
  await page.mouse.up();
  await page.getByRole('button', { name: /^Undo ?: move vertex of R1/ }).waitFor();
  await close();
});

test('the keys alone go to a drop and move it', async () => {
  const { page, close } = await open();
  await page.getByTestId('board').focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('.');
  expect(await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent()).toBe('D05');
  await page.keyboard.press('ArrowUp');
  expect(await place(page, 'box')).toEqual([52, 9.25]);
  await page.keyboard.press('Escape');
  await page.getByTestId('lot-panel').waitFor();
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
  expect(await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent()).toBe('D11');
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  expect(await page.locator('tr[aria-selected=true]').getAttribute('data-row')).toBe('EV05');
  await close();
});

test('choosing a finding selects what it speaks of and brings it into view', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.locator('.finding[data-rule=branch-limit] button.place').click();
  expect(await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent()).toBe('D240');
  const [x, y] = await place(page, 'box');
  const [px, py] = await onScreen(page, [x, y]);
  const box = (await page.getByTestId('board').boundingBox())!;
  expect(px).toBeGreaterThan(box.x);
  expect(px).toBeLessThan(box.x + box.width);
  expect(py).toBeGreaterThan(box.y);
  expect(py).toBeLessThan(box.y + box.height);
  await close();
});

test('a length typed as a tape reads is taken over, and one that says nothing is told so', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  const cord = page.getByLabel('cord', { exact: true });
  await cord.fill(`12' 6`);
  await cord.press('Enter');
  expect(await cord.inputValue()).toBe(`12' 6"`);
  expect((await margins(page))[0]).toContain('short');
  await cord.fill('twelve');
  expect(await cord.getAttribute('aria-invalid')).toBe('true');
  await page.getByRole('alert').waitFor();
  await cord.press('Escape');
  expect(await cord.inputValue()).toBe(`12' 6"`);
  await close();
});

test('how far a drop is dragged can be typed, by distance and angle or by its place, and put back', async () => {
  const { page, offences, close } = await open();
  await drag(page, D05, 40, 0);
  await page.keyboard.type("2' 6");
  await page.mouse.up();
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await expect.poll(() => place(page, 'box')).toEqual([52, 11.5]);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  expect(await page.getByTestId('board').getAttribute('data-doing')).toBe('nothing');
  await drag(page, [52, 11.5], 40, 0);
  await page.keyboard.press('t');
  await page.keyboard.type('50');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9');
  await page.keyboard.press('Enter');
  await page.mouse.up();
  expect(await place(page, 'box')).toEqual([50, 9]);
  await drag(page, [50, 9], 40, 0);
  await page.keyboard.type('3');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await place(page, 'box')).toEqual([50, 9]);
  expect(await page.locator('.type-in').count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

test('the raised board is taken hold of where it is drawn, and its plan stays where it was', async () => {
  const { page, offences, close } = await open();
  const board = page.getByTestId('board');
  const flat = await onScreen(page, D05);
  const before = await tally(page);
  await page.getByRole('button', { name: 'Raise' }).click();
  await page.locator('[data-testid=board][data-raised=yes]').waitFor();
  expect(await page.getByRole('button', { name: 'Raise' }).getAttribute('aria-pressed')).toBe('true');
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
  await page.waitForTimeout(400);
  const again = await onScreen(page, D05);
  expect(Math.abs(again[0] - flat[0])).toBeLessThan(40);
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
  expect(await panel.getByText('clear over stall', { exact: false }).count()).toBe(2);
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
