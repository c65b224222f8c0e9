import { describe, expect, test } from 'vitest';
import { plan } from '../../../../../calc/plan/plan.ts';
import { LAYERS } from '../../../../../calc/sheets/drawing/layers.ts';
import { planDrawing } from '../../../../../calc/sheets/drawing/plan-drawing.ts';
import type { Job } from '../../../../../calc/sheets/pdf/kit/draft.ts';
import { LETTERS } from '../../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { PAPERS, sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { pointsPerFoot, scaleThatFits } from '../../../../../calc/sheets/pdf/kit/view/scales.ts';
import { sizeOf } from '../../../../../calc/sheets/pdf/kit/view/view.ts';
import { enlargedAreas, LEAST_SHARE, shareOf } from '../../../../../calc/sheets/pdf/plans/enlarged/enlarged-areas.ts';
import {
  drawnExtent,
  LARGEST_RATIO,
  overviewScale,
  planRoom,
  planWindow,
} from '../../../../../calc/sheets/pdf/plans/plan-sheet.ts';
import { plansOf } from '../../../../../calc/sheets/pdf/plans/plans-of.ts';
import { alongGridlines } from '../../../../../calc/sheets/pdf/plans/strings/along-gridlines.ts';
import { leastWorkingSpace } from '../../../../../calc/tables/equipment-of.ts';
import { NEC_2023 } from '../../../../../calc/tables/nec-2023/nec-2023.ts';
import { boxOf } from '../../../../../routing/plane/box.ts';
import { workingSpaceOf } from '../../../../../routing/site/place/working-space.ts';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { footprintOf } from '../../../../../routing/standing/footprint.ts';
import { drawnSheets } from '../drawn-sheets.ts';
import { TWELVE_LOTS } from '../twelve-lots.ts';

const UPRIGHT = ['tall: eight short canopies one over another', '600 stalls', 'pedestals stood upright'];

describe.each(TWELVE_LOTS)('the plans of %s', (name, file) => {
  const site = toSite(file);
  const laid = alongGridlines(site, plan(site), []);
  const drawn = planDrawing(laid.site, laid.plan);

  test.each(PAPERS)('on %s fill their sheets, cut no equipment, and enlarge', (paper) => {
    const shape = sheetShape(paper);
    const plans = plansOf({ ...laid, shape } as unknown as Job, drawn);
    const room = planRoom(shape);
    const { site: shown } = plans.job;
    const { width, height } = sizeOf(planWindow(plans.drawing));
    // Turned the other way the plan of the whole lot would not be larger by a fifth.
    const other = scaleThatFits(shown.units, { width: height, height: width }, room, LARGEST_RATIO);
    const overview = overviewScale(shown, shape, plans.drawing);
    expect(overview.ratio).toBeLessThan(other.ratio * 1.2);
    if (paper === 'ANSI D') expect([name, plans.isTurned]).toEqual([name, UPRIGHT.includes(name)]);
    // The whole lot fills the paper one way at least by two fifths: standard scales are as far apart as that.
    const extent = sizeOf(drawnExtent(plans.drawing));
    const perFoot = pointsPerFoot(overview);
    const filled = Math.max((extent.width * perFoot) / room.width, (extent.height * perFoot) / room.height);
    expect(filled).toBeGreaterThan(overview.ratio === LARGEST_RATIO ? 0.1 : 0.4);

    const areas = enlargedAreas(shown, shape, LETTERS[paper], plans.drawing);
    if (areas === null) return;
    expect(overview.ratio / areas.scale.ratio).toBeGreaterThanOrEqual(1.3);
    for (const tile of areas.tiles) {
      expect(shareOf(tile, areas.scale, room)).toBeGreaterThanOrEqual(LEAST_SHARE);
      const { minX, minY, maxX, maxY } = tile.window;
      const drops = shown.drops.filter(({ box: [x, y] }) => x >= minX && x <= maxX && y >= minY && y <= maxY);
      expect(drops.length).toBeGreaterThan(0);
      for (const one of shown.equipment) {
        const box = boxOf([...footprintOf(one), ...(workingSpaceOf(one, leastWorkingSpace(NEC_2023)) ?? [])]);
        const isOut = box.maxX <= minX || box.minX >= maxX || box.maxY <= minY || box.minY >= maxY;
        const isIn = box.minX >= minX && box.maxX <= maxX && box.minY >= minY && box.maxY <= maxY;
        expect([one.id, isOut || isIn]).toEqual([one.id, true]);
      }
    }
  });
});

test('lines are the heavier the nearer they are to what the sheets are about: equipment, raceways and drops, then steel and stalls', () => {
  const weight = (layer: keyof typeof LAYERS): number => LAYERS[layer].weight;
  expect(weight('equipment')).toBeGreaterThan(weight('raceways'));
  for (const work of ['raceways', 'underground', 'drops'] as const)
    for (const ground of ['stalls', 'aisles', 'columns', 'members', 'gridlines', 'dimensions', 'keepouts'] as const)
      expect([work, ground, weight(work) > weight(ground)]).toEqual([work, ground, true]);
});

test('areas of somebody’s choice that lie side by side have match lines that name each other, along what they share', async () => {
  const [, library] = TWELVE_LOTS[0]!;
  const areas = [
    { name: 'West', from: [0, 0] as [number, number], to: [60, 40] as [number, number] },
    { name: 'East', from: [60, 10] as [number, number], to: [120, 40] as [number, number] },
    { name: 'Alone', from: [0, 60] as [number, number], to: [50, 80] as [number, number] },
  ];
  const site = toSite({ ...library, drawings: { sheets: ['plan', 'enlarged'], areas } });
  const sheets = await drawnSheets(site, 'ANSI D', (key) => key.startsWith('enlarged'));
  const said = sheets.map(({ texts }) => [
    ...new Set(texts.flatMap(({ text }) => (text.startsWith('MATCH LINE') ? [text] : []))),
  ]);
  expect(said).toEqual([['MATCH LINE: see E-402'], ['MATCH LINE: see E-401'], []]);
  const [west, east] = sheets.map(({ strokes }) => strokes.filter(({ ink }) => ink.weight === 0.7));
  const tall = (points: (typeof sheets)[number]['strokes'][number]['points']): number =>
    Math.abs(points[1]![1] - points[0]![1]);
  // 30 of the 40 ft of the west's edge, all of the east's.
  expect(tall(west![0]!.points)).toBeCloseTo(tall(east![0]!.points), 6);
});
