import { describe, expect, test } from 'vitest';
import { type Network, networkOf } from '../../../routing/network/network.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Point3, Raceway } from '../../../routing/site/site.ts';
import { oneRun, raceway } from './sites.ts';

const line = (id: string, ...path: Point3[]): Raceway => raceway(id, path);
const built = (raceways: Raceway[], tolerance = 0.25): Network => networkOf(raceways, tolerance);
const components = (raceways: Raceway[], tolerance?: number): number => built(raceways, tolerance).firstNode.length - 1;
const joined = (...raceways: Raceway[]): boolean => components(raceways) === 1;
const lengthBetween = (raceways: Raceway[], from: Point3, to: Point3): number | null =>
  runsOf(oneRun(raceways, from, to, { tapLimit: 0.01 })).runs[0]!.length;

const along = line('A', [0, 0, 11], [40, 0, 11]);

describe('an end or a vertex within the tolerance of another raceway touches it', () => {
  test('an end on it', () => expect(joined(along, line('B', [20, 0, 11], [20, 30, 11]))).toBe(true));
  test('an end a gap away, in any direction', () => {
    expect(joined(along, line('B', [20, 0.2, 11], [20, 30, 11]))).toBe(true);
    expect(joined(along, line('B', [20, 0, 11.2], [20, 0, 20]))).toBe(true);
    expect(joined(along, line('B', [40.15, 0.15, 11.1], [60, 5, 11]))).toBe(true);
  });
  test('at exactly the tolerance, not a hair past it', () => {
    expect(joined(along, line('B', [20, 0.25, 11], [20, 30, 11]))).toBe(true);
    expect(joined(along, line('B', [20, 0.2501, 11], [20, 30, 11]))).toBe(false);
    // 0.2 ft across and 0.2 up is 0.283 ft in space.
    expect(joined(along, line('B', [20, 0.2, 11.2], [20, 30, 11.2]))).toBe(false);
  });
  test('a vertex in the middle of it', () => {
    expect(joined(along, line('B', [20, 30, 11], [20, 0.1, 11], [25, 30, 11]))).toBe(true);
  });
  test('the gap counts at its true length', () => {
    const branch = line('B', [20, 0.2, 11], [20, 30, 11]);
    expect(lengthBetween([along, branch], [0, 0, 11], [20, 30, 11])).toBeCloseTo(20 + 0.2 + 29.8, 12);
    const run = runsOf(oneRun([along, branch], [0, 0, 11], [20, 30, 11], { tapLimit: 0.01 })).runs[0]!;
    expect(run.path).toEqual([
      [0, 0, 11],
      [20, 0, 11],
      [20, 0.2, 11],
      [20, 30, 11],
    ]);
    expect(run.legs).toEqual(['A', null, 'B']);
    expect([run.bends, run.raceways]).toEqual([1, ['A', 'B']]);
  });
  test('two ends that meet with a gap have one tie of its length', () => {
    const { weight, leg } = built([line('A', [0, 0, 11], [10, 0, 11]), line('B', [10.2, 0, 11], [20, 0, 11])]);
    const gaps = [...weight].filter((_, h) => leg[h]! < 0);
    expect(gaps).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.2, 12)]);
  });
  test('with a tolerance of 0 only what meets touches', () => {
    expect(components([along, line('B', [20, 0, 11], [20, 30, 11])], 0)).toBe(1);
    expect(components([along, line('B', [20, 0.01, 11], [20, 30, 11])], 0)).toBe(2);
  });
});

