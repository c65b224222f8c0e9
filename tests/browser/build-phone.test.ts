import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { seriousFaults, tally } from './open-page.ts';

const open = opener();
const PHONE = { width: 390, height: 844, touch: true } as const;

const boxOf = async (page: Page, selector: string) => (await page.locator(selector).boundingBox())!;

test('on a phone the list is the page: what is done, where it hangs, found and cut down without a push sideways', async () => {
  const { page, offences, close } = await open(PHONE);
  const row = page.locator('li[data-row=D05]');
  await row.waitFor();
  await expect.poll(() => row.textContent()).toContain(`3 − 1' 0", A + 9' 0", 11' 0" up`);
  await expect.poll(() => row.textContent()).toContain('not done');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  const rows = page.locator('.build-rows');
  expect(await rows.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0);
  // No tool that draws, and a drawing a third as high as the screen.
  await expect.poll(() => page.locator('.draw-action').count()).toBe(0);
  expect((await boxOf(page, '.board')).height).toBeGreaterThan(844 * 0.3);
  await page.getByRole('searchbox').fill('ev12');
  await expect.poll(() => page.locator('.build-rows li').count()).toBe(1);
  await page.getByRole('searchbox').fill('nothing');
  await page.getByRole('button', { name: 'Show all 16' }).click();
  await page.getByRole('button', { name: 'Off 0' }).click();
  await expect.poll(() => page.locator('.build-rows li').count()).toBe(0);
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});

test('on a phone a tapped row stays in view with its drop drawn above it and its acts at the thumb', async () => {
  const { page, offences, close } = await open(PHONE);
  await page.locator('li[data-row=D11] button').tap();
  const card = page.getByRole('region', { name: 'Drop D11' });
  await card.waitFor();
  const scale = async (): Promise<number> => Number((await tally(page)).camera!.split(' ')[2]);
  // Names with heights from here on.
  await expect.poll(scale).toBeGreaterThan(12);
  const [row, cardBox, board] = [
    await boxOf(page, 'li[data-row=D11]'),
    await boxOf(page, '.build-card'),
    await boxOf(page, '.board'),
  ];
  expect(row.y).toBeGreaterThan(board.y + board.height);
  expect(row.y + row.height).toBeLessThanOrEqual(cardBox.y + 1);
  const next = card.getByRole('button', { name: 'Next D12' });
  expect((await next.boundingBox())!.y).toBeGreaterThan(760);
  for (const name of ['Set out', 'Measure', 'Note', 'Photo', 'As drawn', 'Next D12'])
    expect((await card.getByRole('button', { name, exact: true }).boundingBox())!.height).toBeGreaterThanOrEqual(48);
  await card.getByRole('button', { name: 'As drawn' }).tap();
  await expect.poll(() => page.locator('li[data-row=D11]').textContent()).toContain('done');
  await card.getByRole('button', { name: 'Note', exact: true }).tap();
  await card.getByLabel('initials').fill('JB');
  await card.getByLabel('initials').press('Enter');
  await next.tap();
  const after = page.getByRole('region', { name: 'Drop D12' });
  await after.getByRole('button', { name: 'Measure' }).tap();
  // The last figure of the tape and the initials of the day: nothing else is asked.
  const up = after.getByLabel('box up');
  await up.fill(`10' 9"`);
  await up.press('Enter');
  await after.getByText('0\' 3" away').waitFor();
  await after.getByRole('button', { name: 'Note', exact: true }).tap();
  await expect.poll(() => after.getByLabel('initials').inputValue()).toBe('JB');
  await after.getByRole('button', { name: 'Close' }).tap();
  await page.getByRole('button', { name: 'Not done 14' }).tap();
  await expect.poll(() => page.locator('li[data-row=D12]').count()).toBe(0);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await expect.poll(() => page.locator('li[data-row=D12]').count()).toBe(1);
  expect(offences).toEqual([]);
  await close();
});

