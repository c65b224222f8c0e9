import { describe, expect, test } from 'vitest';
import { accessibleFindings } from '../../../routing/checks/access/accessible-findings.ts';
import { accessibleTable } from '../../../routing/checks/access/accessible-stalls.ts';
import { aisleBeside } from '../../../routing/checks/access/aisle-beside.ts';
import { sideReach } from '../../../routing/checks/access/clear-floor.ts';
import { guardFindings } from '../../../routing/checks/access/guard-findings.ts';
import { reachRangeFindings } from '../../../routing/checks/access/reach-range.ts';
import { ACCESS_STANDARDS } from '../../../routing/checks/access/standards.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { Aisle, SiteFile, Stall } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { SMALL_LOT } from '../../calc/checks/faults/small-lot.ts';

describe('how many accessible charging stalls', () => {
  // 89 FR 71215, proposed Table 249.3.1: 1 of 1; 2 of 2 to 25; 4 of 26 to 50; then one more for each 50 or part.
  test.each([
    [0, 0],
    [1, 1],
    [2, 2],
    [25, 2],
    [26, 4],
    [50, 4],
    [51, 5],
    [100, 5],
    [101, 6],
    [240, 8],
  ])('the US Access Board proposes for %i: %i', (total, asked) => {
    expect(ACCESS_STANDARDS['access-board'].asked(total).standard).toBe(asked);
  });

  // California Building Code Table 11B-228.3.2.1 as a public page has it.
  test.each([
    [1, [1, 0, 0]],
    [4, [1, 0, 0]],
    [5, [1, 1, 0]],
    [25, [1, 1, 0]],
    [26, [1, 1, 1]],
    [50, [1, 1, 1]],
    [51, [1, 2, 2]],
    [76, [1, 3, 3]],
    [100, [1, 3, 3]],
    [101, [2, 4, 4]],
    [160, [2, 4, 5]],
    [400, [2, 8, 9]],
    [401, [3, 9, 10]],
  ])('California asks for %i: van, standard, ambulatory %j', (total, asked) => {
    const { van, standard, ambulatory } = ACCESS_STANDARDS.california.asked(total);
    expect([van, standard, ambulatory]).toEqual(asked);
  });
});

const stall = (more: Partial<Stall> = {}): Stall => ({
  id: 'S1',
  at: [0, 0],
  width: 11,
  depth: 20,
  heading: 90,
  use: 'van-accessible',
  ...more,
});
const aisle = (minX: number, minY: number, maxX: number, maxY: number, kind: Aisle['kind'] = 'access'): Aisle => ({
  id: 'A1',
  kind,
  outline: [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ],
});

describe('the access aisle beside a stall', () => {
  test('is as wide as it is over the whole length of the stall', () => {
    expect(aisleBeside(stall(), [aisle(5.5, 0, 10.5, 20)])).toBeCloseTo(5, 6);
    expect(aisleBeside(stall(), [aisle(-10.5, -3, -5.5, 30)])).toBeCloseTo(5, 6);
    expect(aisleBeside(stall({ heading: 0, at: [0, 0] }), [aisle(0, 5.5, 20, 13.5)])).toBeCloseTo(8, 6);
  });

  test('one that ends short, lies off, is of another kind or narrows counts as it is', () => {
    expect(aisleBeside(stall(), [aisle(5.5, 0, 10.5, 15)])).toBe(0);
    expect(aisleBeside(stall(), [aisle(7, 0, 12, 20)])).toBe(0);
    expect(aisleBeside(stall(), [aisle(5.5, 0, 10.5, 20, 'drive')])).toBe(0);
    const narrowing: Aisle = {
      id: 'A1',
      kind: 'access',
      outline: [
        [5.5, 0],
        [10.5, 0],
        [10.5, 10],
        [8.5, 10],
        [8.5, 20],
        [5.5, 20],
      ],
    };
    expect(aisleBeside(stall(), [narrowing])).toBeCloseTo(3, 2);
  });
});

/** The small lot, its first stall changed, with more. */
const lot = (first: Partial<Stall>, more: Partial<SiteFile> = {}): SiteFile =>
  ({
    ...SMALL_LOT,
    stalls: SMALL_LOT.stalls.map((one, i) => (i === 0 ? { ...one, ...first } : one)),
    ...more,
  }) as SiteFile;
const told = (file: SiteFile) =>
  accessibleFindings(toSite(file)).map(({ severity, rule, limit }) => [severity, rule, limit]);

