import type { World } from '../simulated/world.ts';
import { equalShare } from './equal.ts';
import { byDeadline, byLaxity, firstCome } from './in-order.ts';
import type { DayRule } from './rule.ts';

/** The rules by which a lot may be run, `unmanaged` being none at all. */
export const STRATEGIES = ['unmanaged', 'equal', 'first', 'deadline', 'laxity'] as const;

export type Strategy = (typeof STRATEGIES)[number];

/** Each has all that its cord gives; no limit is looked at. */
const unmanaged: DayRule = ({ holders, cap }, amps) => {
  for (const car of holders) amps[car] = cap[car]!;
};

export const DAY_RULES: Readonly<Record<Strategy, (world: World) => DayRule>> = {
  unmanaged: () => unmanaged,
  equal: equalShare,
  first: firstCome,
  deadline: byDeadline,
  laxity: byLaxity,
};