describe('raceways that cross in plan', () => {
  const across = (z: number): Raceway => line('B', [20, -10, z], [20, 10, z]);
  test('at the same elevation are joined at the crossing', () => {
    expect(lengthBetween([along, across(11)], [0, 0, 11], [20, 10, 11])).toBe(30);
  });
  test('within the tolerance are joined, the difference counted', () => {
    expect(lengthBetween([along, across(11.2)], [0, 0, 11], [20, 10, 11.2])).toBeCloseTo(30.2, 12);
    expect(joined(along, across(11.25))).toBe(true);
  });
  test('at different elevations do not touch', () => {
    expect(joined(along, across(11.26))).toBe(false);
    expect(joined(along, across(14))).toBe(false);
  });
  test('sloped ones are compared at the crossing', () => {
    const up = (from: number, to: number): Raceway => line('B', [20, -10, from], [20, 10, to]);
    expect(joined(along, up(1, 21))).toBe(true);
    expect(joined(along, up(11, 21))).toBe(false);
    // Where the crossing is a quarter of the way along it.
    const uneven = line('B', [20, -5, 10], [20, 15, 14]);
    expect(joined(along, uneven)).toBe(true);
    expect(lengthBetween([along, uneven], [0, 0, 11], [20, 15, 14])).toBeCloseTo(20 + 0.75 * Math.hypot(20, 4), 9);
  });
  test('more than two at one point are all joined', () => {
    const raceways = [along, across(11), line('C', [10, -10, 11], [30, 10, 11])];
    expect(lengthBetween(raceways, [20, 10, 11], [30, 10, 11])).toBeCloseTo(10 + Math.hypot(10, 10), 9);
    expect(built(raceways).nodes).toBe(7);
  });
});

describe('upright legs', () => {
  test('are joined to a raceway that they pass, though neither has a vertex there', () => {
    const riser = line('B', [20, 0, 0], [20, 0, 20]);
    expect(lengthBetween([along, riser], [0, 0, 11], [20, 0, 20])).toBe(29);
  });
  test('within the tolerance beside it too, but no farther', () => {
    expect(joined(along, line('B', [20, 0.2, 0], [20, 0.2, 20]))).toBe(true);
    expect(joined(along, line('B', [20, 0.3, 0], [20, 0.3, 20]))).toBe(false);
  });
  test('are not joined to one that passes over their end', () => {
    expect(joined(along, line('B', [20, 0, 0], [20, 0, 10]))).toBe(false);
  });
});

describe('raceways along one line', () => {
  test('that overlap are joined where either ends on the other', () => {
    const more = line('B', [30, 0, 11], [70, 0, 11]);
    expect(lengthBetween([along, more], [0, 0, 11], [70, 0, 11])).toBe(70);
    expect(runsOf(oneRun([along, more], [0, 0, 11], [70, 0, 11], { tapLimit: 0.01 })).runs[0]!.bends).toBe(0);
  });
  test('that are the same twice make one network of two raceways', () => {
    const twice = line('B', [0, 0, 11], [40, 0, 11]);
    expect(joined(along, twice)).toBe(true);
    expect(built([along, twice]).nodes).toBe(2);
  });
  test('one sloping through a level one is joined where they meet', () => {
    const slope = line('B', [0, 0, 1], [40, 0, 21]);
    expect(lengthBetween([along, slope], [0, 0, 11], [40, 0, 21])).toBeCloseTo(20 + Math.hypot(20, 10), 9);
  });
});

describe('a raceway that comes back to itself', () => {
  test('is joined where it crosses itself at one elevation', () => {
    const loop = line('A', [0, 0, 11], [40, 0, 11], [40, 20, 11], [20, 20, 11], [20, -10, 11]);
    expect(lengthBetween([loop], [0, 0, 11], [20, -10, 11])).toBe(30);
  });
  test('is not where it passes over itself', () => {
    const spiral = line('A', [0, 0, 11], [40, 0, 11], [40, 20, 11], [20, 20, 13], [20, -10, 13]);
    expect(lengthBetween([spiral], [0, 0, 11], [20, -10, 13])).toBeCloseTo(40 + 20 + Math.hypot(20, 2) + 30, 9);
  });
  test('is joined where it ends on itself: a ring is closed', () => {
    const ring = line('A', [0, 0, 11], [20, 0, 11], [20, 20, 11], [0, 20, 11], [0, 0.1, 11]);
    expect(lengthBetween([ring], [10, 0, 11], [0, 15, 11])).toBeCloseTo(10 + 0.1 + 14.9, 12);
  });
  test('a finely drawn curve is not cut short', () => {
    // A quarter circle of radius 1 in legs of 0.13 ft: each vertex is within the tolerance of the next but one.
    const arc = Array.from({ length: 13 }, (_, i): Point3 => {
      const a = (i * Math.PI) / 24;
      return [Math.sin(a), 1 - Math.cos(a), 11];
    });
    const curve = line('A', [-20, 0, 11], ...arc, [1, 30, 11]);
    const legs = 12 * 2 * Math.sin(Math.PI / 48);
    expect(lengthBetween([curve], [-20, 0, 11], [1, 30, 11])).toBeCloseTo(20 + legs + 29, 9);
  });
});

