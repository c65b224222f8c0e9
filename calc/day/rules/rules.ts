import type { World } from '../world.ts';
import { equalShare } from './equal.ts';
import { byDeadline, byLaxity, firstCome } from './in-order.ts';
import type { Rule } from './rule.ts';

/** The rules by which a lot may be run, `unmanaged` being none at all. */
export const STRATEGIES = ['unmanaged', 'equal', 'first', 'deadline', 'laxity'] as const;

export type Strategy = (typeof STRATEGIES)[number];

/** Each has all that its cord gives; no limit is looked at. */
const unmanaged: Rule = ({ holders, cap }, amps) => {
  for (const car of holders) amps[car] = cap[car]!;
};

export const RULES: Readonly<Record<Strategy, (world: World) => Rule>> = {
  unmanaged: () => unmanaged,
  equal: equalShare,
  first: firstCome,
  deadline: byDeadline,
  laxity: byLaxity,
};
