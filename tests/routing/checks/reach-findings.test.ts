import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import { reachOf } from '../../../routing/reach/reach.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { AisleKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Drop, Point2, Point3, SiteFile } from '../../../routing/site/site.ts';
import { CAR, charger, drop, inlet, siteOf, stall } from '../reach/sites.ts';

const lot = (more: Partial<SiteFile> = {}): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'test',
  vehicles: { car: CAR },
  stalls: [stall('S1', [0, 0])],
  drops: [drop('D1', [4.5, 9, 11])],
  chargers: [charger('C1', 'D1', ['S1'])],
  ...more,
});

const found = (rule: string, more: Partial<SiteFile> = {}): Finding[] =>
  reachFindings(siteOf(lot(more))).filter((finding) => finding.rule === rule);

const only = (findings: readonly Finding[]): Finding => {
  expect(findings).toHaveLength(1);
  return findings[0]!;
};

test('a sound layout has no findings', () => {
  expect(reachFindings(siteOf(lot()))).toEqual([]);
});

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

describe('a drop by itself', () => {
  test('with more cord than the limit fails by the rule of the site, and the cure is the listing', () => {
    const finding = only(found('cord-limit', { drops: [drop('D1', [4.5, 9, 11], { cord: 28 })] }));
    expect(finding).toMatchObject({ severity: 'fail', value: 28, limit: 25, unit: 'ft', about: ['D1'] });
    expect(finding.source).toBe('site rule "longest cord"');
    expect(finding.says).toContain('cable management');
    expect(found('cord-limit', { drops: [drop('D1', [4.5, 9, 11], { cord: 28 })], rules: { cordLimit: 30 } })).toEqual(
      [],
    );
  });

  test('rests its connector from 24 to 48 in: lower fails, higher is a warning', () => {
    const at = (restHeight: number) => found('rest-height', { drops: [drop('D1', [4.5, 9, 11], { restHeight })] });
    expect(at(2)).toEqual([]);
    expect(at(4)).toEqual([]);
    expect(only(at(1.5))).toMatchObject({ severity: 'fail', value: 1.5, limit: 2 });
    expect(only(at(1.5)).source).toBe('site rule "lowest rest of a connector"');
    expect(only(at(4.25))).toMatchObject({ severity: 'warn', value: 4.25, limit: 4 });
  });

  test('over a parked vehicle is named with it; lower than its roof it fails', () => {
    const over = only(found('over-vehicle', { drops: [drop('D1', [0, 9, 10])] }));
    expect(over).toMatchObject({ severity: 'warn', about: ['D1', 'S1'], value: 5 });
    expect(over.says).toContain(`5' 0" above its roof`);
    expect(only(found('over-vehicle', { drops: [drop('D1', [0, 9, 4], { mount: 'pedestal' })] })).severity).toBe(
      'fail',
    );
    // The box alone is over it: what matters is where the cord hangs from.
    const beside = drop('D1', [0, 9, 11], { retractor: [4.5, 9, 10] });
    expect(found('over-vehicle', { drops: [beside] })).toEqual([]);
  });

  test('in a keep-out that blocks drops fails, within its elevations', () => {
    const outline: Point2[] = [
      [4, 8],
      [5, 8],
      [5, 10],
      [4, 10],
    ];
    const keepout = (more: object) => ({ keepouts: [{ id: 'N1', outline, blocks: ['drop' as const], ...more }] });
    expect(only(found('keepout-crossed', keepout({}))).about).toEqual(['D1', 'N1']);
    expect(found('keepout-crossed', keepout({ to: 10.5 }))).toEqual([]);
    expect(found('keepout-crossed', keepout({ blocks: ['raceway'] }))).toEqual([]);
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

describe('headroom', () => {
  const aisles = [
    {
      id: 'A1',
      outline: [
        [-50, -24],
        [50, -24],
        [50, 0],
        [-50, 0],
      ] as Point2[],
    },
  ];
  const over = (y: number, z: number): Drop[] => [drop('D1', [4.4, y, z], { cord: 60 })];

  test('of a box over an aisle is 13 ft 6 in, over a stall 7 ft, over a van stall 98 in', () => {
    expect(only(found('clear-height', { aisles, drops: over(-1, 11) }))).toMatchObject({
      severity: 'warn',
      about: ['D1', 'A1'],
      value: 11,
      limit: 13.5,
    });
    expect(found('clear-height', { aisles, drops: over(-1, 13.5) })).toEqual([]);
    expect(found('clear-height', { drops: over(9, 7.5) })).toEqual([]);
    expect(only(found('clear-height', { drops: over(9, 6.5) }))).toMatchObject({ severity: 'warn', limit: 7 });
    const stalls = [stall('S1', [0, 0], { use: 'van-accessible' })];
    expect(only(found('clear-height', { stalls, drops: over(9, 8) }))).toMatchObject({ severity: 'fail', limit: 8.17 });
  });

  test('over an access aisle is 98 in, of a raceway and of a box; over a walk 80 in; over a fire lane 13 ft 6 in', () => {
    const beside = (kind: AisleKind) => [{ ...aisles[0]!, kind }];
    const run = (z: number) =>
      raceway([
        [-20, -3, z],
        [20, -3, z],
      ]);
    // Raceway at 8 ft 0 in beside a van stall: 2 in under the 98 in of the standard; at 9 ft it is clear.
    const low = only(found('clear-height', { aisles: beside('access'), ...run(8) }));
    expect(low).toMatchObject({ severity: 'fail', about: ['R1', 'A1'], value: 8, limit: 8.17 });
    expect(low.says).toContain('over access aisle A1');
    expect(low.source).toContain('502.5');
    expect(found('clear-height', { aisles: beside('access'), ...run(9) })).toEqual([]);
    expect(only(found('clear-height', { aisles: beside('access'), drops: over(-1, 8) })).severity).toBe('fail');
    expect(found('clear-height', { aisles: beside('access'), drops: over(-1, 9) })).toEqual([]);

    expect(only(found('clear-height', { aisles: beside('walk'), ...run(6.5) }))).toMatchObject({
      severity: 'fail',
      limit: 6.67,
    });
    expect(found('clear-height', { aisles: beside('walk'), ...run(7) })).toEqual([]);
    expect(only(found('clear-height', { aisles: beside('fire'), ...run(13) }))).toMatchObject({
      severity: 'fail',
      limit: 13.5,
    });
    // Without a word an aisle is for driving, and 13 ft 6 in is asked about as before.
    expect(only(found('clear-height', { aisles, ...run(9) }))).toMatchObject({ severity: 'warn', limit: 13.5 });
  });

  test('is not asked of a pedestal or a wall', () => {
    expect(found('clear-height', { drops: [drop('D1', [4.4, 9, 4], { mount: 'pedestal' })] })).toEqual([]);
  });

  test('of the retractor counts as much as that of the box', () => {
    const drops = [drop('D1', [4.4, 9, 11], { retractor: [4.4, 9, 6] })];
    expect(only(found('clear-height', { drops })).says).toContain('retractor of D1');
  });

  const raceway = (path: Point3[], place: 'overhead' | 'surface' | 'underground' = 'overhead') => ({
    raceways: [{ id: 'R1', path, method: 'EMT' as const, place }],
  });

  test('of a raceway is that of its lowest part over the aisle, sloping or not', () => {
    const across: Point3[] = [
      [0, -30, 20],
      [0, 10, 10],
    ];
    // At y = 0 it is down to 12.5 ft; it leaves the aisle there.
    expect(only(found('clear-height', { aisles, ...raceway(across) }))).toMatchObject({
      about: ['R1', 'A1'],
      value: 12.5,
    });
    expect(found('clear-height', { aisles, ...raceway(across, 'surface') })).toEqual([]);
    expect(found('clear-height', raceway(across))).toEqual([]);
  });

  test('is not asked of a riser, nor along the edge of an aisle', () => {
    const riser: Point3[] = [
      [0, -5, 20],
      [0, -5, 0],
    ];
    expect(found('clear-height', { aisles, ...raceway(riser) })).toEqual([]);
    const edge: Point3[] = [
      [-20, 0, 11],
      [20, 0, 11],
    ];
    expect(found('clear-height', { aisles, ...raceway(edge) })).toEqual([]);
  });

  test('of a raceway over several stalls is one finding that names them all', () => {
    const stalls = [0, 1, 2].map((i) => stall(`S${i}`, [9 * i, 0]));
    const low: Point3[] = [
      [-10, 17, 6.5],
      [40, 17, 6.5],
    ];
    const finding = only(found('clear-height', { stalls, ...raceway(low), chargers: [charger('C1', 'D1', ['S0'])] }));
    expect(finding.about).toEqual(['R1', 'S0', 'S1', 'S2']);
  });
});

describe('drops together', () => {
  test('whose boxes are in one place fail, half a foot apart they do not, nor one above the other', () => {
    const at = (box: Point3) => found('boxes-coincide', { drops: [drop('D1', [4.5, 9, 11]), drop('D2', box)] });
    expect(only(at([4.5, 9.25, 11]))).toMatchObject({ severity: 'fail', about: ['D2', 'D1'], value: 0.25 });
    expect(at([4.5, 9.5, 11])).toEqual([]);
    expect(at([4.5, 9, 12])).toEqual([]);
  });

  test('are told by the first of each place as one of many is dragged about, as from nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(59), fc.nat(40), fc.nat(3)), { maxLength: 50 }), (moves) => {
        let drops = Array.from({ length: 60 }, (_, i) => drop(`D${i}`, [(i % 40) / 4, 20, 11]));
        for (const [i, x, y] of moves) {
          drops = drops.map((one, k) => (k === i ? drop(one.id, [x / 4, 20 + y / 4, 11]) : one));
          const pairs = found('boxes-coincide', { drops, chargers: [] }).map(({ about }) => about.join(' '));
          const first = drops.map((b, k) =>
            drops.slice(0, k).findIndex((a) => Math.hypot(a.box[0] - b.box[0], a.box[1] - b.box[1]) < 0.5),
          );
          const expected = drops.flatMap((a, k) => {
            const others = drops.filter((_, i) => first[i] === k).map(({ id }) => id);
            return others.length === 0 ? [] : [[...others, a.id].join(' ')];
          });
          expect(pairs).toEqual(expected);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('that hold fewer cords than hang from them are a warning', () => {
    const chargers = [charger('C1', 'D1', ['S1']), charger('C2', 'D1', ['S1'])];
    expect(only(found('cords-per-drop', { chargers }))).toMatchObject({
      severity: 'warn',
      about: ['D1', 'C1', 'C2'],
      value: 2,
      limit: 1,
    });
    expect(found('cords-per-drop', { chargers, drops: [drop('D1', [4.5, 9, 11], { holds: 2 })] })).toEqual([]);
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
