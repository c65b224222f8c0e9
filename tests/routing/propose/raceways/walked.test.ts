import { expect, test } from 'vitest';
import { mixed } from '../../../../routing/propose/raceways/mixed.ts';
import type { ProposedRaceway, RacewaysProposal } from '../../../../routing/propose/raceways/raceway-make.ts';
import { besideStanding } from '../../../../routing/propose/raceways/walked.ts';
import type { Point3 } from '../../../../routing/site/site.ts';

const from: Point3 = [0, 0, 11];
const to: Point3 = [20, 0, 11];

test.each([
  [
    'all of it',
    [
      [-1, 0, 11],
      [30, 0, 11],
    ],
    [],
  ],
  [
    'its beginning',
    [
      [-5, 0, 11],
      [8, 0, 11],
    ],
    [[8, 20]],
  ],
  [
    'its end, drawn the other way',
    [
      [25, 0, 11],
      [12, 0, 11],
    ],
    [[0, 12]],
  ],
  [
    'its middle',
    [
      [5, 0, 11],
      [9, 0, 11],
    ],
    [
      [0, 5],
      [9, 20],
    ],
  ],
  [
    'a place where another crosses it',
    [
      [10, -5, 11],
      [10, 5, 11],
    ],
    [[0, 20]],
  ],
  [
    'a place where another goes on',
    [
      [20, 0, 11],
      [30, 0, 11],
    ],
    [[0, 20]],
  ],
  [
    'nothing: the other one is beside it',
    [
      [0, 1, 11],
      [20, 1, 11],
    ],
    [[0, 20]],
  ],
] as const)('what lies on a raceway that is there is not laid again: %s', (_, path, left) => {
  const parts = besideStanding([[from, to, 'held']], [path as unknown as Point3[]]);
  expect(parts.map(([[a], [b]]) => [a, b])).toEqual(left);
  for (const [, , rest] of parts) expect(rest).toBe('held');
});

const NOTHING: RacewaysProposal = {
  raceways: [],
  stringers: [],
  inAir: [],
  cost: 0,
  bound: 0,
  routed: [],
  paid: [],
  isSteady: true,
  without: [],
};
const raceway = (of: string, ...path: Point3[]): ProposedRaceway => ({ of, path, method: 'EMT', place: 'overhead' });
const FOOT: Point3 = [0, 0, 6];
const CORNER: Point3 = [0, 0, 11];

test('a leg that both proposals laid, each for another panel, is in what is put together of them once', () => {
  const own = [raceway('P1', [-9, 0, 11], CORNER, FOOT), raceway('P2', CORNER, [9, 0, 11])];
  const other = [raceway('P1', [-9, 0, 11], CORNER), raceway('P2', FOOT, CORNER, [0, 9, 11], [9, 9, 11])];
  const strut = { from: [0, 0, 12] as Point3, to: [5, 0, 12] as Point3 };
  const { raceways, stringers } = mixed(
    { ...NOTHING, raceways: own, stringers: [{ ...strut, of: 'P1' }] },
    { ...NOTHING, raceways: other, stringers: [{ ...strut, of: 'P2' }] },
    (id) => id === 'P2',
  );
  expect(raceways.map(({ path }) => path)).toEqual([
    [[-9, 0, 11], CORNER, FOOT],
    [CORNER, [0, 9, 11], [9, 9, 11]],
  ]);
  expect(stringers).toHaveLength(1);
});
