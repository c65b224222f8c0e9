import fc from 'fast-check';
import { expect, test } from 'vitest';
import { startSite } from '../../../../calc/propose/start-site.ts';
import { equipmentFindings } from '../../../../routing/checks/equipment/equipment-findings.ts';
import { keepoutFindings } from '../../../../routing/checks/keepout-findings.ts';
import { branchesFrom, proposeEquipment } from '../../../../routing/propose/equipment/propose-equipment.ts';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Equipment, Point2, Point3, Site } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { hospitalLot } from '../../../bench/samples/hospital-lot.ts';
import { libraryLot } from '../../../bench/samples/library-lot.ts';
import { LEAST_ALONE, LEAST_SPACE } from '../../network/sites.ts';

const MAKE = { kind: 'panelboard', size: [3, 1, 6], workingSpace: 3, entryHeight: 6, least: LEAST_SPACE } as const;

function read(value: object): Site {
  const result = readSiteValue(value);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return toSite(result.file);
}

const EMPTY = read({ format: 'overrow/site', version: 1, units: 'ft', name: 'empty' });

/** What a piece counts as beside its branches, in feet of branch: that few are better. */
const ITSELF = 2000;

/** One circuit to each box, pieces for at most `holds` of them, and a feeder by its weight. */
function proposed(
  site: Site,
  boxes: readonly Point3[],
  holds: number,
  most: number,
  fedBy: { readonly at: Point2; readonly weight: number } | null = null,
) {
  const { total, ...rest } = proposeEquipment({
    site,
    ends: boxes.map((at) => ({ at, circuits: 1 })),
    make: MAKE,
    most,
    weigh: (circuits) => (circuits <= holds ? { itself: ITSELF, feeder: fedBy?.weight ?? 0, trench: 0 } : null),
    source: fedBy?.at ?? null,
    isGood: () => true,
  });
  return { ...rest, total: total - ITSELF * rest.placed.length };
}

const withAll = (site: Site, { placed }: ReturnType<typeof proposed>): Site => ({
  ...site,
  equipment: [...site.equipment, ...placed.map(({ equipment }, i): Equipment => ({ ...equipment, id: `N${i}` }))],
});

test('on open ground it stands at the medians of its boxes: the one-median in the rectilinear plane', () => {
  const box = fc
    .tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 20 }))
    .map(([x, y]): Point3 => [x, y, 11]);
  fc.assert(
    fc.property(fc.array(box, { minLength: 1, maxLength: 9 }), (boxes) => {
      const { placed, total } = proposed(EMPTY, boxes, boxes.length, 1000);
      expect(placed).toHaveLength(1);
      // Francis, McGinnis and White, "Facility Layout and Location" (cited from memory): each coordinate by itself.
      const toMedian = (axis: 0 | 1): number => {
        const sorted = boxes.map((one) => one[axis]).sort((a, b) => a - b);
        const median = sorted[Math.floor(sorted.length / 2)]!;
        return sorted.reduce((sum, value) => sum + Math.abs(value - median), 0);
      };
      expect(total).toBeCloseTo(toMedian(0) + toMedian(1) + 5 * boxes.length, 9);
    }),
    { numRuns: 60 },
  );
});

test('a feeder by its weight draws it to what feeds it: the weighted median, each coordinate by itself', () => {
  const place = fc.tuple(fc.integer({ min: 0, max: 36 }), fc.integer({ min: 0, max: 20 }));
  fc.assert(
    fc.property(
      fc.array(place, { minLength: 1, maxLength: 7 }),
      place,
      fc.integer({ min: 0, max: 12 }),
      (at, source, weight) => {
        const boxes = at.map(([x, y]): Point3 => [x, y, 6]);
        const { placed, total } = proposed(EMPTY, boxes, boxes.length, 1000, { at: source, weight });
        // Every whole place tried in turn: the medians are among them.
        let least = Number.POSITIVE_INFINITY;
        for (let x = 0; x <= 36; x++)
          for (let y = 0; y <= 20; y++) {
            const branches = at.reduce((sum, [bx, by]) => sum + Math.abs(bx - x) + Math.abs(by - y), 0);
            least = Math.min(least, branches + weight * (Math.abs(source[0] - x) + Math.abs(source[1] - y)));
          }
        expect(total).toBeCloseTo(least, 9);
        const [{ equipment, feeder }] = placed as [(typeof placed)[number]];
        expect(feeder).toBe(Math.abs(equipment.at[0] - source[0]) + Math.abs(equipment.at[1] - source[1]));
        if (weight > boxes.length) expect(feeder).toBe(0);
      },
    ),
    { numRuns: 60 },
  );
});

/** Whether a point of the plan lies in a polygon: even-odd rule. */
const inside = ([x, y]: Point2, outline: readonly Point2[]): boolean =>
  outline.reduce((is, [bx, by], i) => {
    const [ax, ay] = outline.at(i - 1)!;
    return ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax ? !is : is;
  }, false);

