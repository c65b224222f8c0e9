import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Hung } from '../../../calc/plan-file/hung.ts';
import type { Member, Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
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

test('a trapeze of two conduits 1 ft under the beam: 12 in of channel, two rods of 1 ft and two clamps', () => {
  const drops = [box('D1', [30, 0, 11]), box('D2', [30, 0.5, 11])];
  const chargers = [charger('C1', 'D1', 'P1'), charger('C2', 'D2', 'P1')];
  const [on] = hungOn({ drops, chargers, rules: { circuitsPerConduit: 1 } });
  const trapezes = on!.points.flatMap(({ made }) => (made.trapeze === undefined ? [] : [made.trapeze]));
  // At 3, 13, 23 and where both come to their boxes, at 30.
  expect(trapezes).toHaveLength(4);
  for (const pounds of trapezes) expect(pounds).toBeCloseTo(1.9 + 2 * (0.3 + 1), 9);
});
