import { describe, expect, test } from 'vitest';
import { designOf } from '../../../calc/branches/design.ts';
import type { ConduitGround } from '../../../calc/branches/ground.ts';
import { memberOf } from '../../../calc/branches/home-runs/member.ts';
import { wayOf } from '../../../calc/branches/way.ts';
import type { Run } from '../../../routing/network/run.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';
import type { Charger, Point3, Pullpoint, Raceway } from '../../../routing/site/site.ts';

const charger: Charger = { id: 'EV', drop: 'D', stalls: [], from: 'P', amps: 32, volts: 208, phases: 1 };

/** A run out and back along one raceway whose two legs lie 0.3 ft apart. */
const PATH: readonly Point3[] = [
  [0, 0, 10],
  [10, 0, 10],
  [10, 0.3, 10],
  [0, 0.3, 10],
];
const raceway: Raceway = { id: 'R', path: PATH.map((at) => [...at]), method: 'EMT', place: 'overhead' };

const along = (pull: Point3) => {
  const pulls: readonly Pullpoint[] = [{ id: 'PB', at: [...pull] }];
  const ground: ConduitGround = {
    raceways: new Map([['R', raceway]]),
    pulls: new Map([['R', pulls]]),
    tolerance: 0.25,
    loose: [],
  };
  const run = {
    charger: 'EV',
    length: 20.3,
    conductorLength: 26.3,
    path: PATH,
    legs: ['R', 'R', 'R'],
    raceways: ['R'],
  };
  return wayOf(charger, run as unknown as Run, ground)!;
};

describe('a pull point near two places of a way', () => {
  test.each([
    ['the first', [5, 0.1, 10], 5],
    ['the second', [5, 0.2, 10], 15.3],
  ] as const)('opens it where it is nearer: at %s', (_, place, at) => {
    const { pulls } = along(place);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]!.at).toBeCloseTo(at, 9);
  });
});

test('the line conductors of a member cost poles x conductor length x the price of a foot', () => {
  const design = designOf({ ...DEFAULT_RULES });
  const member = memberOf(design, along([90, 0, 0]), 2)!;
  const { size, metal, insulation } = member.choice.conductor;
  expect(member.dollars).toBeCloseTo(2 * 26.3 * design.cost.conductorFoot(size, metal, insulation), 9);
});
