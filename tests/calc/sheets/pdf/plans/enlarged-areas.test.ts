import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../../../calc/plan/plan.ts';
import { planDrawing } from '../../../../../calc/sheets/drawing/plan-drawing.ts';
import { LETTERS } from '../../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { type Paper, sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { enlargedAreas } from '../../../../../calc/sheets/pdf/plans/enlarged/enlarged-areas.ts';
import { leastWorkingSpace } from '../../../../../calc/tables/equipment-of.ts';
import { NEC_2023 } from '../../../../../calc/tables/nec-2023/nec-2023.ts';
import { boxOf } from '../../../../../routing/plane/box.ts';
import { readSite } from '../../../../../routing/site/file/read.ts';
import { workingSpaceOf } from '../../../../../routing/site/place/working-space.ts';
import type { Site } from '../../../../../routing/site/site.ts';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { footprintOf } from '../../../../../routing/standing/footprint.ts';

function sample(name: string): Site {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return toSite(read.file);
}

const areasOf = (site: Site, paper: Paper) =>
  enlargedAreas(site, sheetShape(paper), LETTERS[paper], planDrawing(site, plan(site)));

describe.each(['library-lot', 'library-pedestals', 'fleet-yard', 'hospital-lot'])(
  'the enlarged plans of %s',
  (name) => {
    const site = sample(name);
    test.each(['ANSI D', 'tabloid'] as const)('on %s cut no panel nor the space before it', (paper) => {
      const feeding = new Set(site.chargers.map(({ from }) => from));
      for (const one of site.equipment.filter(({ id }) => feeding.has(id))) {
        const box = boxOf([...footprintOf(one), ...(workingSpaceOf(one, leastWorkingSpace(NEC_2023)) ?? [])]);
        const areas = areasOf(site, paper);
        const holding = areas?.tiles.filter(
          ({ window }) =>
            window.minX <= box.minX && window.maxX >= box.maxX && window.minY <= box.minY && window.maxY >= box.maxY,
        );
        if (areas) expect(holding).toHaveLength(1);
      }
    });
  },
);

test('one sheet serves where a scale a step smaller has room for all of it', () => {
  // At 1/4 in the yard took four sheets, one of them a sliver; at 1/8 in it is one.
  expect(areasOf(sample('fleet-yard'), 'ANSI D')?.tiles).toHaveLength(1);
  // The plan of the library lot is at 3/16 in: no other is drawn beside it at 1/4 in.
  expect(areasOf(sample('library-lot'), 'ANSI D')).toBeNull();
  expect(areasOf(sample('hospital-lot'), 'ANSI D')?.tiles).toHaveLength(4);
});

test('match lines of the hospital lot lie in its aisles, not along its raceways', () => {
  const site = sample('hospital-lot');
  const { tiles } = areasOf(site, 'ANSI D')!;
  const cuts = new Set(tiles.filter(({ row }) => row > 0).map(({ window }) => window.maxY));
  expect(cuts.size).toBeGreaterThan(0);
  const levels = site.raceways.flatMap(({ path }) =>
    path.slice(1).flatMap(([x, y], i) => (Math.abs(x - path[i]![0]) > 30 && y === path[i]![1] ? [y] : [])),
  );
  for (const cut of cuts) expect(Math.min(...levels.map((level) => Math.abs(level - cut)))).toBeGreaterThan(10);
});
