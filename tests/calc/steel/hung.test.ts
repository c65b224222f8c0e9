import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { Hung } from '../../../calc/plan-file/hung.ts';
import { memberStatics } from '../../../calc/steel/member-statics.ts';
import { restsOf } from '../../../calc/steel/rests.ts';
import { CONDUCTOR_WEIGHTS } from '../../../calc/tables/weights/conductor-weights.ts';
import { RACEWAY_WEIGHTS } from '../../../calc/tables/weights/raceway-weights.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Member, Point3, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { type Drawing, drawings, siteOfDrawing } from '../../routing/network/random-sites.ts';
import { box, charger, panel, raceway } from '../../routing/network/sites.ts';

/** A beam 40 ft long over the x axis, and what is fed along a raceway 1 ft under it to a box at 30 ft. */
const beam: Member = { id: 'B1', from: [0, 0, 12], to: [40, 0, 12] };
const file = (parts: Partial<SiteFile>): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'steel',
  equipment: [panel('P1', [0, 0, 11])],
  raceways: [
    raceway('R1', [
      [0, 0, 11],
      [30, 0, 11],
    ]),
  ],
  drops: [box('D1', [30, 0, 11])],
  chargers: [charger('C1', 'D1', 'P1')],
  members: [beam],
  ...parts,
});
const hungOn = (parts: Partial<SiteFile>): readonly Hung[] => plan(toSite(file(parts))).hung;

/** EMT 1/2 in and its couplings, two 8 AWG lines and a 10 AWG grounding conductor of copper THWN-2. */
const FOOT = 0.3 * 1.04 + (2 * 64 + 38) / 1000;

