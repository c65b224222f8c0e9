import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../../routing/checks/reach-findings.ts';
import { type DropWish, dropsForStalls } from '../../../../routing/propose/rows/drops-for-stalls.ts';
import { reachOf } from '../../../../routing/reach/reach.ts';
import { stallsInReach } from '../../../../routing/reach/stalls-in-reach.ts';
import type { Charger, Drop, Keepout, Raceway, SiteFile, Stall } from '../../../../routing/site/site.ts';
import { siteOf } from '../../reach/sites.ts';

const STALLS: Stall[] = Array.from({ length: 6 }, (_, i) => ({
  id: `S${i + 1}`,
  at: [9 * i + 4.5, 0],
  width: 9,
  depth: 18,
  heading: 90,
}));
const ALONG: Raceway = {
  id: 'R1',
  path: [
    [-5, 9, 6],
    [-5, 9, 11],
    [60, 9, 11],
  ],
  method: 'EMT',
  place: 'overhead',
};
const PANEL = { id: 'P1', kind: 'panelboard', at: [-5, 9], size: [2, 1, 6], entry: [-5, 9, 6] } as const;
const WISH: DropWish = { cord: 25, retractorBelow: 1, elevation: 11, from: 'P1' };
const ids = STALLS.map(({ id }) => id);

const lot = (more: Partial<SiteFile> = {}) =>
  siteOf({ stalls: STALLS, raceways: [ALONG], equipment: [PANEL], ...more });

/** The same places as drops with their chargers, for the reach stage to judge. */
function judged(site: ReturnType<typeof lot>, places: ReturnType<typeof dropsForStalls>, cord = 25) {
  const drops = places.map(
    ({ stall, box, retractor }): Drop => ({ id: `D ${stall}`, box, cord, ...(retractor && { retractor }) }),
  );
  const chargers = places.map(
    ({ stall }): Charger => ({
      id: `C ${stall}`,
      drop: `D ${stall}`,
      stalls: [stall],
      from: 'P1',
      amps: 32,
      volts: 208,
      phases: 1,
    }),
  );
  const hung = { ...site, drops, chargers };
  return { reach: reachOf(hung), findings: reachFindings(hung) };
}

describe('a drop for each of some stalls', () => {
  test('hangs over a stripe, on the raceway, over no vehicle, and covers its stall, by the reach stage itself', () => {
    const site = lot();
    const places = dropsForStalls(site, ids, WISH);
    expect(places.map(({ stall }) => stall)).toEqual(ids);
    for (const { box, tap } of places) {
      expect(box[0] % 9).toBeCloseTo(0);
      expect(box.slice(1)).toEqual([9, 11]);
      expect(tap).toBeCloseTo(0);
    }
    expect(new Set(places.map(({ box }) => box[0])).size).toBe(6);
    const { reach, findings } = judged(site, places);
    expect(reach.map(({ coverage }) => coverage)).toEqual(places.map(({ coverage }) => coverage));
    expect(reach.every(({ coverage }) => coverage === 1)).toBe(true);
    expect(findings.filter(({ severity, rule }) => severity === 'fail' || rule === 'over-vehicle')).toEqual([]);
  });

  test('without a raceway it hangs at the elevation asked for, where it covers best', () => {
    const [place] = dropsForStalls(lot({ raceways: [] }), ['S3'], { ...WISH, elevation: 10 });
    expect(place).toMatchObject({ stall: 'S3', coverage: 1, tap: null });
    expect(place!.box[2]).toBe(10);
    expect(place!.retractor![2]).toBe(9);
  });

  test('stays out of keep-outs that block drops', () => {
    const band: Keepout = {
      id: 'K',
      outline: [
        [-10, 8],
        [70, 8],
        [70, 10],
        [-10, 10],
      ],
      blocks: ['drop'],
    };
    const places = dropsForStalls(lot({ keepouts: [band] }), ids, WISH);
    expect(places).toHaveLength(6);
    for (const { box } of places) expect(box[1] <= 8 || box[1] >= 10).toBe(true);
  });

  test('takes no place that another box has', () => {
    const drops: Drop[] = [{ id: 'D0', box: [9, 9, 11], cord: 25 }];
    const [place] = dropsForStalls(lot({ drops }), ['S1'], WISH);
    expect(Math.hypot(place!.box[0] - 9, place!.box[1] - 9)).toBeGreaterThanOrEqual(1);
  });

  test('a cord too short for any place gives the best there is, and says how much it covers', () => {
    const [place] = dropsForStalls(lot(), ['S1'], { ...WISH, cord: 14 });
    expect(place!.coverage).toBeLessThan(1);
    expect(judged(lot(), [place!], 14).reach[0]!.coverage).toBe(place!.coverage);
  });

  test('a stall that is not on the site is a fault of the caller', () => {
    expect(() => dropsForStalls(lot(), ['none'], WISH)).toThrow(RangeError);
  });
});

describe('the stalls in reach of a drop', () => {
  const drop = { box: [27, 9, 11], retractor: [27, 9, 10], cord: 25 } as const;

  test('come best covered first, each as the reach stage has it', () => {
    const site = lot();
    const found = stallsInReach(site, drop);
    expect(found.length).toBeGreaterThan(2);
    for (let i = 1; i < found.length; i++) expect(found[i - 1]!.coverage).toBeGreaterThanOrEqual(found[i]!.coverage);
    const chargers: Charger[] = [{ id: 'C', drop: 'D', stalls: ids, from: 'P1', amps: 32, volts: 208, phases: 1 }];
    const reach = reachOf({ ...site, drops: [{ id: 'D', ...drop }], chargers });
    const coverage = new Map(reach.map((each) => [each.stall, each.coverage]));
    for (const each of found) expect(each.coverage).toBe(coverage.get(each.stall));
    const missed = ids.filter((id) => !found.some(({ stall }) => stall === id));
    for (const id of missed) expect(coverage.get(id)).toBe(0);
  });

  test('are none where the cord does not come down', () => {
    expect(stallsInReach(lot(), { ...drop, cord: 2 })).toEqual([]);
  });
});
