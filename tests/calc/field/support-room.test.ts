import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { newVerb } from '../../../calc/cli/verbs/new.ts';
import { lotSupports } from '../../../calc/field/set-out-points.ts';
import { supportRoom, supportStop } from '../../../calc/field/support-room.ts';
import { FARTHEST } from '../../../calc/field/tolerance.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { placeSupports } from '../../../calc/steel/place-supports.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from './start-lot.ts';

const QUARTER = 1 / 48;

function start(stalls: string) {
  const read = readSite(newVerb([], { stalls, replace: false }, {} as Machine).out);
  return toSite(read.ok ? read.file : expect.fail());
}

const LOTS = [toSite(libraryLot()), start('4'), start('12')].map((site) => ({ site, plan: plan(site) }));
const CASES = LOTS.flatMap((lot) =>
  lotSupports(lot.site, lot.plan).flatMap((supports) =>
    supports.supports.map((_, i) => ({ lot, supports, number: i + 1 })),
  ),
);

test('as planned, every support of a lot stands', () => {
  expect(CASES.length).toBeGreaterThan(30);
  for (const { supports, number } of CASES) expect(supportStop(supports, number, 0)).toBe(null);
});

test('just inside the room of a support all is held, just outside it something is not, in 200 cases', () => {
  let tried = 0;
  let stopped = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...CASES),
      fc.constantFrom(1, -1),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (one, sign, share) => {
        const { lot, supports, number } = one;
        const room = supportRoom(lot.site, lot.plan, supports.raceway.id, number) ?? expect.fail();
        const way = sign > 0 ? room.on : room.back;
        expect(supportStop(supports, number, sign * share * way.feet)).toBe(null);
        if (way.stop) {
          stopped++;
          expect(supportStop(supports, number, sign * (way.feet + QUARTER))).not.toBe(null);
        } else expect(way.feet).toBe(FARTHEST);
        tried++;
      },
    ),
    { numRuns: 200 },
  );
  expect(tried).toBe(200);
  expect(stopped).toBeGreaterThan(50);
});

// Outside the search: what conduits ask of their supports is what they are placed by. With the moved one given as a place
// where steel is, and the others as they are, planning places no more supports than before exactly where the room says so.
test('planned again with steel only where the supports stand, one of them moved, no more supports are asked for inside its room', () => {
  fc.assert(
    fc.property(fc.constantFrom(...CASES), fc.integer({ min: -288, max: 288 }), ({ supports, number }, eighths) => {
      const by = eighths / 96;
      const { lays, supports: own } = supports;
      const places = own.map(({ along }, i) => (i === number - 1 ? along + by : along)).sort((a, b) => a - b);
      const again = placeSupports(
        lays,
        places.map((at) => [at, at] as const),
      );
      const loose = again.filter(({ held }) => !held).length;
      const stop = supportStop({ ...supports, zones: null }, number, by);
      if (stop === null) expect(loose).toBe(0);
    }),
    { numRuns: 200 },
  );
});

test('a support between two that are as far apart as the code lets them has no room away from either', () => {
  // EMT is supported at 10 ft or less (NEC 2023 358.30(A)), and within 3 ft of each box.
  const conduit = { from: 0, to: 26, first: 3, last: 3, spacing: 10, isNipple: false, of: 'a' };
  const supports = {
    raceway: {},
    stringers: [],
    zones: null,
    lays: [conduit],
    supports: [3, 13, 23].map((along) => ({ along })),
  } as unknown as Parameters<typeof supportStop>[0];
  expect(supportStop(supports, 2, 0)).toBe(null);
  expect(supportStop(supports, 2, 1 / 96)).toBe('spacing');
  expect(supportStop(supports, 2, -1 / 96)).toBe('spacing');
  expect(supportStop(supports, 1, 1 / 96)).toBe('spacing');
  expect(
    supportStop(
      {
        ...supports,
        zones: [
          [0, 3.5],
          [12, 14],
          [22, 26],
        ],
      },
      3,
      -1.5,
    ),
  ).toBe('steel');
});