test('of two equally near legs of one raceway the first is touched, at whatever angle it is drawn', () => {
  // Legs 0.2 ft apart and an end midway: from 25 ft along the first leg it is 15 ft back to it.
  for (let degrees = 0; degrees < 360; degrees += 17) {
    const a = (degrees * Math.PI) / 180;
    const at = (x: number, y: number, z: number): Point3 => [
      Math.cos(a) * x - Math.sin(a) * y,
      Math.sin(a) * x + Math.cos(a) * y,
      z,
    ];
    const hairpin = line('A', at(0, 0, 11), at(30, 0, 11), at(30, 0.2, 11), at(0, 0.2, 11));
    const end = line('B', at(10, 0.1, 20), at(10, 0.1, 11.05));
    expect(lengthBetween([hairpin, end], at(25, 0, 11), at(10, 0.1, 20))).toBeCloseTo(
      15 + Math.hypot(0.1, 0.05) + 8.95,
      9,
    );
  }
});

test('a place passed in the middle of a leg is no point of the path, a vertex passed straight on is', () => {
  const main = line('A', [0, 0, 11], [25, 0, 11], [40, 0, 11]);
  const crossed = [main, line('B', [10, -5, 11], [10, 5, 11]), line('C', [30, 0, 11], [30, 5, 11])];
  const run = runsOf(oneRun(crossed, [0, 0, 11], [40, 0, 11])).runs[0]!;
  expect(run.path).toEqual(main.path);
  expect(run.legs).toEqual(['A', 'A']);
});

test('legs shorter than what lengths can be told apart by are walked in order', () => {
  const fine = Array.from({ length: 6 }, (_, i): Point3 => [90_000 + i * 5e-5, 0, 11]);
  expect(lengthBetween([line('A', [0, 0, 11], ...fine)], [0, 0, 11], fine.at(-1)!)).toBeCloseTo(90_000.00025, 6);
});

describe('odd raceways', () => {
  test('a loop smaller than four tolerances is not cut off', () => {
    const loop = line('A', [0, 0, 11], [5.2, 0, 11], [5.2, 0.2, 11], [5, 0.2, 11], [5, -9, 11]);
    expect(lengthBetween([loop], [0, 0, 11], [5, -9, 11])).toBeCloseTo(5.2 + 0.2 + 0.2 + 9.2, 9);
  });
  test('one whose points all coincide is a point that others touch', () => {
    expect(joined(along, line('B', [40, 0, 11], [40, 0, 11], [40, 0, 11]))).toBe(true);
    expect(built([line('B', [5, 5, 5], [5, 5, 5])]).nodes).toBe(1);
    expect(lengthBetween([line('B', [5, 5, 5], [5, 5, 5])], [5, 5, 5], [5, 5, 5])).toBe(0);
  });
  test('none at all make an empty network', () => {
    expect(built([]).nodes).toBe(0);
  });
  test('one of a single point is a programmer’s error, as is a tolerance below 0', () => {
    expect(() => built([line('A', [0, 0, 0])])).toThrow(RangeError);
    expect(() => built([along], -1)).toThrow(RangeError);
    expect(() => built([along], Number.NaN)).toThrow(RangeError);
  });
});

test('the network does not depend on the order of the list', () => {
  const raceways = [
    along,
    line('B', [20, -10, 11], [20, 10, 11]),
    line('C', [30, 0.1, 11], [30, 9, 11]),
    line('D', [80, 0, 11], [90, 0, 11]),
  ];
  expect(built(raceways.toReversed())).toEqual(built(raceways));
});

test('the network of the same list is built once', () => {
  const raceways = [along];
  expect(networkOf(raceways, 0.25)).toBe(networkOf(raceways, 0.25));
  expect(networkOf(raceways, 0.1)).not.toBe(networkOf(raceways, 0.25));
  expect(networkOf([...raceways], 0.25)).not.toBe(networkOf(raceways, 0.25));
});
