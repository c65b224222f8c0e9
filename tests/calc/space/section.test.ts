import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sectionDrawing } from '../../../calc/sheets/drawing/section-drawing.ts';
import { cutView } from '../../../calc/space/section/cut.ts';
import { sectionOf } from '../../../calc/space/section/section.ts';
import { typicalSections } from '../../../calc/space/section/typical.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const library = plannedSample('library-lot');
const fleet = plannedSample('fleet-yard');

describe('a cut', () => {
  test('is seen with what lies to the left of its way past it, and from the other side with a look to the right', () => {
    const there = cutView({ from: [0, 0], to: [10, 0], look: 4 })!;
    expect([there.across([3, 2]), there.away([3, 2])]).toEqual([3, 2]);
    const back = cutView({ from: [0, 0], to: [10, 0], look: -4 })!;
    expect([back.across([3, -2]), back.away([3, -2])]).toEqual([7, 2]);
    expect(cutView({ from: [1, 1], to: [1, 1], look: 4 })).toBeNull();
  });
});

describe('conduits that a cut goes through', () => {
  test('stand once each for each time that they cross, at the elevation of their path', () => {
    const { site, planned } = library;
    let met = 0;
    // Off the corners of the paths, which lie on whole inches.
    const off = (least: number, most: number) =>
      fc.integer({ min: 10 * least, max: 10 * most }).map((tenths) => tenths / 10 + 0.0037);
    const place = fc.tuple(off(-10, 90), off(-30, 30));
    fc.assert(
      fc.property(place, place, (from, to) => {
        const section = sectionOf(site, planned, { from, to, look: 0 });
        if (!section) return;
        const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
        const side = ([x, y]: readonly number[]): number => (x! - from[0]) * dy - (y! - from[1]) * dx;
        for (const { id, path } of planned.conduits) {
          const expected: number[] = [];
          path.slice(1).forEach((b, i) => {
            const a = path[i]!;
            const [p, q] = [side(a), side(b)];
            if (p === q || p < 0 === q < 0) return;
            const t = p / (p - q);
            const [x, y, z] = a.map((v, k) => v + t * (b[k]! - v));
            const along = ((x! - from[0]) * dx + (y! - from[1]) * dy) / (dx * dx + dy * dy);
            if (along >= 0 && along <= 1) expected.push(z!);
          });
          const found = section.shapes.flatMap((one) => (one.kind === 'round' && one.id === id ? [one.elevation] : []));
          expect(found.map((z) => z.toFixed(6)).sort()).toEqual(expected.map((z) => z.toFixed(6)).sort());
          met += found.length;
        }
      }),
    );
    expect(met).toBeGreaterThan(100);
  });

  test('hang side by side on a trapeze whose rods end at the member above', () => {
    const { site, planned } = library;
    const { shapes } = sectionOf(site, planned, { from: [20, -10], to: [20, 10], look: 0 })!;
    const rounds = shapes.flatMap((one) => (one.part === 'conduit' && one.kind === 'round' ? [one] : []));
    expect(rounds.length).toBeGreaterThan(2);
    const sorted = [...rounds].sort((a, b) => a.at[0] - b.at[0]);
    sorted.slice(1).forEach((one, i) => {
      const last = sorted[i]!;
      expect(one.at[0] - one.radius).toBeGreaterThan(last.at[0] + last.radius);
    });
    expect(shapes.filter(({ part }) => part === 'trapeze')).toHaveLength(1);
    const rods = shapes.flatMap((one) => (one.part === 'rod' && one.kind === 'line' ? [one.points] : []));
    expect(rods).toHaveLength(2);
    for (const rod of rods) expect(rod[1]![1]).toBe(12.5);
  });
});

describe('the section at a drop of the library lot, by hand', () => {
  const { site, planned } = library;
  const cut = typicalSections(site, planned).find(({ name }) => name.startsWith('Section at drop'))!;
  const section = sectionOf(site, planned, cut)!;

  test('goes over two stalls of 18 ft with a drive aisle on either side', () => {
    const uses = section.ground.map(({ use, from, to }) => [use, Math.round((to - from) * 100) / 100]);
    expect(uses).toEqual([
      ['drive aisle', 8],
      ['stall', 18],
      ['stall', 18],
      ['drive aisle', 8],
    ]);
  });

  test('tells heights of steel, box, retractor, connector and vehicle as the file has them', () => {
    const told = new Map(section.heights.map(({ says, elevation }) => [says, elevation]));
    expect(told.get('steel')).toBe(12.5);
    expect(told.get('box')).toBe(11);
    expect(told.get('retractor')).toBe(10);
    expect(told.get('connector at rest')).toBe(3);
    // A sedan, 57 in.
    expect(told.get('vehicle')).toBeCloseTo(4.75, 9);
  });

  test('a stall is clear to the retractors over it, and the rule beside it is the site’s', () => {
    for (const { use, clear, asked } of section.ground)
      if (use === 'stall') {
        expect(clear?.height).toBe(10);
        expect(asked === site.rules.clearHeight.stall || asked === site.rules.clearHeight.van).toBe(true);
      }
  });
});

test('through a trench the cover is that of the raceway, and the trench goes below it', () => {
  const { site, planned } = fleet;
  const cut = typicalSections(site, planned).find(({ name }) => name.includes('trench'))!;
  const section = sectionOf(site, planned, cut)!;
  expect(section.trenches).toHaveLength(1);
  const [trench] = section.trenches;
  const buried = site.raceways.filter(({ place }) => place === 'underground');
  const depth = Math.max(...buried.flatMap(({ path }) => path.map((at) => -at[2])));
  expect(trench!.cover).toBeCloseTo(depth, 6);
  expect(-trench!.bottom).toBeGreaterThan(trench!.cover);
  expect(trench!.surface).toBe('asphalt');
});

test('figures of a trench stand beside it where the scale has room for them, and are left out where it has none', () => {
  const { site, planned } = fleet;
  const cut = typicalSections(site, planned).find(({ name }) => name.includes('trench'))!;
  const section = sectionOf(site, planned, cut)!;
  const { cover } = section.trenches[0]!;
  for (const [letter, shown] of [
    [cover / 12, true],
    [cover / 3, false],
  ] as const) {
    const { items } = sectionDrawing(section, 'ft', letter, 'trench');
    expect(JSON.stringify(items).includes('cover ')).toBe(shown);
  }
});

test('a lot has typical sections at a drop, at the trunk, at the equipment and through the trench', () => {
  expect(typicalSections(fleet.site, fleet.planned).map(({ name }) => name.replace(/ [A-Z]+\d+$/, ''))).toEqual([
    'Section at drop',
    'Section at the trunk',
    'Section at',
    'Section through the trench of',
  ]);
  const empty = { ...fleet.site, drops: [], raceways: [], equipment: [], stalls: [] };
  expect(typicalSections(empty, { ...fleet.planned, reach: [], conduits: [], runs: [] })).toEqual([]);
});

test('a cut of no length shows nothing, and one over open ground shows grade alone', () => {
  const { site, planned } = library;
  const at: Point2 = [500, 500];
  expect(sectionOf(site, planned, { from: at, to: at, look: 5 })).toBeNull();
  const section = sectionOf(site, planned, { from: at, to: [520, 500], look: 5 })!;
  expect(section).toMatchObject({ length: 20, shapes: [], ground: [], heights: [], trenches: [], low: 0, high: 0 });
});
