import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Point2 } from '../../routing/site/site.ts';
import { plannedSample } from '../outside/sheets/planned-samples.ts';
import { withinReach } from '../routing/reach/within-reach.ts';
import { opener } from './open.ts';
import { onScreen, seriousFaults } from './open-page.ts';

const open = opener();

/** The opacity of the live layer at places of the plan. */
async function inkAt(page: Page, places: readonly Point2[]): Promise<readonly number[]> {
  const box = (await page.getByTestId('board').boundingBox())!;
  const pixels = await Promise.all(places.map((place) => onScreen(page, place)));
  return page.evaluate(
    (spots) => {
      const canvas = document.querySelectorAll<HTMLCanvasElement>('.board-paper canvas')[1]!;
      const pen = canvas.getContext('2d')!;
      return spots.map(([x, y]) => pen.getImageData(Math.round(x!), Math.round(y!), 1, 1).data[3]!);
    },
    pixels.map(([x, y]) => [x - box.x, y - box.y]),
  );
}

test('the board shows where the cord of a selected drop reaches an inlet, at the height that is typed', async () => {
  const { site } = plannedSample('library-lot');
  const { page, offences, close } = await open();
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.mouse.move(x, y - 300);
  const drop = site.drops.find(({ id }) => id === 'D05')!;
  // Ground in the aisles, where nothing else of the live layer lies.
  const places = Array.from({ length: 12 }, (_, i): Point2 => [drop.box[0] - 22 + 4 * i, 23.5]);
  for (const height of [3, 9]) {
    const field = page.getByRole('textbox', { name: 'an inlet at' });
    await field.fill(`${height}'`);
    await field.press('Enter');
    const expected = places.map((place) => withinReach(site, 'D05', place, height));
    expect(new Set(expected).size).toBe(2);
    await expect.poll(async () => (await inkAt(page, places)).map((ink) => ink > 0)).toEqual(expected);
  }
  await page.getByLabel('show where its cord reaches').uncheck();
  await expect.poll(async () => Math.max(...(await inkAt(page, places)))).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

test('every stall can be shaded by its coverage; the legend says it in words, by day and by night', async () => {
  for (const theme of ['light', 'dark'] as const) {
    const { page, offences, close } = await open({ theme });
    await page.getByLabel('shade every stall by what is in reach').check();
    const legend = page.getByTestId('coverage-legend');
    expect(await legend.locator('dl > div').allInnerTexts()).toEqual([
      expect.stringMatching(/every inlet in reach\s*16/),
      expect.stringMatching(/half and over\s*0/),
      expect.stringMatching(/under half\s*0/),
      expect.stringMatching(/no inlet in reach\s*0/),
      expect.stringMatching(/no charger\s*0/),
    ]);
    // A cord of a few feet reaches nothing: its stall goes to another step.
    const [x, y] = await onScreen(page, [52, 9]);
    await page.mouse.click(x, y);
    const cord = page.getByRole('textbox', { name: 'cord', exact: true });
    await cord.fill("8'");
    await cord.press('Enter');
    await expect
      .poll(() => legend.locator('dl > div').allInnerTexts())
      .toContainEqual(expect.stringMatching(/no inlet in reach\s*1/));
    expect(await seriousFaults(page)).toEqual([]);
    await legend.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => legend.count()).toBe(0);
    expect(offences).toEqual([]);
    await close();
  }
});

test('members can be colored by what they carry; one that is chosen opens to its loads, by day and by night', async () => {
  for (const theme of ['light', 'dark'] as const) {
    const { page, offences, close } = await open({ theme });
    await page.getByLabel('color every beam and purlin by what it carries').check();
    const legend = page.getByTestId('loads-legend');
    expect(await legend.locator('dl > div').allInnerTexts()).toEqual([
      expect.stringMatching(/300 lb and over\s*1/),
      expect.stringMatching(/100 to 300 lb\s*5/),
      expect.stringMatching(/under 100 lb\s*2/),
      expect.stringMatching(/nothing\s*2/),
    ]);
    // Beam B2, where nothing else lies over it.
    const [x, y] = await onScreen(page, [26, -12]);
    await page.mouse.click(x, y);
    const loads = page.getByTestId('member-loads');
    await expect.poll(() => loads.textContent()).toMatch(/in all\s*144 lb/i);
    await expect.poll(() => loads.textContent()).toMatch(/on\s*C2 144 lb at 18' 0"/i);
    await expect.poll(() => loads.locator('li').count()).toBe(5);
    await loads.getByRole('button', { name: 'D10' }).click();
    await expect.poll(() => page.getByText('Pull of the cord').count()).toBe(1);
    expect(await seriousFaults(page)).toEqual([]);
    await legend.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => legend.count()).toBe(0);
    expect(offences).toEqual([]);
    await close();
  }
});