test('on the library lot it stands clear, with its working space, and no free place nearer to its boxes was passed over', () => {
  const file = libraryLot();
  const site = read({ ...file, equipment: [], feeders: [], loads: [], chargers: [], raceways: [], pullpoints: [] });
  const boxes = site.drops.map(({ box }) => box);
  const proposal = proposed(site, boxes, 20, 1000);
  const after = withAll(site, proposal);
  expect([...equipmentFindings(after, LEAST_ALONE), ...keepoutFindings(after)]).toEqual([]);
  const [{ equipment, total, longest }] = proposal.placed as [(typeof proposal.placed)[number]];
  const lengths = boxes.map(
    ([x, y, z]) => Math.abs(x - equipment.at[0]) + Math.abs(y - equipment.at[1]) + Math.abs(z - 6),
  );
  expect(total).toBeCloseTo(
    lengths.reduce((a, b) => a + b, 0),
    9,
  );
  expect(longest).toBeCloseTo(Math.max(...lengths), 9);
  // A grid of our own: where the sum is less, something stands, be it by one corner of the panel at every turn.
  const blocked = [
    ...site.stalls.map((stall) => [...stallRectangle(stall)]),
    ...site.aisles.map(({ outline }) => [...outline]),
  ];
  const taken = (at: Point2): boolean => blocked.some((outline) => inside(at, outline as Point2[]));
  for (let x = -20; x <= 100; x += 4)
    for (let y = -40; y <= 40; y += 4) {
      const sum = boxes.reduce((all, [bx, by, bz]) => all + Math.abs(bx - x) + Math.abs(by - y) + Math.abs(bz - 6), 0);
      if (sum >= total - 1e-9) continue;
      for (const [a, b] of [
        [1.5, 0.5],
        [0.5, 1.5],
      ] as const)
        expect(
          [-1, -0.5, 0, 0.5, 1].some((i) =>
            [-1, 0, 1].some((j) =>
              [0, 3.4].some((front) =>
                [1, -1].some(
                  (way) => taken([x + i * a, y + j * b + way * front]) || taken([x + i * a + way * front, y + j * b]),
                ),
              ),
            ),
          ),
        ).toBe(true);
    }
});

test('a lot of four canopies gets a panel for each stretch of a row, none with more than it takes, none too far', () => {
  const file = hospitalLot();
  const site = read({
    ...file,
    equipment: [],
    feeders: [],
    loads: [],
    chargers: [],
    raceways: [],
    pullpoints: [],
    keepouts: [],
  });
  const boxes = site.drops.map(({ box }) => box);
  const proposal = proposed(site, boxes, 25, 150);
  expect(proposal.without).toEqual([]);
  expect(proposal.placed.flatMap((one) => one.ends).sort((a, b) => a - b)).toEqual(boxes.map((_, i) => i));
  for (const one of proposal.placed) {
    expect(one.ends.length).toBeLessThanOrEqual(25);
    expect(one.longest).toBeLessThanOrEqual(150);
    const across = one.ends.map((i) => boxes[i]![1]);
    expect(Math.max(...across) - Math.min(...across)).toBeLessThan(30);
  }
  expect(equipmentFindings(withAll(site, proposal), LEAST_ALONE)).toEqual([]);
});

test('boxes that no free place is near enough to are told', () => {
  const wall = {
    id: 'K',
    outline: [
      [-500, -500],
      [500, -500],
      [500, 500],
      [-500, 500],
    ],
    blocks: ['equipment'],
  };
  const site = read({ format: 'overrow/site', version: 1, units: 'ft', name: 'shut', keepouts: [wall] });
  expect(
    proposed(
      site,
      [
        [0, 0, 11],
        [9, 0, 11],
      ],
      9,
      100,
    ),
  ).toMatchObject({ placed: [], without: [0, 1] });
});

test('a canopy that is free at its ends alone has panels there for its middle too, no more than its boxes want', () => {
  const site = toSite(startSite({ name: 'Lot', stalls: 100, rows: 2 }));
  const boxes = site.stalls.map(({ at: [x, y] }): Point3 => [x, y / 2, 11]);
  const proposal = proposed(site, boxes, 24, 260);
  expect(proposal.without).toEqual([]);
  expect(proposal.placed.flatMap((one) => one.ends).sort((a, b) => a - b)).toEqual(boxes.map((_, i) => i));
  // 100 boxes want five panels of 24.
  expect(proposal.placed).toHaveLength(5);
  for (const { ends: own, longest, total, equipment } of proposal.placed) {
    expect(own.length).toBeLessThanOrEqual(24);
    expect(longest).toBeLessThanOrEqual(260);
    const each = own.map((i) => branchesFrom(site, equipment.entry, [boxes[i]!]));
    expect(total).toBeCloseTo(
      each.reduce((sum, one) => sum + one, 0),
      6,
    );
    expect(longest).toBeCloseTo(Math.max(...each), 6);
  }
});
