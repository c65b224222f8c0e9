import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { bestDrops } from '../../../calc/propose/drops/best-drops.ts';
import { sampleRows } from '../../../calc/propose/drops/sample-rows.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Drop, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows, PITCH, WIDTH } from './hand/lots.ts';

/** @param answers priced of each search for raceways; null as a person has it */
const wish = (cordsADrop: number, answers: number | null = 0) =>
  ({ what: 'all', cordsADrop, prices: INVENTED_LIST, ...(answers === null ? {} : { answers }) }) as const;
const bidOf = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).price;
const failing = (file: SiteFile): number =>
  plan(toSite(file)).findings.filter(({ severity }) => severity === 'fail').length;
/** Panels and raceways for drops that hang already, and more drops where those do not do. */
const all = (file: SiteFile, cordsADrop: number): SiteFile => propose(file, wish(cordsADrop)).file;

/** As a hand hangs them: even rows, one line, a drop each so many stalls over the stripe between them, so high under the purlins at 12.5 ft. */
function evenly(ground: SiteFile, along: number, canopies: number, cords: 1 | 2, high: number): SiteFile {
  const count = Math.floor(along / cords);
  const drops = Array.from({ length: canopies }, (_, k) =>
    [1, -1].flatMap((side) =>
      Array.from({ length: count }, (_unused, i): Drop => {
        const [x, y] = [(cords === 1 ? i : 2 * i + 1) * WIDTH, k * PITCH + side * 9];
        const own = cords === 2 ? { holds: 2 } : { holds: 1 };
        return {
          id: `H${k}${side}${i}`,
          box: [x, y, high],
          retractor: [x, y, high - 1],
          cord: 25,
          restHeight: 3,
          ...own,
        };
      }),
    ),
  ).flat();
  return { ...ground, drops };
}

const LOT = { volts: 208, away: 40 } as const;

describe.each([
  [102, 17, 3, 1, [11.5, 11, 10.5], 0],
  // So few are sought as a person has them sought: panels are moved further from where each pattern has them.
  [26, 13, 1, 2, [11.5, 11, 10.5], null],
] as const)(
  '%i stalls, %i along under %i canopies, with %i cords a drop',
  (stalls, along, canopies, cords, heights, answers) => {
    const ground = doubleRows({ along, canopies, ...LOT });
    const sought = (file: SiteFile): SiteFile => propose(file, wish(cords, answers)).file;
    const proposed = sought(ground);

    test.each(heights)('a hand’s even pattern %f ft up comes to no less as a bid', (high) => {
      expect([failing(proposed), proposed.chargers!.length]).toEqual([0, stalls]);
      const drawn = sought(evenly(ground, along, canopies, cords, high));
      expect(drawn.chargers).toHaveLength(stalls);
      expect(bidOf(proposed)).toBeLessThanOrEqual(bidOf(drawn));
    });

    test('neither does the usual pattern, whose drops are no fewer', () => {
      const { usual, best } = bestDrops(ground, wish(cords, answers), () => true);
      expect(best).not.toBe(usual);
      expect(best.file.drops!.length).toBeLessThanOrEqual(usual.file.drops!.length);
      expect(bidOf(proposed)).toBeLessThan(bidOf(sought(usual.file)));
    });
  },
);

test('in pairs the drops of 102 stalls come to less than as the fewest cover all, and are no more', () => {
  const ground = doubleRows({ along: 17, canopies: 3, ...LOT });
  const { usual, best } = bestDrops(ground, wish(2), () => true);
  expect(best.file.drops!.length).toBeLessThanOrEqual(usual.file.drops!.length);
  expect(bidOf(all(ground, 2))).toBeLessThan(bidOf(all(usual.file, 2)));
});

test('a large lot is told by its longest row and the one beside it, whole or so much of it', () => {
  const ground = doubleRows({ along: 40, canopies: 4, ...LOT });
  const part = sampleRows(ground, new Set(ground.stalls!.map(({ id }) => id)));
  const ys = new Set(part.stalls!.map(({ at }) => Math.round(at[1])));
  expect(part.stalls).toHaveLength(48);
  expect(ys.size).toBe(2);
  const [low, high] = [...ys].sort((a, b) => a - b);
  // Under one canopy, or over one aisle: nothing lies between.
  expect(high! - low!).toBeLessThanOrEqual(36);
});
