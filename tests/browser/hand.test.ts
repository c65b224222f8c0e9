import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, openSample, tally } from './open-page.ts';
import { drawn } from './screen-acts.ts';

const open = opener();

/** Where D05 of the library lot hangs, feet. */
const D05 = [52, 9] as const;

const heading = (page: Page) => page.getByTestId('selection-panel').getByRole('heading', { level: 2 });

const boardBox = async (page: Page) => (await page.getByTestId('board').boundingBox())!;

/** Pushes the drawing until a place lies so many pixels above the lower edge of the board; gives where that is. */
async function pushTo(page: Page, at: readonly [number, number], above: number): Promise<readonly [number, number]> {
  const [x, y] = await onScreen(page, at);
  const { y: top, height } = await boardBox(page);
  const by = top + height - above - y;
  await page.mouse.move(x + 30, y + 30);
  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(x + 30, y + 30 + by, { steps: 3 });
  await page.mouse.up({ button: 'middle' });
  return onScreen(page, at);
}

test.each([
  [60, 'above'],
  [500, 'below'],
] as const)(
  'of a drop %i px above the edge the strip opens %s, and not before the hand lets go',
  async (above, side) => {
    const { page, offences, close } = await open();
    const [x, y] = await pushTo(page, D05, above);
    const before = await boardBox(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y - 4, { steps: 4 });
    await page.getByTestId('selection-panel').waitFor();
    await drawn(page);
    await expect.poll(() => boardBox(page)).toEqual(before);
    await expect.poll(() => page.locator('.strip').count()).toBe(0);
    await page.mouse.move(x + 20, y + 4, { steps: 4 });
    await page.mouse.up();
    const strip = page.getByRole('region', { name: 'Run to D05' });
    await strip.waitFor();
    await expect.poll(() => strip.getAttribute('data-side')).toBe(side);
    await drawn(page);
    // Where the hand has let it go it is to be seen, and the plan lies under the hand as it did.
    const { y: top, height } = await boardBox(page);
    expect(height).toBeLessThan(before.height - 60);
    expect(y).toBeGreaterThan(top);
    expect(y + 4).toBeLessThan(top + height);
    const [ux, uy] = await onScreen(page, D05);
    expect(Math.hypot(ux - x, uy - y)).toBeLessThan(1.5);
    await page.keyboard.press('Escape');
    await page.locator('.strip').waitFor({ state: 'detached' });
    const [cx, cy] = await onScreen(page, D05);
    expect(Math.hypot(cx - x, cy - y)).toBeLessThan(1.5);
    expect(offences).toEqual([]);
    await close();
  },
);

test('a click on the board moves the view of no lot, however far off it is seen', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  // The board takes its size from what stands round it, which may still come: it is fitted anew until then.
  let before: string | null | undefined = null;
  const rests = async (): Promise<boolean> => {
    const last = before;
    before = (await tally(page)).camera;
    return before === last;
  };
  await expect.poll(rests, { interval: 400 }).toBe(true);
  const { x, y, width, height } = await boardBox(page);
  const chosen = new Set<string>();
  for (const [across, down] of [
    [0.3, 0.3],
    [0.45, 0.5],
    [0.6, 0.62],
    [0.7, 0.35],
  ] as const) {
    await page.mouse.click(x + width * across, y + height * down);
    await drawn(page);
    const { x: bx, y: by, width: w, height: h } = await boardBox(page);
    // The scale and the place under the pointer are as they were, though the strip may have opened.
    const [cx, cy, scale] = (await tally(page)).camera!.split(' ').map(Number);
    const [wx, wy, was] = before!.split(' ').map(Number);
    expect(scale).toBe(was);
    expect(bx + w / 2 - cx! * scale!).toBeCloseTo(x + width / 2 - wx! * was!, 0);
    expect(by + h / 2 + cy! * scale!).toBeCloseTo(y + height / 2 + wy! * was!, 0);
    if ((await heading(page).count()) > 0) chosen.add((await heading(page).textContent()) ?? '');
  }
  expect(chosen.size).toBeGreaterThan(1);
  await close();
});

