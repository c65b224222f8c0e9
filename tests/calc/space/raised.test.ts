import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Block, columnTop } from '../../../calc/space/block.ts';
import { cordAtRest, cordOut } from '../../../calc/space/cord-shape.ts';
import { raisedAt, seenBlock } from '../../../calc/space/oblique.ts';
import { farthestFirst, standsBefore } from '../../../calc/space/paint-order.ts';
import { heightsOf } from '../../../calc/space/tallest.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

describe('the military oblique', () => {
  test('leaves the plan as it is and draws heights straight up', () => {
    expect(raisedAt([12, 7, 0])).toEqual([12, 7]);
    expect(raisedAt([12, 7, 11])).toEqual([12, 18]);
    expect(raisedAt([12, 7, -2])).toEqual([12, 5]);
    expect(raisedAt([12, 7, 10], 0.5)).toEqual([12, 12]);
  });

  test('shows the top of a car and its side towards the eye', () => {
    // By hand: 6 by 15 ft, 5 ft high, its corner at the origin.
    const car: Block = { list: 'stalls', id: 'S', outline: rectangleAt([3, 7.5], [6, 15], 0), low: 0, high: 5 };
    const { silhouette, edges, minX, minY, maxX, maxY } = seenBlock(car);
    expect([minX, minY, maxX, maxY]).toEqual([0, 0, 6, 20]);
    expect(silhouette).toHaveLength(6);
    // Four of the top, two uprights, one at the foot.
    expect(edges).toHaveLength(7);
    expect(edges).toContainEqual([
      [0, 0],
      [6, 0],
    ]);
    expect(edges).toContainEqual([
      [0, 0],
      [0, 5],
    ]);
  });
});

describe('blocks are drawn each over what stands behind it', () => {
  const block = (id: string, x: number, y: number, turn = 0): Block => ({
    list: 'stalls',
    id,
    outline: rectangleAt([x, y], [6, 15], turn),
    low: 0,
    high: 5,
  });

  test('of angled cars in a row the one in front depends on how they lean', () => {
    const order = (turn: number): string =>
      farthestFirst([block('left', 0, 0, turn), block('right', 9, 0, turn)].map(seenBlock))
        .map(({ block: { id } }) => id)
        .join(' ');
    // Leaning to the right, the right one's tail is before the left one's nose.
    expect(order(-30)).toBe('left right');
    expect(order(30)).toBe('right left');
  });

  test('whatever stands before another comes after it', () => {
    const rows = fc.array(
      fc.record({ column: fc.integer({ min: 0, max: 3 }), row: fc.integer({ min: 0, max: 3 }), turn: fc.integer() }),
      { minLength: 2, maxLength: 12 },
    );
    fc.assert(
      fc.property(rows, (places) => {
        const seen = [...new Map(places.map((one) => [`${one.column} ${one.row}`, one])).values()].map(
          ({ column, row, turn }, i) => seenBlock(block(String(i), column * 17, row * 17, turn)),
        );
        const order = farthestFirst(seen);
        expect(order).toHaveLength(seen.length);
        expect(new Set(order)).toEqual(new Set(seen));
        order.forEach((one, i) => {
          for (const later of order.slice(i + 1)) {
            const meet = one.maxY > later.minY && later.maxY > one.minY;
            if (meet && one.maxX > later.minX && later.maxX > one.minX) expect(standsBefore(one, later)).not.toBe(true);
          }
        });
      }),
    );
  });
});

describe('what hangs', () => {
  const { site, planned } = plannedSample('library-lot');
  const dropOf = (charger: string) =>
    site.drops.find(({ id }) => id === site.chargers.find((one) => one.id === charger)?.drop)!;

  test('a cord goes from its retractor to the inlet, as long as it is, and as low as the plan says', () => {
    let tried = 0;
    for (const reach of planned.reach) {
      const drop = dropOf(reach.charger);
      const curve = cordOut(drop, site.rules, reach);
      if (reach.worst.hang === null) {
        expect(curve).toEqual([]);
        continue;
      }
      tried++;
      expect(curve[0]).toEqual(drop.retractor);
      const end = curve.at(-1)!;
      reach.worst.inletAt.forEach((value, k) => {
        expect(end[k]).toBeCloseTo(value, 6);
      });
      const low = Math.min(...curve.map(([, , z]) => z));
      // Its lowest point is seldom one of those that it is drawn through.
      expect(low).toBeGreaterThanOrEqual(reach.worst.hang.low - 1e-9);
      expect(low).toBeLessThan(reach.worst.hang.low + 0.2);
      if (low === 0) continue;
      const length = curve.slice(1).reduce((sum, at, i) => sum + Math.hypot(...at.map((v, k) => v - curve[i]![k]!)), 0);
      expect(length).toBeLessThanOrEqual(reach.worst.available + 1e-6);
      expect(length).toBeGreaterThan(reach.worst.available * 0.985);
    }
    expect(tried).toBeGreaterThan(10);
  });

  test('at rest it hangs straight down to its connector; that of a pedestal does not hang', () => {
    const [drop] = site.drops;
    const [x, y, z] = drop!.retractor!;
    expect(cordAtRest(drop!, site.rules)).toEqual([
      [x, y, z],
      [x, y, drop!.restHeight],
    ]);
    expect(cordAtRest({ ...drop!, mount: 'pedestal' }, site.rules)).toBeNull();
  });

  test('a column goes up to the member that it holds, or as high as it says', () => {
    const column = { id: 'C', at: [0, 0], size: [1, 1] } as const;
    const beam = { id: 'B', from: [-10, 0, 12], to: [10, 0, 14] } as const;
    expect(columnTop(column, [beam])).toBe(13);
    expect(columnTop({ ...column, height: 9 }, [beam])).toBe(9);
    expect(columnTop(column, [{ ...beam, from: [-10, 30, 12], to: [10, 30, 14] }])).toBe(10);
  });

  test('the heights of a site are those of its highest and lowest', () => {
    const all = [
      ...site.members.flatMap(({ from, to }) => [from[2], to[2]]),
      ...site.raceways.flatMap(({ path }) => path.map((at) => at[2])),
    ];
    expect(heightsOf(site).high).toBeGreaterThanOrEqual(Math.max(...all));
    expect(heightsOf(site).low).toBe(Math.min(0, ...all));
  });
});
