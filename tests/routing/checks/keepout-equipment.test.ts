import { describe, expect, test } from 'vitest';
import { keepoutFindings } from '../../../routing/checks/keepout-findings.ts';
import type { Keepout, Point2 } from '../../../routing/site/site.ts';
import { box, charger, panel, raceway, siteOf } from '../network/sites.ts';
import { found, keepout } from './keepout-parts.ts';

describe('the taps of runs', () => {
  const site = (keepouts: Keepout[]) =>
    siteOf({
      keepouts,
      raceways: [
        raceway('R1', [
          [0, 0, 11],
          [60, 0, 11],
        ]),
      ],
      equipment: [panel('P1', [0, 0, 6])],
      drops: [box('D1', [40, 4, 11]), box('D2', [50, 4, 11])],
      chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D1', 'P1'), charger('C3', 'D2', 'P1')],
    });
  const around = (x: number, y: number): Point2[] => [
    [x - 1, y - 1],
    [x + 1, y - 1],
    [x + 1, y + 1],
    [x - 1, y + 1],
  ];
  test('to a box are told once for each drop', () => {
    expect(keepoutFindings(site([keepout({ outline: around(40, 2) })]))).toMatchObject([
      { about: ['D1', 'K1'], value: 2 },
    ]);
  });
  test('from equipment are told once', () => {
    expect(keepoutFindings(site([keepout({ outline: around(0, 0), from: 7, to: 9 })]))).toMatchObject([
      { about: ['P1', 'K1'], value: expect.closeTo(2, 9) },
    ]);
  });
});

describe('equipment in a keep-out that blocks equipment', () => {
  const at = (x: number, more: Partial<Keepout> = {}, rotation = 0) =>
    found({
      equipment: [panel('P1', [x, 0, 6], { rotation })],
      keepouts: [keepout({ blocks: ['equipment'], ...more })],
    }).map(({ rule, about }) => [rule, about]);
  const told = [['keepout-crossed', ['P1', 'K1']]];
  test('is told where its footprint overlaps, not where it touches', () => {
    expect(at(15)).toEqual(told);
    expect(at(9)).toEqual(told);
    expect(at(8.5)).toEqual([]);
    expect(at(8)).toEqual([]);
  });
  test('is turned with the equipment', () => {
    // 3 ft wide and 1 ft deep: turned a quarter it reaches half a foot to the right.
    expect(at(9.4, {}, 90)).toEqual([]);
    expect(at(9.6, {}, 90)).toEqual(told);
  });
  test('reaches from grade to its height', () => {
    expect(at(15, { from: 6 })).toEqual([]);
    expect(at(15, { from: 5 })).toEqual(told);
    expect(at(15, { to: 0 })).toEqual([]);
  });
  test('is told where it stands all round or all within', () => {
    expect(
      at(15, {
        outline: [
          [14.9, -0.1],
          [15.1, -0.1],
          [15.1, 0.1],
          [14.9, 0.1],
        ],
      }),
    ).toEqual(told);
    expect(
      at(15, {
        outline: [
          [13.5, -0.5],
          [16.5, -0.5],
          [16.5, 0.5],
          [13.5, 0.5],
        ],
      }),
    ).toEqual(told);
  });
});
