import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { emptySite, handOn, savedText } from './draw-lot-page.ts';
import { opener } from './open.ts';

const open = opener();

test('a row and a panel are placed by keys alone: arrows, Space, a typed length and angle, Enter', async () => {
  const { page, offences, close } = await open();
  const hand = handOn(page);
  await emptySite(page);
  await hand.key('s', 'ArrowUp', 'Space', 'ArrowRight');
  await page.keyboard.type('27');
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await page.keyboard.press('Enter');
  await expect.poll(() => hand.words()).toContain('3 stalls');
  await page.keyboard.press('x');
  await page.keyboard.press('Enter');
  await hand.key('e', 'ArrowLeft', 'Space', 'Enter');
  await hand.key('Escape', 'Control+a');
  const read = readSite(await savedText(page));
  expect(read.ok && read.file.stalls!.map(({ at, heading }) => [at, heading])).toEqual([
    [[0, 5.5], 0],
    [[0, 14.5], 0],
    [[0, 23.5], 0],
  ]);
  expect(read.ok && read.file.equipment!.length).toBe(1);
  expect(offences).toEqual([]);
  await close();
});

test('Backspace takes back a place and Escape the whole draft; neither is in the history', async () => {
  const { page, close } = await open();
  const hand = handOn(page);
  await emptySite(page);
  await hand.key('r');
  for (const vertex of [
    [-20, 0],
    [0, 0],
    [0, 10],
  ] as const)
    await hand.click(vertex);
  await hand.key('Backspace', 'Enter');
  await page.getByRole('button', { name: /^Undo ?: add raceway R01/ }).waitFor();
  for (const vertex of [
    [-20, 20],
    [0, 20],
  ] as const)
    await hand.click(vertex);
  await hand.key('Escape');
  await expect.poll(() => hand.advice()).toContain('Press where it begins');
  await hand.key('Escape');
  await expect.poll(() => hand.advice()).toContain('Select.');
  const read = readSite(await savedText(page));
  expect(read.ok && read.file.raceways!.map(({ path }) => path)).toEqual([
    [
      [-20, 0, 11],
      [0, 0, 11],
    ],
  ]);
  await page.getByTestId('board').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
  await close();
});

test('places are typed by their x and y in feet and inches, metric and sums, the first one too', async () => {
  const { page, offences, close } = await open();
  const hand = handOn(page);
  await emptySite(page);
  const typed = page.locator('.type-in');
  await hand.key('r');
  await page.keyboard.type("12' 6");
  await expect.poll(() => typed.locator('input').count()).toBe(2);
  await page.keyboard.press('Tab');
  await page.keyboard.type('-3');
  await page.keyboard.press('Enter');
  await hand.move([0, 10]);
  await hand.key('t');
  await expect.poll(() => typed.locator('input').count()).toBe(4);
  await page.keyboard.type("9' * 3");
  await page.keyboard.press('Tab');
  await page.keyboard.type('3.048m');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'type them' }).click();
  await typed.getByLabel('x', { exact: true }).fill('forty');
  await page.keyboard.press('Enter');
  await expect.poll(() => typed.locator('.wrong').count()).toBe(1);
  await typed.getByLabel('x', { exact: true }).fill('40');
  await typed.getByLabel('y', { exact: true }).fill('10');
  await page.keyboard.press('Enter');
  await hand.key('Enter');
  const read = readSite(await savedText(page));
  expect(read.ok && read.file.raceways!.map(({ path }) => path)).toEqual([
    [
      [12.5, -3, 11],
      [27, 10, 11],
      [40, 10, 11],
    ],
  ]);
  expect(offences).toEqual([]);
  await close();
});
