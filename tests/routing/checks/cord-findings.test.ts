import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import { reachOf } from '../../../routing/reach/reach.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Drop, Point2, Point3, SiteFile } from '../../../routing/site/site.ts';
import { CAR, charger, drop, inlet, siteOf, stall } from '../reach/sites.ts';
import { found, lot, only } from './reach-findings-of.ts';

describe('a short cord', () => {
  // Nose-in, one inlet at the rear bumper, 15 ft from the leading bumper at y = 16: at (0, 1, 2.5). From the drop 2 ft
  // behind the head in the middle: sqrt(13) + 15 + 3 = 21.606 ft in plan, 22.870 ft with 7.5 ft of fall.
  const headEnd = (cord: number, more: Partial<SiteFile> = {}): Partial<SiteFile> => ({
    vehicles: { car: { ...CAR, inlets: [inlet('tail', 'rear', 1)] } },
    stalls: [stall('S1', [0, 0], { parking: 'nose-in' })],
    drops: [drop('D1', [0, 18, 10], { cord })],
    ...more,
  });
  const needed = Math.hypot(Math.hypot(2, 3) + 18, 7.5);

  test('names car, direction, inlet and by how much, and the whole feet of cord that would reach', () => {
    const finding = only(found('reach', headEnd(22)));
    expect(finding).toMatchObject({ severity: 'fail', about: ['C1', 'D1', 'S1'], limit: 20, unit: 'ft' });
    expect(finding.value).toBeCloseTo(needed, 12);
    expect(finding.says).toContain('inlet tail of a car parked nose-in');
    expect(finding.says).toContain(`22' 10 7/16", 2' 10 7/16" more than the 20' 0" there is`);
    expect(finding.says).toContain(`A cord of 25' 0" would reach; or`);
  });

  test('says where the cord that would reach is past the limit', () => {
    const finding = only(found('reach', headEnd(22, { rules: { cordSlack: 3 } })));
    expect(finding.says).toContain(`A cord of 26' 0" would reach, past the 25' 0" limit`);
  });

  // Beside the car at x = -3 or 3 it is 2 + 15 + 3 ft in plan, 21.36 ft in all.
  test('says which straight move would cure it, and that move does: the next inch less does not', () => {
    const finding = only(found('reach', headEnd(23.5)));
    const move = /move the drop (\d+)' (\d+)" to the (left|right), facing the head/.exec(finding.says);
    expect(move).not.toBeNull();
    const feet = Number(move![1]) + Number(move![2]) / 12;
    const sign = move![3] === 'left' ? -1 : 1;
    const at = (by: number): Finding[] =>
      found('reach', headEnd(23.5, { drops: [drop('D1', [sign * by, 18, 10], { cord: 23.5 })] }));
    expect(at(feet)).toEqual([]);
    expect(at(feet - 1 / 12)).toHaveLength(1);
    expect(feet).toBeLessThan(3);
  });

  test('moves the retractor alone where that is enough, its box staying', () => {
    const drops: Drop[] = [drop('D1', [-4, 18, 10], { retractor: [0, 18, 10], cord: 26 })];
    const finding = only(found('reach', headEnd(26, { drops })));
    expect(finding.says).toMatch(/move the retractor \d+' \d+" to the left, facing the head\.$/);
  });

  test('has no cure by a move that would hang the drop over a vehicle, or in a keep-out', () => {
    // 12 ft reach an inlet in the middle of the side, 7.5 ft down, from over the car, but not from the head, nor from
    // beside the head, nor from the tail.
    const side = headEnd(14, { vehicles: { car: { ...CAR, inlets: [inlet('side', 'left', 0.5)] } } });
    expect(only(found('reach', side)).says).toContain('no straight move of the drop would cure it');
    expect(found('reach', { ...side, drops: [drop('D1', [0, 12, 10], { cord: 14 })] })).toEqual([]);
    const everywhere: Point2[] = [
      [-50, -50],
      [50, -50],
      [50, 50],
      [-50, 50],
    ];
    const keepouts = [{ id: 'N1', outline: everywhere, from: 5, blocks: ['drop' as const] }];
    expect(only(found('reach', headEnd(23.5, { keepouts }))).says).toContain('no straight move');
  });

  test('is no failure where the rule asks for less than is covered, but a note says so', () => {
    // Of ten cases the back-in front inlet alone is short.
    const partly = { drops: [drop('D1', [0, 18, 10], { cord: 24 })], rules: { coverage: 0.8 } };
    const finding = only(found('reach', partly));
    expect(finding.severity).toBe('note');
    expect(finding.says).toContain('covers 90% of the cases in S1');
    expect(only(found('reach', { ...partly, rules: { coverage: 0.95 } })).severity).toBe('fail');
  });

  test('speaks metres on a metric site', () => {
    const site = { ...siteOf(lot(headEnd(23.5))), units: 'm' as const };
    const { says } = reachFindings(site).find(({ rule }) => rule === 'reach')!;
    expect(says).toContain('A cord of 7.60 m would reach; or move the drop 0.70 m to the left');
    expect(says).not.toContain("'");
  });

  test('every move and cord that is offered cures, on random lots', () => {
    let offered = 0;
    fc.assert(
      fc.property(
        fc.tuple(
          fc.integer({ min: -40, max: 40 }),
          fc.integer({ min: -20, max: 100 }),
          fc.integer({ min: 14, max: 24 }),
        ),
        fc.integer({ min: 0, max: 11 }),
        ([x, y, cord], turn) => {
          const file = lot({
            stalls: [stall('S1', [0, 0], { heading: 30 * turn }), stall('S2', [40, 40])],
            drops: [drop('D1', [x / 4, y / 4, 10], { cord })],
          });
          const finding = reachFindings(siteOf(file)).find(({ rule }) => rule === 'reach');
          if (!finding) return;
          const longer = Number(/A cord of (\d+)' 0" would reach/.exec(finding.says)![1]);
          expect(found('reach', { ...file, drops: [{ ...file.drops![0]!, cord: longer }] })).toEqual([]);
          const move = /move the drop (\d+)' (\d+)" (toward the aisle|toward the head|to the left|to the right)/.exec(
            finding.says,
          );
          if (!move) return;
          offered++;
          const by = Number(move[1]) + Number(move[2]) / 12;
          const [c, s] = [Math.cos((turn * Math.PI) / 6), Math.sin((turn * Math.PI) / 6)];
          const way = { 'toward the aisle': [-c, -s], 'toward the head': [c, s], 'to the left': [-s, c] }[move[3]!] ?? [
            s,
            -c,
          ];
          const box: Point3 = [x / 4 + by * way[0]!, y / 4 + by * way[1]!, 10];
          expect(found('reach', { ...file, drops: [{ ...file.drops![0]!, box }] })).toEqual([]);
        },
      ),
      { numRuns: 400 },
    );
    expect(offered).toBeGreaterThan(20);
  });
});

describe('a cord through a keep-out that blocks cords', () => {
  // From (4.5, 9) past the car's side at x = 3: the strip between them from y = 2 to 3 is on the way to the rear.
  const outline: Point2[] = [
    [3, 2],
    [5, 2],
    [5, 3],
    [3, 3],
  ];
  const keepouts = (more: object = {}) => [{ id: 'N1', outline, blocks: ['cord' as const], ...more }];

  test('fails, naming charger, keep-out and stall', () => {
    const finding = only(found('keepout-crossed', { keepouts: keepouts() }));
    expect(finding).toMatchObject({ severity: 'fail', about: ['C1', 'N1', 'D1', 'S1'] });
  });

  test('passes above or below it, or where cords may go', () => {
    expect(found('keepout-crossed', { keepouts: keepouts({ from: 11 }) })).toEqual([]);
    expect(found('keepout-crossed', { keepouts: keepouts({ to: 2 }) })).toEqual([]);
    expect(found('keepout-crossed', { keepouts: keepouts({ blocks: ['equipment'] }) })).toEqual([]);
  });
});

describe('a slack cord over an aisle', () => {
  const aisle = (y0: number, y1: number) => ({
    id: 'A1',
    outline: [
      [-50, y0],
      [50, y0],
      [50, y1],
      [-50, y1],
    ] as Point2[],
  });

  // The drop stands across the aisle from the stall, 12 ft from the tail of the car at y = 1; the car is nosed in with its
  // inlet in the middle of the tail, so the cord runs straight along x = 0, taut but for 3.3 ft.
  const across = (more: Partial<SiteFile> = {}): Partial<SiteFile> => ({
    vehicles: { car: { ...CAR, inlets: [inlet('tail', 'rear', 1)] } },
    stalls: [stall('S1', [0, 0], { parking: 'nose-in' })],
    drops: [drop('D1', [0, -11, 14], { cord: 22 })],
    ...more,
  });

  test('is a warning with the length that hangs under the walk headroom', () => {
    const finding = only(found('low-cord', across({ aisles: [aisle(-24, 0)] })));
    expect(finding).toMatchObject({ severity: 'warn', about: ['C1', 'A1', 'D1', 'S1'] });
    const { strip } = reachOf(siteOf(lot(across())))[0]!.worst.hang!;
    expect(strip?.to).toEqual([0, 1]);
    expect(finding.value).toBeCloseTo(strip!.length - 1, 9);
  });

  test('is none along a vehicle, where a tail stands out of its stall', () => {
    // The cord from beside the car goes round the tail, 1 ft out in the aisle.
    const stalls = [stall('S1', [0, 0], { parking: 'nose-in' })];
    const vehicles = { car: { ...CAR, length: 17, inlets: [inlet('tail', 'rear', 1)] } };
    const { worst } = reachOf(siteOf(lot({ stalls, vehicles })))[0]!;
    expect(worst.path.at(-2)).toEqual([3, -1]);
    expect(found('low-cord', { stalls, vehicles, aisles: [aisle(-24, -0.9)] })).toEqual([]);
  });

  test('is none where the aisle is out of its way', () => {
    expect(found('low-cord', across({ aisles: [aisle(2, 24)] }))).toEqual([]);
    // Less than a foot of it.
    expect(found('low-cord', across({ aisles: [aisle(-0.5, 0.25)] }))).toEqual([]);
  });
});

describe('stalls and chargers without one another', () => {
  test('are one note each', () => {
    const stalls = [stall('S1', [0, 0]), stall('S2', [9, 0]), stall('S3', [18, 0])];
    expect(only(found('unserved', { stalls }))).toMatchObject({ severity: 'note', about: ['S2', 'S3'], value: 2 });
    const idle = found('unserved', { chargers: [charger('C1', 'D1', ['S1']), charger('C2', 'D1', [])] });
    expect(only(idle)).toMatchObject({ severity: 'note', about: ['C2'] });
  });

  test('are not spoken of on a site that has no chargers yet', () => {
    expect(found('unserved', { chargers: [] })).toEqual([]);
  });
});
