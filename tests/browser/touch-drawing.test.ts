import type { CDPSession, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, tally } from './open-page.ts';

const open = opener();

type Place = readonly [x: number, y: number];

async function emptySite(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open' }).tap();
  await page.getByRole('menuitem', { name: 'An empty site' }).tap();
  await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
}

/** Fingers on the glass, in places of the window. */
async function fingersOn(page: Page) {
  const client: CDPSession = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...places: readonly Place[]) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(([x, y], id) => ({ x, y, id })) });
  const at = (place: Place): Promise<Place> => onScreen(page, place);
  return {
    tap: async (place: Place): Promise<void> => {
      await send('touchStart', await at(place));
      await send('touchEnd');
    },
    drag: async (from: Place, to: Place): Promise<void> => {
      const [a, b] = [await at(from), await at(to)];
      await send('touchStart', a);
      for (let i = 1; i <= 5; i++)
        await send('touchMove', [a[0] + ((b[0] - a[0]) * i) / 5, a[1] + ((b[1] - a[1]) * i) / 5]);
      await send('touchEnd');
    },
    /** One finger, then the other; both draw apart; `before` the second the first moves so many pixels. */
    pinch: async (place: Place, before = 0): Promise<void> => {
      const [x, y] = await at(place);
      await send('touchStart', [x, y]);
      if (before > 0) for (let i = 1; i <= 4; i++) await send('touchMove', [x + (before * i) / 4, y]);
      const from = x + before;
      await send('touchStart', [from, y], [from + 60, y + 40]);
      for (let i = 1; i <= 6; i++)
        await send('touchMove', [from - i * 5, y - i * 3], [from + 60 + i * 5, y + 40 + i * 3]);
      await send('touchEnd', [from - 30, y - 18]);
      await send('touchEnd');
    },
  };
}

const words = (page: Page): Promise<number> => page.getByTestId('draw-words').count();
const advice = (page: Page): Promise<string | null> => page.locator('.board-foot .advice').textContent();
const scaleOf = async (page: Page): Promise<number> => Number((await tally(page)).camera!.split(' ')[2]);

test('two fingers that pinch while a raceway is drawn zoom, and set no place', async () => {
  const { page, offences, close } = await open({ touch: true });
  const fingers = await fingersOn(page);
  const board = page.getByTestId('board');
  await emptySite(page);
  await page.getByRole('button', { name: 'Raceway' }).tap();
  const before = await scaleOf(page);
  await fingers.pinch([-10, 5]);
  await expect.poll(() => scaleOf(page)).toBeGreaterThan(before * 1.2);
  await expect.poll(() => advice(page)).toContain('Press where it begins');
  await expect.poll(() => words(page)).toBe(0);

  await fingers.tap([0, 0]);
  await fingers.tap([5, 0]);
  const drawn = await page.getByTestId('draw-words').textContent();
  expect(drawn).toContain(`5' 0"`);
  await fingers.pinch([3, 6]);
  await fingers.pinch([2, -6], 24);
  await expect.poll(() => page.getByTestId('draw-words').textContent()).toBe(drawn);
  await page.getByRole('button', { name: 'Set', exact: true }).tap();
  await page.getByRole('button', { name: /^Undo ?: add raceway/ }).waitFor();
  await expect.poll(() => board.getAttribute('data-doing')).toBe('nothing');
  expect(offences).toEqual([]);
  await close();
});

test('a pinch that begins as a drag along a row of stalls leaves no row behind', async () => {
  const { page, close } = await open({ touch: true });
  const fingers = await fingersOn(page);
  await emptySite(page);
  await page.getByRole('button', { name: 'Stalls', exact: true }).tap();
  await fingers.pinch([-10, 0], 90);
  await expect.poll(() => words(page)).toBe(0);
  await expect.poll(() => advice(page)).toContain('Drag along');
  await fingers.drag([-10, 0], [17, 0]);
  await expect.poll(() => page.getByTestId('draw-words').textContent()).toContain('3 stalls');
  await close();
});

test('a pinch sets no column, and one that begins on a drop does not select it', async () => {
  const { page, close } = await open({ touch: true });
  const fingers = await fingersOn(page);
  await page.getByRole('button', { name: 'Other' }).tap();
  await page.getByRole('menuitem', { name: /Column/ }).tap();
  await fingers.pinch([20, 14]);
  await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
  await fingers.tap([20, 14]);
  await page.getByRole('button', { name: /^Undo ?: add column/ }).waitFor();
  await page.getByRole('button', { name: 'Select', exact: true }).tap();
  await page.getByTestId('board').focus();
  await page.keyboard.press('Escape');
  await fingers.pinch([52, 9]);
  await expect.poll(() => page.getByTestId('selection-panel').count()).toBe(0);
  await close();
});

test('on a phone a cloud is drawn by its corners, and a note by two taps', async () => {
  const { page, offences, close } = await open({ touch: true });
  const fingers = await fingersOn(page);
  await emptySite(page);
  const begin = async (name: RegExp): Promise<void> => {
    await page.getByRole('button', { name: 'Other' }).tap();
    await page.getByRole('menuitem', { name }).tap();
  };
  await begin(/Cloud/);
  for (const corner of [
    [-10, 0],
    [0, 0],
    [0, 6],
  ] as const)
    await fingers.tap(corner);
  await page.getByRole('button', { name: 'Set', exact: true }).tap();
  await page.getByRole('button', { name: /^Undo ?: add cloud CL01/ }).waitFor();
  await begin(/Note/);
  await fingers.tap([0, 6]);
  await fingers.tap([-8, 8]);
  await page.getByRole('button', { name: /^Undo ?: add note N01/ }).waitFor();
  expect(offences).toEqual([]);
  await close();
});
