import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import { first } from './runs-parts.ts';
import { box, charger, oneRun, panel, raceway, siteOf } from './sites.ts';

describe('taps', () => {
  const long = raceway('R1', [
    [0, 0, 11],
    [100, 0, 11],
  ]);
  test('equipment and box may be tapped on one leg, either way along it', () => {
    expect(first(oneRun([long], [60, 0, 9], [20, 1, 11])).length).toBe(2 + 40 + 1);
    expect(first(oneRun([long], [20, 0, 9], [60, 1, 11])).length).toBe(2 + 40 + 1);
  });
  test('a box is come to from whichever end is shorter', () => {
    // A square ring of 40 ft sides: the box is 30 ft along the far side, so 40 + 30 one way and 40 + 40 + 10 the other.
    const ring = raceway('R1', [
      [0, 0, 11],
      [40, 0, 11],
      [40, 40, 11],
      [0, 40, 11],
      [0, 0, 11],
    ]);
    expect(first(oneRun([ring], [0, 0, 11], [30, 40, 11])).length).toBe(70);
    expect(first(oneRun([ring], [0, 0, 11], [40, 30, 11])).length).toBe(70);
  });
  test('equipment is tapped to every raceway in its reach, and each run takes the best of its taps', () => {
    const west = raceway('R1', [
      [-40, 0, 11],
      [-1, 0, 11],
    ]);
    const east = raceway('R2', [
      [1, 0, 11],
      [40, 0, 11],
    ]);
    const site = siteOf({
      raceways: [west, east],
      equipment: [panel('P1', [0, 0, 11])],
      drops: [box('D1', [-20, 0, 11]), box('D2', [25, 0, 11])],
      chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D2', 'P1')],
    });
    expect(runsOf(site).runs.map(({ length }) => length)).toEqual([20, 25]);
  });
  test('a longer tap is used where the way from it is shorter', () => {
    // Tapped 0 ft from R1, but by R1 it is 60 ft round; 5 ft up to R2 and 10 along it is less.
    const round = raceway('R1', [
      [0, 0, 6],
      [0, 30, 6],
      [10, 30, 6],
      [10, 0, 11],
    ]);
    const straight = raceway('R2', [
      [0, 0, 11],
      [10, 0, 11],
    ]);
    const run = first(oneRun([round, straight], [0, 0, 6], [10, 0, 11]));
    expect(run.length).toBe(15);
    expect(run.raceways).toEqual(['R2']);
  });
  test('one at exactly the limit is within it, a hair farther is not', () => {
    const at = (z: number) => first(oneRun([long], [0, 0, z], [50, 0, 11])).length;
    expect(at(5)).toBe(56);
    expect(at(4.999)).toBeNull();
  });
  test('a box goes to the nearest raceway of those connected, passing over a nearer loose one', () => {
    const loose = raceway('R2', [
      [0, 4, 11],
      [100, 4, 11],
    ]);
    const run = first(oneRun([long, loose], [0, -1, 11], [50, 3, 11], { tapLimit: 4 }));
    expect(run.taps).toEqual({ equipment: 1, box: 3 });
    expect(run.raceways).toEqual(['R1']);
  });
  test('of equally near raceways the box takes the one whose id comes first, whatever the order of the file', () => {
    const a = raceway('A', [
      [0, 0, 11],
      [50, 0, 11],
    ]);
    const b = raceway('B', [
      [0, 0, 11],
      [0, 6, 11],
      [50, 6, 11],
    ]);
    for (const raceways of [
      [a, b],
      [b, a],
    ]) {
      const run = first(oneRun(raceways, [0, 0, 11], [40, 3, 11]));
      expect(run.raceways).toEqual(['A']);
      expect(run.length).toBe(43);
    }
  });
  test('of equally near points of one raceway the first along it is tapped', () => {
    const hairpin = raceway('R1', [
      [0, 0, 11],
      [50, 0, 11],
      [50, 6, 11],
      [0, 6, 11],
    ]);
    expect(first(oneRun([hairpin], [0, 0, 11], [40, 3, 11])).length).toBe(43);
  });
});
