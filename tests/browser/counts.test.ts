import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, openSample, tally } from './open-page.ts';

const open = opener();

const STEPS = 24;
const frame = (page: Page): Promise<unknown> => page.evaluate(() => new Promise(requestAnimationFrame));

/** How often each layer was drawn while something was done, step by step with a frame after each. */
async function draws(page: Page, step: (i: number) => Promise<void>): Promise<{ base: number; live: number }> {
  await frame(page);
  const before = await tally(page);
  for (let i = 1; i <= STEPS; i++) {
    await step(i);
    await frame(page);
  }
  await frame(page);
  const after = await tally(page);
  const count = (name: string): number => Number(after[name]) - Number(before[name]);
  return { base: count('baseDraws'), live: count('liveDraws') };
}

test('while something is drawn, the base is never drawn anew and the live layer at most once a step', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  // On open ground: a stall drawn where others hang their cords would change how those fare.
  for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'Zoom out' }).click();
  const board = (await page.getByTestId('board').boundingBox())!;
  const [x, y] = [board.x + 40, board.y + 60];
  for (const key of ['s', 'r', 'c', 'm']) {
    await page.getByTestId('board').focus();
    await page.keyboard.press(key);
    await page.mouse.move(x, y);
    await page.mouse.down();
    if (key === 'r') await page.mouse.up();
    await page.mouse.move(x + 20, y + 20);
    await frame(page);
    const { base, live } = await draws(page, (i) => page.mouse.move(x + 20 + 6 * i, y + 20 + 2 * i));
    expect(base, key).toBe(0);
    expect(live, key).toBeGreaterThan(STEPS / 2);
    expect(live, key).toBeLessThanOrEqual(STEPS + 2);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  }
  await close();
});

test('panning draws each layer at most once a step', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  const board = (await page.getByTestId('board').boundingBox())!;
  await page.mouse.move(board.x + 300, board.y + 300);
  await page.mouse.down({ button: 'middle' });
  const { base, live } = await draws(page, (i) => page.mouse.move(board.x + 300 + 4 * i, board.y + 300 - i));
  expect(base).toBeGreaterThan(STEPS / 2);
  expect(base).toBeLessThanOrEqual(STEPS + 2);
  expect(live).toBeLessThanOrEqual(STEPS + 2);
  await page.mouse.up({ button: 'middle' });
  await close();
});

test('a drop that is dragged off its raceway and back leaves the board as large as it was', async () => {
  const { page, close } = await open();
  const board = page.getByTestId('board');
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.getByRole('region', { name: 'Run to D05' }).waitFor();
  await frame(page);
  const high = (await board.boundingBox())!.height;
  const [camera] = [(await tally(page)).camera];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 10, y - 30, { steps: 4 });
  await page.mouse.move(x + 20, y - 150, { steps: 4 });
  await page.getByText('No run here').waitFor();
  expect((await board.boundingBox())!.height).toBe(high);
  expect((await tally(page)).camera).toBe(camera);
  await page.mouse.move(x, y, { steps: 4 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect((await board.boundingBox())!.height).toBe(high);
  await close();
});
