import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { onGrid } from '../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { opener } from './open.ts';
import { onScreen, seriousFaults } from './open-page.ts';

const open = opener();

async function siteOf(page: Page): Promise<Site> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const stream = await (await download).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  const read = readSite(Buffer.concat(parts).toString('utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return toSite(read.file);
}

async function click(page: Page, place: Point2): Promise<void> {
  const [x, y] = await onScreen(page, place);
  await page.mouse.move(x, y, { steps: 3 });
  await page.mouse.down();
  await page.mouse.up();
}

async function drag(page: Page, from: Point2, to: Point2): Promise<void> {
  const [start, end] = [await onScreen(page, from), await onScreen(page, to)];
  await page.mouse.move(...start);
  await page.mouse.down();
  await page.mouse.move(...end, { steps: 5 });
  await page.mouse.up();
}

const key = async (page: Page, ...keys: readonly string[]): Promise<void> => {
  await page.getByTestId('board').focus();
  for (const each of keys) await page.keyboard.press(each);
};

async function fill(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByTestId('draw-panel').getByLabel(label, { exact: true });
  if ((await field.evaluate((element) => element.tagName)) === 'SELECT') await field.selectOption(value);
  else {
    await field.fill(value);
    await field.press('Enter');
  }
}

/** A picture to look at, where OVERROW_SCREENS names a folder for it. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env.OVERROW_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/${name}.png` });
}

test('a canopy that lies aslant and rises to one side has its gridlines, and a raceway hangs under its steel', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: 'An empty site' }).click();
  await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();

  await key(page, 'c');
  await fill(page, 'form', 'one slope');
  await fill(page, 'beams past columns', "18'");
  await fill(page, 'tilt', '6');
  await fill(page, 'bays of', "20'");
  // 40 ft along 4 to the right and 3 up.
  const [from, to]: [Point2, Point2] = [
    [-16, -12],
    [16, 12],
  ];
  await drag(page, from, to);
  await expect.poll(() => page.getByTestId('draw-words').textContent()).toMatch(/2 bays.*one slope, beams from .* to /);
  await picture(page, 'canopy-draft');
  await key(page, 'Enter');

  const drawn = await siteOf(page);
  const { gridlines, members, columns } = drawn;
  expect(gridlines.rotation).toBeCloseTo((Math.atan2(3, 4) * 180) / Math.PI, 1);
  expect(gridlines.x.map(({ at }) => Math.round(at * 1000) / 1000)).toEqual([0, 20, 40]);
  expect(gridlines.y.map(({ label }) => label)).toEqual(['A']);
  expect(new Set(columns.map(({ height }) => height))).toEqual(new Set([12]));
  const beam = members.find(({ id }) => id.startsWith('B'))!;
  const run = Math.hypot(beam.to[0] - beam.from[0], beam.to[1] - beam.from[1]);
  expect(Math.abs(beam.to[2] - beam.from[2])).toBeCloseTo(run * Math.tan((6 * Math.PI) / 180), 4);

  // Along the middle beam: from 10 ft right of the columns to 10 ft left of them, a foot under the steel all the way.
  await key(page, 'r');
  const middle = columns.find(({ at }) => Math.abs(onGrid(gridlines, at)[0] - 20) < 0.01)!.at;
  const aside = (feet: number): Point2 => [middle[0] - 0.6 * feet, middle[1] + 0.8 * feet];
  await click(page, aside(-10.3));
  await click(page, aside(10.3));
  await picture(page, 'canopy-raceway');
  await key(page, 'Enter');
  const site = await siteOf(page);
  const path = site.raceways[0]!.path;
  const below = (at: (typeof path)[number]): number => {
    const v = onGrid(gridlines, [at[0], at[1]])[1];
    return 12 + v * Math.tan((6 * Math.PI) / 180) - at[2];
  };
  expect(path).toHaveLength(2);
  for (const at of path) expect(below(at)).toBeCloseTo(1, 2);
  expect(path[1]![2] - path[0]![2]).toBeGreaterThan(1.5);

  // Selected, the steel says its elevations; the whole lot turned takes its gridlines along, to square with the sheet.
  await key(page, 'Escape', 'Escape');
  await page.getByRole('button', { name: 'Select the whole lot' }).click();
  const summary = page.getByText('Move, copy, turn, mirror, array');
  await summary.waitFor();
  await picture(page, 'canopy-selected');
  await summary.click();
  const turn = page.getByRole('region', { name: 'Turn' });
  await turn.getByLabel('turn by').fill(String(-gridlines.rotation!));
  await turn.getByLabel('turn by').press('Enter');
  await turn.getByRole('button', { name: 'Turn', exact: true }).click();
  const square = await siteOf(page);
  expect(square.gridlines.rotation).toBeUndefined();
  expect(square.gridlines.x).toHaveLength(3);
  const lines = (site: Site) => site.gridlines.x.map(({ at }) => at);
  const [first, second] = lines(square);
  expect(second! - first!).toBeCloseTo(20, 5);
  for (const { at } of square.columns) expect(lines(square).some((line) => Math.abs(line - at[0]) < 1e-5)).toBe(true);
  await picture(page, 'canopy-squared');
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});
