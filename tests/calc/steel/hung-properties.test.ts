import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Conduit } from '../../../calc/plan-file/branches.ts';
import { memberStatics } from '../../../calc/steel/member-statics.ts';
import { restsOf } from '../../../calc/steel/rests.ts';
import { CONDUCTOR_WEIGHTS } from '../../../calc/tables/weights/conductor-weights.ts';
import { RACEWAY_WEIGHTS } from '../../../calc/tables/weights/raceway-weights.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Member, Site } from '../../../routing/site/site.ts';
import { type Drawing, drawings, siteOfDrawing } from '../../routing/network/random-sites.ts';
import { member } from './hung-parts.ts';

const steel = fc
  .array(member, { minLength: 1, maxLength: 8 })
  .map((all): Member[] => [
    { id: 'B', from: [0, 12, 12.5], to: [40, 12, 12.5] },
    ...all.map(([from, to], i): Member => ({ id: `M${i}`, from, to })),
  ]);

const siteWith = (drawing: Drawing, members: readonly Member[]): Site => ({
  ...siteOfDrawing(drawing),
  members: [...members],
});

/** Pounds of a conduit by its path in the plan and the rows of the tables, legs to where a person stands left out. */
function conduitPounds({ path, method, tradeSize, conductors }: Conduit): number {
  const feet = path.slice(1).reduce((sum, b, i) => {
    const a = path[i]!;
    const upright = Math.hypot(b[0] - a[0], b[1] - a[1]) <= 0.25 && Math.abs(b[2] - a[2]) > 0.25;
    return upright && Math.min(a[2], b[2]) <= 7 ? sum : sum + distance(a, b);
  }, 0);
  const pipe = RACEWAY_WEIGHTS.rows.find((row) => row.method === method && row.tradeSize === tradeSize)!.pounds;
  const wire = conductors.reduce(
    (sum, { size, count }) =>
      sum + (count * CONDUCTOR_WEIGHTS.rows.find((row) => row.size === size)!.copper.nylon) / 1000,
    0,
  );
  return feet * (1.04 * pipe + wire);
}

/** Pounds of each element, on all members and on none. */
function poundsByElement({ hung, loose }: Plan): Map<string, number> {
  const sums = new Map<string, number>();
  const add = (of: readonly string[], pounds: number): void => {
    const key = of.join(' ');
    sums.set(key, (sums.get(key) ?? 0) + pounds);
  };
  for (const { points, runs } of hung) {
    for (const { pounds, of, made } of points) add(of, pounds - (made.trapeze ?? 0));
    for (const { from, to, poundsPerFoot, of } of runs) add(of, poundsPerFoot * distance(from, to));
  }
  // What a trapeze weighs itself is looked at where its parts are counted.
  for (const { of, pounds } of loose) if (!of.startsWith('R')) add([of], pounds);
  return sums;
}

describe('on random sites', () => {
  test('every pound that hangs is on one member or told as hanging from nothing, whole', () => {
    let held = 0;
    fc.assert(
      fc.property(drawings, steel, (drawing, members) => {
        const site = siteWith(drawing, members);
        const planned = plan(site);
        const total = [...poundsByElement(planned).values()].reduce((sum, pounds) => sum + pounds, 0);
        const own = planned.conduits.reduce((sum, conduit) => sum + conduitPounds(conduit), 0);
        const things = site.drops.length * 2.5 + site.chargers.length * (20 + 10);
        const { pounds, boxes } = junctions(planned);
        // A drop's box may be of any size; what is over 2.5 lb of it is looked at with the junctions.
        expect(Math.abs(total - own - things - pounds)).toBeLessThan(1e-6 * (1 + total) + boxes);
        held += planned.hung.reduce((sum, one) => sum + one.pounds, 0) > 0 ? 1 : 0;
      }),
      { numRuns: 60 },
    );
    expect(held).toBeGreaterThan(25);
  });

  test('the reactions of each member are what hangs on it', () => {
    fc.assert(
      fc.property(drawings, steel, (drawing, members) => {
        const all = restsOf(members, []);
        for (const hung of plan(siteWith(drawing, members)).hung) {
          const own = members.find((one) => one.id === hung.member)!;
          const { rests } = memberStatics(own, hung, all.get(own.id) ?? []);
          expect(rests.reduce((sum, { pounds }) => sum + pounds, 0)).toBeCloseTo(hung.pounds, 4);
          const places = rests.map(({ at }) => at);
          expect(places).toEqual([...places].sort((p, q) => p - q));
        }
      }),
      { numRuns: 25 },
    );
  });

  test('kept parts and a plan from nothing say the same', () => {
    fc.assert(
      fc.property(drawings, steel, fc.integer({ min: -6, max: 6 }), (drawing, members, by) => {
        const site = siteWith(drawing, members);
        plan(site).hung;
        const [first, ...others] = site.members;
        const moved = { ...site, members: [shifted(first!, by), ...others] };
        const fresh = siteWith(structuredClone(drawing), structuredClone([...moved.members]));
        expect(plan(moved).hung).toEqual(plan(fresh).hung);
      }),
      { numRuns: 30 },
    );
  });
});

const shifted = ({ id, from, to }: Member, by: number): Member => ({
  id,
  from: [from[0] + by, from[1], from[2]],
  to: [to[0] + by, to[1], to[2]],
});

/** Boxes on the raceways that hang, and by how many pounds those of drops are over the least. */
function junctions({ boxes }: Plan): { readonly pounds: number; readonly boxes: number } {
  let [pounds, over] = [0, 0];
  for (const { kind, box: size, at } of boxes) {
    if (kind === 'drop') over += size === null ? 15 : 1.5;
    else if (at[2] > 7) {
      pounds += size === null ? 7 : size.startsWith('4-11/16') ? 4 : 2.5;
      over += size === null ? 15 : 0;
    }
  }
  return { pounds, boxes: over };
}
