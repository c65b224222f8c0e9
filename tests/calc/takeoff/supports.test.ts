import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { feederLays } from '../../../calc/steel/feeder-lays.ts';
import { supportsOf } from '../../../calc/steel/kept-supports.ts';
import type { RacewaySupports } from '../../../calc/steel/raceway-supports.ts';
import { feederConduits } from '../../../calc/supply/feeders/feeder-conduit.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { supportSpacing } from '../../../calc/tables/raceway-of.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Feeder, Member, Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { box, charger, panel, raceway } from '../../routing/network/sites.ts';
import { anyLot, trunkLot } from '../branches/lots.ts';

const quantity = ({ takeoff }: Plan, item: string): number =>
  takeoff.filter((row) => row.item === item).reduce((sum, row) => sum + row.quantity, 0);
const planOf = (file: SiteFile): Plan => plan(toSite(file));
const beam = (from: number, to: number, id = 'B1'): Member => ({ id, from: [from, 0, 12], to: [to, 0, 12] });

describe('conduits side by side', () => {
  test('two home runs 50 ft out and 40 ft out share trapezes as far as both go', () => {
    const rules = { circuitsPerConduit: 1 };
    const planned = planOf(trunkLot([50, 40], { rules, members: [beam(0, 60)] }));
    expect(planned.conduits.map(({ length }) => length).sort()).toEqual([40, 50]);
    // 3, 13, 23, 33, 40 for the short one, which the long one uses too; then 50 for it alone.
    expect(quantity(planned, 'trapeze')).toBe(5);
    expect(quantity(planned, 'hanger')).toBe(1);
    expect(quantity(planned, 'strap')).toBe(5 * 2 + 1);
    expect(quantity(planned, 'beam clamp')).toBe(10);
    expect(quantity(planned, 'threaded rod')).toBeCloseTo(5 * 2 * 2 * 1.05, 9);
    const [row] = planned.takeoff.filter(({ item }) => item === 'trapeze');
    expect(row).toMatchObject({ spec: '12 in', of: ['R1'] });
  });

  test('where the steel stops and goes on 25 ft later, a stringer of 25 ft is counted', () => {
    const members = [beam(0, 12), beam(43, 60, 'B2')];
    const planned = planOf(trunkLot([50], { members }));
    // The beams hold 3 ft past their ends.
    expect(quantity(planned, 'stringer')).toBeCloseTo(25 * 1.05, 6);
    const [finding] = planned.findings.filter(({ rule }) => rule === 'unsupported');
    expect(finding!.says).toContain('stringer');
  });

  test('every price line that a support asks for is in the invented list', async () => {
    const { INVENTED_LIST } = await import('../../../calc/prices/invented-list.ts');
    for (const item of ['trapeze', 'threaded rod', 'beam clamp', 'stringer', 'hanger', 'strap'])
      expect(
        INVENTED_LIST.rows.some((row) => row.item === item),
        item,
      ).toBe(true);
  });
});

const NO_FEEDERS = { byRaceway: new Map() };

describe('a feeder overhead', () => {
  const feeder = (more: Partial<Feeder> = {}): SiteFile => ({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'feeder',
    equipment: [panel('P1', [0, 0, 11]), panel('P2', [50, 0, 11])],
    raceways: [
      raceway('R1', [
        [0, 0, 11],
        [50, 0, 11],
      ]),
    ],
    feeders: [
      {
        id: 'F1',
        from: 'P1',
        to: 'P2',
        conductor: { size: '1', metal: 'copper', sets: 2, insulation: 'THWN-2' },
        breakerAmps: 200,
        ...more,
      },
    ],
    members: [beam(0, 60)],
  });
  // By 358.30: within 3 ft of both ends and 10 ft apart: 3, 13, 23, 33, 43, then 47 or beyond.
  const PLACES = 6;

  test('two sets share trapezes, which weigh on the steel; one hangs by itself', () => {
    const two = planOf(feeder());
    expect(quantity(two, 'trapeze')).toBe(PLACES);
    expect(quantity(two, 'strap')).toBe(2 * PLACES);
    const made = two.hung[0]!.points.filter((point) => point.made.trapeze !== undefined);
    expect(made.map(({ of }) => of)).toEqual(made.map(() => ['R1']));
    expect(made).toHaveLength(PLACES);
    const one = planOf(
      feeder({ conductor: { size: '1', metal: 'copper', sets: 1, insulation: 'THWN-2' }, breakerAmps: 100 }),
    );
    expect(quantity(one, 'trapeze')).toBe(0);
    expect(quantity(one, 'hanger')).toBe(PLACES);
  });

  test('beside a branch it hangs on its trapezes; one that stands has its supports', () => {
    const file = { ...feeder(), drops: [box('D1', [50, 0.5, 11])], chargers: [charger('C1', 'D1', 'P1')] };
    const beside = planOf(file);
    expect(quantity(beside, 'trapeze')).toBe(PLACES);
    expect(quantity(beside, 'strap')).toBe(3 * PLACES);
    const { conduits } = supportsOfPlan(file)[0]!.supports[0]!;
    expect(conduits.map(({ id }) => id)).toEqual(['P1-1.1', 'F1', 'F1']);
    const standing = planOf({ ...file, feeders: [{ ...file.feeders![0]!, existing: true }] });
    expect(quantity(standing, 'trapeze')).toBe(0);
    expect(quantity(standing, 'hanger')).toBe(PLACES);
  });
});