test('letters go on working after a button was pressed, and after Enter in a field', async () => {
  const { page, close } = await open();
  const board = page.getByTestId('board');
  const tool = (): Promise<string | null> => board.getAttribute('data-tool');
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  await page.keyboard.press('m');
  await expect.poll(() => tool()).toBe('measure');
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await page.keyboard.press('j');
  await expect.poll(() => tool()).toBe('select');
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await page.getByRole('checkbox', { name: 'margins beside every drop' }).click();
  await page.keyboard.press('.');
  await heading(page).waitFor();
  await page.keyboard.press('n');
  await expect.poll(() => tool()).toBe('pan');
  await page.keyboard.press('j');
  for (const _ of [1, 2, 3, 4]) await page.keyboard.press('.');
  const cord = page.getByLabel('cord', { exact: true });
  await cord.fill("21' 6");
  await cord.press('Enter');
  await expect.poll(() => cord.inputValue()).toBe(`21' 6"`);
  await page.keyboard.press('m');
  await expect.poll(() => tool()).toBe('measure');
  await expect.poll(() => cord.inputValue()).toBe(`21' 6"`);
  // One entry in the history, not one for Enter and one for leaving the field.
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  // A button keeps what is its own.
  await page.keyboard.press('j');
  await page.getByRole('button', { name: 'Zoom in' }).focus();
  const scale = (await tally(page)).camera;
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await tally(page)).camera).not.toBe(scale);
  await close();
});

test('two clicks measure as a drag does; what is measured stays until the next or Escape', async () => {
  const { page, close } = await open();
  const advice = (): Promise<string | null> => page.locator('.board-foot .advice').textContent();
  await page.getByTestId('board').focus();
  await page.keyboard.press('m');
  // With Alt held the ends are drawn to nothing.
  await page.keyboard.down('Alt');
  const [ax, ay] = await onScreen(page, [1, -18]);
  const [bx, by] = await onScreen(page, [10, -18]);
  await page.mouse.click(ax, ay);
  await expect.poll(() => advice()).toContain('Press where it ends');
  await page.mouse.move(bx, by, { steps: 3 });
  await page.mouse.click(bx, by);
  const shown = page.locator('[data-testid=measured]');
  const nine = await shown.textContent();
  expect(nine).toMatch(/^(8' 1[01]|9' [01])\b/);
  await page.mouse.move(bx + 90, by - 50, { steps: 3 });
  await expect.poll(() => shown.textContent()).toBe(nine);
  await page.keyboard.up('Alt');
  await page.keyboard.press('j');
  await expect.poll(() => shown.textContent()).toBe(nine);
  await page.keyboard.press('m');
  await page.keyboard.down('Alt');
  await page.mouse.move(ax, ay);
  await page.mouse.down();
  await page.mouse.move(bx, by, { steps: 3 });
  await page.mouse.up();
  await expect.poll(() => shown.textContent()).toBe(nine);
  await page.keyboard.up('Alt');
  await page.keyboard.press('Escape');
  await expect.poll(() => shown.count()).toBe(0);
  await close();
});

test.each([
  [1440, 900],
  [1280, 800],
  [390, 844],
] as const)('at %i by %i all of a lot is shown, its source too, clear of the legends', async (width, height) => {
  const { page, close } = await open({ width, height });
  for (const { title, sample, source, lot, aisles } of [
    {
      title: 'Alder Street Library lot',
      sample: 'Library lot',
      source: [-40, -6],
      lot: [1, -18, 79, 18],
      aisles: [-12, -42, 85, 42],
    },
    {
      title: 'Mill Creek Hospital lot',
      sample: 'Hospital lot',
      source: [-60, 90],
      lot: [0, -18, 284, 198],
      aisles: [-20, -42, 304, 222],
    },
  ] as const) {
    if (width < 500) {
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('menuitem', { name: sample, exact: true }).click();
      await page.getByRole('heading', { level: 1, name: title }).waitFor();
      await page.getByRole('button', { name: 'Lay out' }).click();
    } else await openSample(page, sample, title);
    await page.getByRole('checkbox', { name: 'shade every stall' }).check();
    await page.getByRole('button', { name: 'Fit', exact: true }).click();
    await page.getByTestId('board').evaluate((board) => board.scrollIntoView({ block: 'center' }));
    await drawn(page);
    const board = await boardBox(page);
    const corner = (x: number, y: number) => onScreen(page, [x, y]);
    for (const at of [source, [aisles[0], aisles[1]], [aisles[2], aisles[3]]] as const) {
      const [x, y] = await corner(at[0], at[1]);
      expect(x, `${at} across`).toBeGreaterThan(board.x + 4);
      expect(x, `${at} across`).toBeLessThan(board.x + board.width - 4);
      expect(y, `${at} down`).toBeGreaterThan(board.y + 4);
      expect(y, `${at} down`).toBeLessThan(board.y + board.height - 4);
    }
    const [left] = await corner(source[0], source[1]);
    const [, bottom] = await corner(lot[0], lot[1]);
    const [right, top] = await corner(lot[2], lot[3]);
    const covers = await page
      .locator('.board > .over-board')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON() as DOMRect));
    expect(covers.length).toBe(4);
    const over = covers.filter((c) => c.right > left && c.left < right && c.bottom > top && c.top < bottom);
    expect(over).toEqual([]);
  }
  await close();
});
