import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { type Detail, type DetailKind, detailExtent } from '../../../calc/sheets/details/detail.ts';
import { detailsOf } from '../../../calc/sheets/details/details.ts';
import { figureWords, spreadApart } from '../../../calc/sheets/pdf/details/detail-dimensions.ts';
import { drawDetail, layDetail } from '../../../calc/sheets/pdf/details/draw-detail.ts';
import { isWithinArea } from '../../../calc/sheets/pdf/kit/area.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { alongLine, overlap } from './pdf/kit/overlap.ts';
import { watchedPen } from './pdf/kit/watched-pen.ts';

function sample(name: string): SiteFile {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}
const FILES = {
  lot: sample('library-lot'),
  pedestals: sample('library-pedestals'),
  yard: sample('fleet-yard'),
  // A file in meters has other figures and other scales.
  bollards: {
    ...sample('library-pedestals'),
    columns: [{ id: 'BO1', at: [0.7, 11] as const, size: [0.5, 0.5] as const, height: 3.5 }],
  },
  meters: { ...sample('library-pedestals'), units: 'm' as const },
};
const detailsIn = (file: SiteFile): readonly Detail[] => {
  const site = toSite(file);
  return detailsOf(site, plan(site));
};
const ofKind = (file: SiteFile, kind: DetailKind): Detail => {
  const found = detailsIn(file).find((one) => one.kind === kind);
  if (found === undefined) throw new RangeError(`no detail of ${kind}`);
  return found;
};
/** Every figure of a detail as it is printed. */
const figures = ({ dimensions }: Detail): readonly string[] =>
  dimensions.flatMap(({ marks }) => marks.slice(1).map(({ at }, i) => figureWords(Math.abs(at - marks[i]!.at), 'ft')));

describe.each(Object.entries(FILES))('the details of the %s', (_, file) => {
  const details = detailsIn(file);

  test('each dimension is taken between places that are drawn, and words point at what is drawn', () => {
    expect(details.length).toBeGreaterThan(1);
    for (const detail of details) {
      const { lines, circles, regions } = detail;
      const drawn = (axis: 0 | 1): number[] => [
        ...lines.flatMap(({ points }) => points.map((point) => point[axis])),
        ...circles.map(({ at }) => at[axis]),
        ...circles.flatMap(({ at, radius }) => [at[axis] - radius, at[axis] + radius]),
        ...regions.flatMap(({ box }) => (axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY])),
      ];
      for (const { side, marks } of detail.dimensions) {
        const places = drawn(side === 'left' ? 1 : 0);
        for (const { at } of marks) {
          const off = Math.min(...places.map((place) => Math.abs(place - at)));
          expect([detail.title, side, off < 1e-6]).toEqual([detail.title, side, true]);
        }
      }
      const { minX, minY, maxX, maxY } = detailExtent(detail);
      for (const { at } of detail.callouts) {
        expect(at[0]).toBeGreaterThanOrEqual(minX - 1e-6);
        expect(at[0]).toBeLessThanOrEqual(maxX + 1e-6);
        expect(at[1]).toBeGreaterThanOrEqual(minY - 1e-6);
        expect(at[1]).toBeLessThanOrEqual(maxY + 1e-6);
      }
      expect(detail.notes.join(' ')).toMatch(/by others|checked by|by the|by their/);
      expect(detail.dimensions.length).toBeGreaterThan(0);
    }
  });

  test.each(['ANSI D', 'tabloid'] as const)(
    'on %s no word lies on another or on a line, and all keep to their place',
    (paper) => {
      const area = paper === 'ANSI D' ? { width: 640, height: 600 } : { width: 460, height: 270 };
      const place = { x: 30, y: 40, ...area };
      for (const detail of details) {
        const { pen, written, lines } = watchedPen(paper);
        drawDetail(pen, detail, layDetail(detail, place, file.units, pen.lettering), place);
        for (const [i, one] of written.entries()) {
          expect([detail.title, one.text, isWithinArea(one.area, place)]).toEqual([detail.title, one.text, true]);
          for (const other of written.slice(i + 1))
            expect([one.text, other.text, overlap(one.area, other.area)]).toEqual([one.text, other.text, false]);
          for (const { points } of lines)
            for (const piece of alongLine(points, 0))
              expect([detail.title, one.text, overlap(one.area, piece)]).toEqual([detail.title, one.text, false]);
        }
      }
    },
  );
});