describe('what hangs from what', () => {
  test('a conduit along a beam is a line on it, and its box with the charging module and cord a point', () => {
    const [one, ...others] = hungOn({});
    expect(others).toEqual([]);
    expect(one!.runs).toHaveLength(1);
    expect(one!.runs[0]).toMatchObject({ from: [0, 0, 12], to: [30, 0, 12], of: ['P1-1.1'] });
    expect(one!.runs[0]!.poundsPerFoot).toBeCloseTo(FOOT, 9);
    expect(one!.points.map(({ at, of, made }) => ({ at, of, made }))).toEqual([
      { at: [30, 0, 12], of: ['D1'], made: { box: 2.5, module: 20, cord: 10 } },
    ]);
    expect(one!.pounds).toBeCloseTo(30 * FOOT + 32.5, 9);
  });

  test('a conduit across purlins is a point on each, with half of what it spans to both sides', () => {
    const members = [0, 10, 20, 30].map((x): Member => ({ id: `P${x}`, from: [x, -20, 12], to: [x, 20, 12] }));
    const hung = hungOn({ members });
    const feet = hung.map(({ points, runs }) => {
      expect(runs).toEqual([]);
      return points.reduce((sum, { made }) => sum + (made.conduit ?? 0), 0) / 0.3;
    });
    for (const [i, own] of [5, 10, 10, 5].entries()) expect(feet[i]).toBeCloseTo(own, 6);
    expect(hung.map(({ points }) => points[0]!.at[1])).toEqual([0, 0, 0, 0]);
  });

  test('of two members in reach the nearer in space holds it', () => {
    const near: Member = { id: 'Z', from: [0, 1, 12], to: [40, 1, 12] };
    expect(
      hungOn({ members: [{ ...beam, from: [0, -2, 12], to: [40, -2, 12] }, near] }).map(({ member }) => member),
    ).toEqual(['Z']);
    const lower: Member = { id: 'Z', from: [0, 0, 11.5], to: [40, 0, 11.5] };
    expect(hungOn({ members: [beam, lower] }).map(({ member }) => member)).toEqual(['Z']);
  });

  test('a riser down to where a person stands is no load on the steel; a leg up there is', () => {
    const down: Point3[] = [
      [0, 0, 5],
      [0, 0, 11],
      [30, 0, 11],
    ];
    const [stands] = hungOn({ equipment: [panel('P1', [0, 0, 5])], raceways: [raceway('R1', down)] });
    expect(stands!.pounds).toBeCloseTo(30 * FOOT + 32.5, 6);
    const [hangs] = hungOn({ drops: [box('D1', [30, 0, 8])] });
    expect(hangs!.pounds).toBeCloseTo(33 * FOOT + 32.5, 6);
  });

  test('a retractor hangs with its cords where it is, apart from the box', () => {
    const drops = [{ ...box('D1', [30, 0, 11] as Point3), retractor: [33, 0, 10] as Point3 }];
    const points = hungOn({ drops })[0]!.points;
    expect(points.map(({ at, made }) => [at[0], made])).toEqual([
      [30, { box: 2.5, module: 20 }],
      [33, { retractor: 15, cord: 10 }],
    ]);
  });

  test('what no member holds is told by itself, and pedestals and raceways in the ground hang from nothing', () => {
    const far: Member = { id: 'B1', from: [0, 50, 12], to: [40, 50, 12] };
    const { hung, loose } = plan(toSite(file({ members: [far] })));
    expect(hung).toEqual([]);
    expect(loose.map(({ of }) => of)).toEqual(['P1-1.1', 'D1']);
    expect(loose[0]!.pounds).toBeCloseTo(30 * FOOT, 9);
    const buried = {
      raceways: [
        {
          ...raceway('R1', [
            [0, 0, -2],
            [30, 0, -2],
          ]),
          place: 'underground' as const,
        },
      ],
      equipment: [panel('P1', [0, 0, 0])],
      drops: [{ ...box('D1', [30, 0, 2] as Point3), mount: 'pedestal' as const }],
    };
    expect(hungOn(buried)).toEqual([]);
  });

  test('a feeder overhead hangs with all its sets', () => {
    const conductor = { size: '1', metal: 'copper', sets: 2, insulation: 'THWN-2' } as const;
    const { hung } = plan(
      toSite(
        file({
          equipment: [panel('P1', [0, 0, 11]), panel('P2', [30, 0, 11])],
          feeders: [{ id: 'F1', from: 'P1', to: 'P2', conductor, breakerAmps: 200 }],
          drops: [],
          chargers: [],
        }),
      ),
    );
    const { made } = hung[0]!.runs[0]!;
    expect(made.wire! % 0.6).toBeGreaterThan(0);
    expect(hung[0]!.runs[0]!.of).toEqual(['F1']);
    // Trapezes at 3, 13, 23 and 30: 12 in of channel, two rods of 1 ft, two clamps.
    const trapezes = 4 * (1.9 + 2 * (0.3 + 1));
    expect(hung[0]!.pounds).toBeCloseTo(30 * hung[0]!.runs[0]!.poundsPerFoot + trapezes, 9);
  });
});

const member = fc
  .tuple(
    fc.integer({ min: -10, max: 50 }),
    fc.integer({ min: -10, max: 50 }),
    fc.integer({ min: 4, max: 60 }),
    fc.boolean(),
  )
  .map(([x, y, long, across]): readonly [Point3, Point3] => [
    [x, y, 12.5],
    across ? [x + long, y + (long % 5), 12.5] : [x, y + long, 14],
  ]);
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

test('a trapeze of two conduits 1 ft under the beam: 12 in of channel, two rods of 1 ft and two clamps', () => {
  const drops = [box('D1', [30, 0, 11]), box('D2', [30, 0.5, 11])];
  const chargers = [charger('C1', 'D1', 'P1'), charger('C2', 'D2', 'P1')];
  const [on] = hungOn({ drops, chargers, rules: { circuitsPerConduit: 1 } });
  const trapezes = on!.points.flatMap(({ made }) => (made.trapeze === undefined ? [] : [made.trapeze]));
  // At 3, 13, 23 and where both come to their boxes, at 30.
  expect(trapezes).toHaveLength(4);
  for (const pounds of trapezes) expect(pounds).toBeCloseTo(1.9 + 2 * (0.3 + 1), 9);
});
