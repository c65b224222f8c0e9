import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import { first } from './runs-parts.ts';
import { box, charger, oneRun, panel, raceway, siteOf } from './sites.ts';

// Every length below is worked by hand from the coordinates, site file section 3.
describe('a run is tap + raceway + tap, measured in space', () => {
  test('along one level raceway, from a panel under it to a box beside it', () => {
    const run = first(
      oneRun(
        [
          raceway('R1', [
            [0, 0, 11],
            [100, 0, 11],
          ]),
        ],
        [0, 0, 6],
        [40, 3, 11],
      ),
    );
    expect(run.taps).toEqual({ equipment: 5, box: 3 });
    expect(run.length).toBe(5 + 40 + 3);
    expect(run.conductorLength).toBe(48 + 5 + 1);
    expect(run.path).toEqual([
      [0, 0, 6],
      [0, 0, 11],
      [40, 0, 11],
      [40, 3, 11],
    ]);
    expect(run.legs).toEqual([null, 'R1', null]);
    expect(run.raceways).toEqual(['R1']);
    expect([run.bends, run.bendDegrees]).toEqual([2, 180]);
  });
  test('upright legs count in full', () => {
    const risers = raceway('R1', [
      [0, 0, 6],
      [0, 0, 11],
      [20, 0, 11],
      [20, 0, 9],
    ]);
    const run = first(oneRun([risers], [0, 0, 6], [20, 0, 9]));
    expect(run.length).toBe(5 + 20 + 2);
    expect(run.taps).toEqual({ equipment: 0, box: 0 });
    expect(run.path).toEqual(risers.path);
    expect(run.legs).toEqual(['R1', 'R1', 'R1']);
  });
  test('so does the way under grade', () => {
    const under = raceway('R1', [
      [0, 0, 5],
      [0, 0, -2],
      [60, 0, -2],
      [60, 0, 9],
    ]);
    const run = first(oneRun([under], [0, 0, 5], [60, 0, 9]));
    expect(run.length).toBe(7 + 60 + 11);
    expect(run.bendDegrees).toBe(180);
  });
  test('a sloped raceway is measured along its slope', () => {
    const run = first(
      oneRun(
        [
          raceway('R1', [
            [0, 0, 10],
            [30, 0, 12.5],
            [30, 40, 12.5],
          ]),
        ],
        [0, 0, 10],
        [30, 40, 12.5],
      ),
    );
    expect(run.length).toBeCloseTo(Math.hypot(30, 2.5) + 40, 12);
  });
  test('a tap is straight in space, to the closest point', () => {
    // From (10, 3, 7) the closest of the x axis at 11 ft is (10, 0, 11): 3-4-5.
    const run = first(
      oneRun(
        [
          raceway('R1', [
            [0, 0, 11],
            [50, 0, 11],
          ]),
        ],
        [10, 3, 7],
        [30, 0, 11],
      ),
    );
    expect(run.taps!.equipment).toBe(5);
    expect(run.length).toBe(25);
  });
  test('the nearest raceway is the nearest in space, not in plan', () => {
    const over = raceway('R1', [
      [0, 0, 16],
      [50, 0, 16],
    ]);
    const beside = raceway('R2', [
      [0, 3, 11],
      [50, 3, 11],
    ]);
    const rise = raceway('R3', [
      [0, 0, 16],
      [0, 3, 11],
    ]);
    const run = first(oneRun([over, beside, rise], [0, 0, 16], [40, 0, 11]));
    expect(run.taps!.box).toBe(3);
    expect(run.raceways.at(-1)).toBe('R2');
  });
  test('points that repeat are passed over', () => {
    const again = raceway('R1', [
      [0, 0, 11],
      [0, 0, 11],
      [10, 0, 11],
      [10, 0, 11],
      [10, 0, 11],
      [10, 5, 11],
      [10, 5, 11],
    ]);
    const run = first(oneRun([again], [0, 0, 11], [10, 5, 11]));
    expect(run.path).toEqual([
      [0, 0, 11],
      [10, 0, 11],
      [10, 5, 11],
    ]);
    expect([run.length, run.bends]).toEqual([15, 1]);
  });
  test('a box at the entry has a run of no length and both its ends', () => {
    const run = first(
      oneRun(
        [
          raceway('R1', [
            [0, 0, 11],
            [9, 0, 11],
          ]),
        ],
        [4, 0, 11],
        [4, 0, 11],
      ),
    );
    expect(run.length).toBe(0);
    expect(run.path).toEqual([
      [4, 0, 11],
      [4, 0, 11],
    ]);
    expect(run.legs).toEqual([null]);
    expect(run.ok).toBe(true);
  });
});

describe('no run passes through equipment', () => {
  test('though a panel on both raceways would join them', () => {
    const site = siteOf({
      raceways: [
        raceway('R1', [
          [0, 0, 11],
          [20, 0, 11],
        ]),
        raceway('R2', [
          [24, 0, 11],
          [60, 0, 11],
        ]),
      ],
      equipment: [panel('P1', [0, 0, 11]), panel('P2', [22, 0, 11])],
      drops: [box('D1', [40, 0, 11])],
      chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D1', 'P2')],
    });
    const { runs } = runsOf(site);
    expect(runs.map(({ length }) => length)).toEqual([null, 18]);
  });
});

test('runs stand in the order of the chargers', () => {
  const site = siteOf({
    raceways: [
      raceway('R1', [
        [0, 0, 11],
        [90, 0, 11],
      ]),
    ],
    equipment: [panel('P1', [0, 0, 11])],
    drops: [box('D1', [10, 0, 11]), box('D2', [20, 0, 11]), box('D3', [30, 0, 11])],
    chargers: [
      charger('C9', 'D3', 'P1'),
      charger('C1', 'D1', 'P1'),
      charger('C5', 'D2', 'P1'),
      charger('C6', 'D2', 'P1'),
    ],
  });
  expect(runsOf(site).runs.map(({ charger: id, length }) => [id, length])).toEqual([
    ['C9', 30],
    ['C1', 10],
    ['C5', 20],
    ['C6', 20],
  ]);
});

test('a reference to what is not in the site is a programmer’s error', () => {
  const site = oneRun(
    [
      raceway('R1', [
        [0, 0, 11],
        [9, 0, 11],
      ]),
    ],
    [0, 0, 11],
    [9, 0, 11],
  );
  expect(() => runsOf({ ...site, drops: [] })).toThrow(RangeError);
  expect(() => runsOf({ ...site, equipment: [] })).toThrow(RangeError);
});