test('on a phone the last row of the list too is seen over its card', async () => {
  const { page, close } = await open(PHONE);
  await page.getByRole('searchbox').fill('D16');
  await page.locator('li[data-row=D16] button').tap();
  await page.getByRole('searchbox').fill('');
  await expect
    .poll(async () => {
      const [row, card] = [await boxOf(page, 'li[data-row=D16]'), await boxOf(page, '.build-card')];
      return row.y + row.height <= card.y + 1;
    })
    .toBe(true);
  // Whoever found one by its name goes on down the list: after the last comes the first.
  await page.getByRole('button', { name: 'Next D01' }).waitFor();
  await close();
});

test('on a phone a finger that drags a chosen drop pushes the drawing and leaves the drop', async () => {
  const { page, offences, close } = await open(PHONE);
  await page.locator('li[data-row=D11] button').tap();
  await page.getByRole('region', { name: 'Drop D11' }).waitFor();
  const before = await page.locator('li[data-row=D11]').textContent();
  await expect.poll(async () => Number((await tally(page)).camera!.split(' ')[2])).toBeGreaterThan(12);
  const board = await boxOf(page, '.board-paper');
  const [x, y] = [board.x + board.width / 2, board.y + board.height / 2];
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: x + dx, y }] });
  const camera = (await tally(page)).camera;
  await touch('touchStart', 0);
  for (const dx of [10, 30, 60]) await touch('touchMove', dx);
  await touch('touchEnd', 60);
  await expect.poll(async () => (await tally(page)).camera).not.toBe(camera);
  await expect.poll(() => page.locator('li[data-row=D11]').textContent()).toBe(before);
  expect(offences).toEqual([]);
  await close();
});

test('held across, the drawing stands beside the list, the card over the list alone, and its acts are as large', async () => {
  const { page, offences, close } = await open({ width: 844, height: 390, touch: true });
  const row = page.locator('li[data-row=D05] button');
  await row.tap();
  const card = page.getByRole('region', { name: 'Drop D05' });
  await card.waitFor();
  const [cardBox, board] = [await boxOf(page, '.build-card'), await boxOf(page, '.board')];
  expect(board.x + board.width).toBeLessThanOrEqual(cardBox.x + 1);
  expect(board.height).toBeGreaterThan(300);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(844);
  for (const act of await card.locator('.build-acts button').all()) {
    const { y, height } = (await act.boundingBox())!;
    expect(height).toBeGreaterThanOrEqual(48);
    expect(y + height).toBeLessThanOrEqual(390);
  }
  await card.getByRole('button', { name: 'Set out', exact: true }).tap();
  await card.getByRole('region', { name: 'Setting out of D05' }).waitFor();
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});

test('of 240 drops only the rows in view are drawn, and any is found by its circuit', async () => {
  const { page, offences, close } = await open(PHONE);
  await page.getByRole('button', { name: 'Open', exact: true }).tap();
  await page.getByRole('menuitem', { name: 'Hospital lot', exact: true }).tap();
  await page.locator('li[data-row=D001]').waitFor();
  const rows = page.locator('.build-rows li');
  await expect.poll(() => rows.count()).toBeLessThan(30);
  await page.locator('.build-rows').evaluate((each) => each.scrollTo(0, each.scrollHeight));
  await page.locator('li[data-row=D240]').waitFor();
  await expect.poll(() => rows.count()).toBeLessThan(30);
  await page.getByRole('searchbox').fill('ev133');
  await expect.poll(() => rows.count()).toBe(1);
  await rows.first().locator('button').tap();
  await page.getByRole('button', { name: 'More', exact: true }).tap();
  const circuit = (await page.getByText(/^Circuit /).textContent())!.slice('Circuit '.length);
  await page.getByRole('searchbox').fill(circuit);
  await expect.poll(() => rows.count()).toBe(1);
  await expect
    .poll(() => rows.first().getAttribute('data-row'))
    .toBe(await page.locator('.build-card h2').textContent());
  expect(offences).toEqual([]);
  await close();
});