describe('accessible stalls with a charger', () => {
  test('too few fail by California, and are to be checked by the recommendations', () => {
    expect(told(lot({}, { rules: { accessibleBy: 'california' } }))).toEqual([['fail', 'accessible-count', 1]]);
    expect(told(lot({}, { rules: { accessibleBy: 'access-board' } }))).toEqual([['warn', 'accessible-count', 2]]);
    expect(told(lot({}))).toEqual([]);
  });

  test('their sizes are those of the ADA Standards unless the site chooses more', () => {
    const wide = { use: 'van-accessible', width: 11, at: [3.5, 18] } as const;
    const beside = { aisles: [aisle(-7, 0, -2, 18)] };
    expect(told(lot(wide, beside))).toEqual([]);
    expect(told(lot({ ...wide, width: 10 }, beside))).toContainEqual(['fail', 'accessible-size', 11]);
    expect(told(lot(wide))).toEqual([['warn', 'accessible-size', 5]]);
    expect(told(lot(wide, { ...beside, rules: { accessibleBy: 'california' } }))).toEqual([
      ['fail', 'accessible-size', 12],
    ]);
    expect(told(lot(wide, { ...beside, rules: { accessibleBy: 'access-board' } }))).toEqual([
      ['warn', 'accessible-count', 2],
      ['warn', 'accessible-size', 20],
    ]);
    // 502.2, exception: 96 in beside an aisle of 96 in.
    const narrow = { use: 'van-accessible', width: 8, at: [5, 18] } as const;
    expect(told(lot(narrow, { aisles: [aisle(-7, 0, 1, 18)] }))).toEqual([]);
  });

  test('a van stall that is left over serves a car; a stall without a charger counts for nothing', () => {
    const site = toSite(lot({ use: 'van-accessible' }));
    const given = (by: string) =>
      accessibleTable(site.stalls, site.aisles, site.chargers, 'none').counts.filter(({ standard }) => standard === by);
    expect(given('access-board').map(({ asked, given: own }) => [asked, own])).toEqual([[2, 1]]);
    expect(given('california').map(({ use, asked, given: own }) => [use, asked, own])).toEqual([
      ['van', 1, 1],
      ['standard', 0, 0],
    ]);
    const idle = accessibleTable(site.stalls, site.aisles, site.chargers.slice(1), 'none');
    expect(idle.stalls).toEqual([]);
  });
});

describe('reach from a wheelchair', () => {
  test('a floor space of 30 x 48 in beside it, 10 in off, or none', () => {
    const wall = (y: number) => rectangleAt([0, y], [40, 1], 0);
    expect(sideReach([0, 0], 0, 0, [])).toBe(0);
    // Between walls 29 in apart there is none, 31 in apart there is.
    expect(sideReach([0, 0], 0, 0, [wall(-1.7), wall(1.7)])).toBeNull();
    expect(sideReach([0, 0], 0, 0, [wall(-3.1), wall(0.5)])).toBe(0);
    // A counter 20 in deep is reached over.
    expect(sideReach([0, 0], 0, 0, [rectangleAt([0, 0], [40, 40 / 12], 0)])).toBeCloseTo(20 / 12, 1);
  });

  test('a connector at rest is in reach from 15 to 48 in; deeper in, to 46 in', () => {
    const apart = [
      { ...SMALL_LOT.stalls[0]!, use: 'accessible' },
      { ...SMALL_LOT.stalls[1]!, at: [40, 18] },
    ];
    const at = (restHeight: number, columns: SiteFile['columns'] = []) =>
      reachRangeFindings(
        toSite(
          lot({ use: 'accessible' }, {
            stalls: apart,
            columns,
            drops: SMALL_LOT.drops.map((drop) => ({ ...drop, restHeight })),
          } as Partial<SiteFile>),
        ),
      ).map(({ rule, limit }) => [rule, limit]);
    expect(at(4)).toEqual([]);
    expect(at(1.25)).toEqual([]);
    expect(at(4.1)).toEqual([['reach-range', 4]]);
    expect(at(1.2)).toEqual([['reach-range', 1.25]]);
    // Beside one car, with room to the right: a post of 2 ft is reached over by 1 ft.
    const post = { id: 'C1', at: [9, 9], size: [2, 2] } as const;
    expect(at(3.9, [post])).toEqual([['reach-range', 46 / 12]]);
    expect(at(3.8, [post])).toEqual([]);
    expect(at(3, [{ ...post, size: [10, 10] }])).toEqual([['clear-floor', undefined]]);
  });

  test('stalls that are not accessible are not looked at', () => {
    expect(
      reachRangeFindings(
        toSite(lot({}, { drops: SMALL_LOT.drops.map((drop) => ({ ...drop, restHeight: 6 })) } as Partial<SiteFile>)),
      ),
    ).toEqual([]);
  });
});

describe('pedestals and bollards', () => {
  const drops = SMALL_LOT.drops.map((drop, i) =>
    i === 0 ? { ...drop, mount: 'pedestal', box: [9, -1, 3], retractor: [9, -1, 3] } : drop,
  );
  const guards = (more: Partial<SiteFile>) =>
    guardFindings(toSite(lot({}, { drops, ...more } as Partial<SiteFile>))).map(({ severity, about }) => [
      severity,
      ...about,
    ]);
  const bollard = { id: 'BO1', at: [9, 1.5], size: [0.5, 0.5], height: 3.5 } as const;

  test('a pedestal that cars come to has a bollard, a low column, within 4 ft', () => {
    expect(guards({})).toEqual([['note', 'D1']]);
    expect(guards({ columns: [bollard] })).toEqual([]);
    expect(guards({ columns: [{ ...bollard, height: 12 }] })).toEqual([['note', 'D1']]);
    expect(guards({ columns: [{ ...bollard, at: [9, 4] }] })).toEqual([['note', 'D1']]);
  });

  test('neither stands in an access aisle', () => {
    expect(guards({ columns: [bollard], aisles: [aisle(7, 1, 12, 18)] })).toEqual([['fail', 'BO1', 'A1']]);
    expect(guards({ columns: [bollard], aisles: [aisle(7, -4, 12, 1)] })).toEqual([['fail', 'D1', 'A1']]);
  });
});
