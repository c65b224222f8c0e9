import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Drawing } from '../../../calc/sheets/drawing/drawing.ts';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { raisedDrawing } from '../../../calc/sheets/drawing/raised-drawing.ts';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { drawnSheets } from './pdf/drawn-sheets.ts';

/** The fleet yard, whose feeders F3 and F4 have their way along raceways of their own, with some of them existing. */
function yard(existing: readonly string[]): Site {
  const read = readSite(readFileSync('samples/fleet-yard.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  const feeders = read.file.feeders!.map((one) => (existing.includes(one.id) ? { ...one, existing: true } : one));
  return toSite({ ...read.file, feeders, drawings: { sheets: ['legend', 'plan', 'raised'] } });
}

const standing = /^existing(Raceways|Underground)$/;
const linesOn = ({ items }: Drawing, layer: RegExp): number =>
  items.filter((item) => item.kind === 'line' && layer.test(item.layer)).length;
const racewaysOf = (site: Site, feeder: string): readonly string[] =>
  feederRoutesOf(site).routes.find((route) => route.feeder === feeder)?.way?.raceways ?? [];

test('raceways of an existing feeder are existing work, those that a circuit or a new feeder shares are not', () => {
  const [before, after] = [yard([]), yard(['F4'])];
  const own = racewaysOf(after, 'F4').filter(
    (id) => !racewaysOf(after, 'F3').includes(id) && !plan(after).runs.some(({ raceways: used }) => used.includes(id)),
  );
  expect(own.length).toBeGreaterThan(0);
  for (const draw of [planDrawing, raisedDrawing]) {
    const [was, is] = [draw(before, plan(before)), draw(after, plan(after))];
    expect(linesOn(was, standing)).toBe(0);
    expect(linesOn(is, standing)).toBe(own.length);
    // None is lost, and none is drawn twice.
    const all = /raceways|underground/i;
    expect(linesOn(is, all)).toBe(linesOn(was, all));
  }
});

test('existing raceways are thinner and paler than new ones, and have their own line in the legend', async () => {
  for (const [old, now] of [
    ['existingRaceways', 'raceways'],
    ['existingUnderground', 'underground'],
  ] as const) {
    expect(LAYERS[old].weight).toBeLessThan(LAYERS[now].weight);
    expect(LAYERS[old].colour).toBe(LAYERS.stalls.colour);
    expect(LAYERS[old].name).toBe(`${LAYERS[now].name}-E`);
  }
  const wordsOf = async (site: Site): Promise<string> => {
    const sheets = await drawnSheets(site, 'ANSI D', (key) => /^(cover|legend)$/.test(key));
    return sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  };
  expect(await wordsOf(yard(['F4']))).toContain('existing raceways');
  expect(await wordsOf(yard([]))).not.toContain('existing raceways');
});