describe('a detail has the sizes of this site', () => {
  const { lot, pedestals, yard } = FILES;

  test('heights of box, retractor, connector and steel', () => {
    expect(figures(ofKind(lot, 'drop'))).toEqual([`3' 0"`, `10' 0"`, `11' 0"`, `12' 6"`]);
    const lower = {
      ...lot,
      drops: lot.drops!.map((drop) => ({
        ...drop,
        restHeight: 2.5,
        retractor: [drop.box[0] + 1, drop.box[1], 9.5] as const,
      })),
    };
    expect(figures(ofKind(lower, 'drop'))).toEqual([`2' 6"`, `9' 6"`, `11' 0"`, `12' 6"`, `1' 0"`]);
  });

  test('a trapeze is as wide as its conduits ask for and hangs as far down as they do', () => {
    const trapeze = ofKind(lot, 'trapeze');
    expect(figures(trapeze)).toContain(`1' 6"`);
    expect(figures(trapeze).at(-1)).toBe(`2' 6"`);
    expect(trapeze.circles).toHaveLength(12);
    const higher = { ...lot, members: lot.members!.map((one) => ({ ...one, from: up(one.from), to: up(one.to) })) };
    expect(figures(ofKind(higher, 'trapeze'))).toContain(`2' 6"`);
  });

  test('a riser stands off its column as drawn', () => {
    const raceways = lot.raceways!.map((one) => (one.id === 'R1' ? { ...one, path: [...one.path] } : one));
    const at = raceways[0]!.path[0]!;
    const column = (away: number) => ({
      id: 'CX',
      at: [at[0] - away, at[1]] as const,
      size: [1, 1] as const,
      height: 12,
    });
    const with1 = (away: number): SiteFile => ({ ...lot, columns: [...lot.columns!, column(away)] });
    expect(figures(ofKind(with1(1.25), 'riser'))).toEqual([`6' 0"`, `11' 0"`, `12' 0"`, `9"`]);
    expect(figures(ofKind(with1(2), 'riser')).at(-1)).toBe(`1' 6"`);
    // What is too low holds no riser.
    const low: SiteFile = { ...lot, columns: [...lot.columns!, { ...column(1.25), height: 3.5 }] };
    expect(ofKind(low, 'riser').title).toContain('P1');
  });

  test('a pedestal is as high, and its conduit as deep, as drawn', () => {
    expect(figures(ofKind(pedestals, 'pedestal'))).toEqual([`2' 0"`, `2' 0"`]);
    const drops = pedestals.drops!.map((drop) => ({ ...drop, box: [drop.box[0], drop.box[1], 3.5] as const }));
    expect(figures(ofKind({ ...pedestals, drops }, 'pedestal'))).toEqual([`2' 0"`, `3' 6"`, `2' 0"`]);
  });

  test('a bollard is as high and thick, and as far from its pedestal, as drawn', () => {
    const { box } = pedestals.drops![0]!;
    const bollard = (away: number, height: number) => ({
      id: 'BO1',
      at: [box[0] + away, box[1]] as const,
      size: [0.5, 0.5] as const,
      height,
    });
    const one = (away: number, height: number): Detail =>
      ofKind({ ...pedestals, columns: [...pedestals.columns!, bollard(away, height)] }, 'bollard');
    expect(figures(one(2, 3.5))).toEqual([`3' 6"`, `6"`, `2' 0"`]);
    expect(figures(one(2.5, 3))).toEqual([`3' 0"`, `6"`, `2' 6"`]);
    expect(figures(one(30, 3))).toEqual([`3' 0"`, `6"`]);
  });

  test('a trench is as deep as what lies in it, and a handhole with it', () => {
    const deeper = {
      ...pedestals,
      raceways: pedestals.raceways!.map((one) => ({
        ...one,
        path: one.path.map((point) => (point[2] < 0 ? ([point[0], point[1], -2.5] as const) : point)),
      })),
    };
    expect(figures(ofKind(pedestals, 'trench'))).toEqual([`2' 0"`, `1' 0"`]);
    expect(figures(ofKind(deeper, 'trench'))).toEqual([`2' 6"`, `1' 0"`]);
    expect(figures(ofKind(deeper, 'handhole'))).toEqual([`2' 6"`, `1' 0"`]);
    const soil = { ...deeper, raceways: deeper.raceways.map((one) => ({ ...one, surface: 'soil' as const })) };
    expect(ofKind(soil, 'trench').title).toContain('under soil');
    expect(ofKind(soil, 'trench').regions.map(({ hatch }) => hatch)).not.toContain('paving');
  });

  test('equipment is as large as drawn, with its working space before it', () => {
    const pad = (one: SiteFile): readonly string[] =>
      figures(detailsIn(one).find(({ kind, of }) => kind === 'pad' && of.includes('T1'))!);
    expect(pad(yard)).toEqual([`3' 0"`, `3' 0"`, `4' 0"`, `3' 0"`, `3' 0"`, `4' 0"`]);
    const equipment = yard.equipment!.map((one) =>
      one.kind === 'transformer' ? { ...one, size: [4.5, 3.25, 4] as const, workingSpace: 4 } : one,
    );
    expect(pad({ ...yard, equipment })).toEqual([`4' 0"`, `3' 3"`, `4' 6"`, `4' 0"`, `3' 3"`, `4' 6"`]);
  });

  test('a stall that a charger serves is as wide and deep as drawn, with the sign that is taken off', () => {
    const one = ofKind(lot, 'stall');
    const { width, depth } = lot.stalls!.find(({ id }) => id === one.of[0])!;
    expect(figures(one)).toEqual([figureWords(depth, 'ft'), figureWords(width, 'ft')]);
    const said = (file: SiteFile): string =>
      ofKind(file, 'stall')
        .callouts.map(({ text }) => text)
        .join('; ');
    expect(said(lot)).toContain('sign, charging only, on its post');
    expect(said(lot)).not.toContain('wheel stop');
    expect(said(pedestals)).toContain('wheel stop');
    const signs = plan(toSite(lot)).takeoff.find(({ item }) => item === 'sign')!;
    expect(signs.of).toEqual(expect.arrayContaining([...one.of]));
    expect(detailsIn({ ...lot, chargers: [] }).map(({ kind }) => kind)).not.toContain('stall');
  });

  test('a site with nothing built has no details', () => {
    expect(detailsIn({ format: 'overrow/site', version: 1, units: 'ft', name: 'empty' })).toEqual([]);
  });
});

const up = ([x, y, z]: readonly [number, number, number]) => [x, y, z + 1] as const;

test('places are moved apart as little as may be, in their order', () => {
  expect(spreadApart([0, 10, 20], 5)).toEqual([0, 10, 20]);
  expect(spreadApart([10, 10], 4)).toEqual([8, 12]);
  expect(spreadApart([10, 11, 12, 40], 4)).toEqual([7, 11, 15, 40]);
  const many = spreadApart([3, 3, 9, 10, 10, 30], 6);
  for (let i = 1; i < many.length; i++) expect(many[i]! - many[i - 1]!).toBeGreaterThanOrEqual(6 - 1e-9);
});