function supportsOfPlan(file: SiteFile): readonly RacewaySupports[] {
  const site = toSite(file);
  const lays = feederLays(site, feederConduits(site, NEC_2023), NEC_2023);
  return supportsOf(site, plan(site).branches, lays, NEC_2023);
}

describe('on any lot', () => {
  test('each conduit hangs within its code spacing, by its own path and an own count', () => {
    let looked = 0;
    fc.assert(
      fc.property(anyLot({ mostChargers: 8 }), (file) => {
        const site = toSite(file);
        const planned = plan(site);
        const own = new Map<string, Point3[]>();
        for (const { supports } of supportsOf(site, planned.branches, NO_FEEDERS, NEC_2023))
          for (const { at, conduits } of supports)
            for (const { id } of conduits) own.set(id, [...(own.get(id) ?? []), at]);
        for (const conduit of planned.conduits) {
          const { spacingFt } = supportSpacing(NEC_2023, conduit.method, conduit.tradeSize);
          const at = (own.get(conduit.id) ?? []).map((place) => along(conduit.path, place)).sort((a, b) => a - b);
          looked += at.length;
          for (let i = 1; i < at.length; i++) {
            const standing = uprightFeet(conduit.path, at[i - 1]!, at[i]!);
            // A joint of raceways may be a few inches wide.
            expect(at[i]! - at[i - 1]! - standing).toBeLessThanOrEqual(spacingFt + 0.5);
          }
        }
        const hung = planned.takeoff
          .filter(({ item }) => item === 'hanger')
          .reduce((sum, { parts }) => sum + parts.length, 0);
        expect(hung).toBeLessThanOrEqual(quantity(planned, 'strap') + quantity(planned, 'tray support'));
      }),
      { numRuns: 30 },
    );
    expect(looked).toBeGreaterThan(200);
  });

  test('kept supports and those of a plan from nothing are the same', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 8 }), fc.integer({ min: -3, max: 3 }), (file, by) => {
        const members = [beam(-50, 80), { id: 'B2', from: [0, -60, 12], to: [0, 60, 12] } as Member];
        const site = toSite({ ...file, members });
        expect(plan(site).takeoff.length).toBeGreaterThan(0);
        const first = site.drops[0]!;
        const moved = { ...first, box: [first.box[0] + by, first.box[1], first.box[2]] as const };
        const drops = [moved, ...site.drops.slice(1)];
        const kept = plan({ ...site, drops, members: [{ ...members[0]!, to: [80 + by, 0, 12] }, members[1]!] });
        const fresh = structuredClone({
          ...file,
          drops,
          members: [{ ...members[0]!, to: [80 + by, 0, 12] }, members[1]!],
        });
        const told = ({ takeoff }: Plan) =>
          takeoff.map(({ item, spec, quantity, parts }) => [item, spec, quantity, parts]);
        expect(told(kept)).toEqual(told(planOf(fresh as SiteFile)));
      }),
      { numRuns: 25 },
    );
  });
});

/** How far along a path a place on it is, feet. */
function along(path: readonly Point3[], place: Point3): number {
  let before = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const length = distance(a, b);
    if (distance(a, place) + distance(place, b) - length < 1e-3) return before + distance(a, place);
    before += length;
  }
  return Number.NaN;
}

/** Feet of a path between two distances that stand upright: strapped to what they stand against. */
function uprightFeet(path: readonly Point3[], from: number, to: number): number {
  let [before, feet] = [0, 0];
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const length = distance(a, b);
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) <= 0.25 && before >= from - 1e-6 && before + length <= to + 1e-6)
      feet += length;
    before += length;
  }
  return feet;
}
