import { keptByKey } from '../../../routing/kept/kept.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { ConduitConductor } from '../../plan-file/branches.ts';
import { compareSizes } from '../../tables/sizes.ts';
import type { Design } from '../design.ts';
import { fill } from './fill.ts';
import type { Occupant } from './member.ts';

/** What is in a conduit and how large it is. */
export interface Packing {
  readonly conductors: readonly ConduitConductor[];
  /** Null for a tray. */
  readonly tradeSize: string | null;
  readonly fillPercent: number;
  readonly fillLimit: number;
  readonly fits: boolean;
  /** Dollars in place: a foot with its grounding conductor, the two ends, a bend. */
  readonly foot: number;
  readonly ends: number;
  readonly bend: number;
}

/** Size of a pilot conductor: the least that the wet inside of an outdoor raceway allows with the branch's insulation. */
export const PILOT_SIZE = '14';

/**
 * Conduit for members, the smallest that holds them; 60% full where it is a nipple, no smaller than the rule asks where
 * some of it lies in the ground. Members alike in what they put in fill one alike.
 */
export const packing = keptByKey(
  (method: Method, members: readonly Occupant[], nipple: boolean, underground: boolean): string => {
    let key = `${method}${nipple ? ' nipple' : ''}${underground ? ' underground' : ''}`;
    for (const { load } of members) key += `,${load}`;
    return key;
  },
  packed,
);

function packed(
  { tables, rules, cost }: Design,
  method: Method,
  members: readonly Occupant[],
  nipple: boolean,
  underground: boolean,
): Packing {
  const conductors = conductorsOf(members, rules);
  const grounding = conductors.find(({ use }) => use === 'grounding')!;
  const groundingFoot = cost.conductorFoot(grounding.size, rules.metal, rules.insulation);
  const filled =
    method === 'tray'
      ? { tradeSize: null, fillPercent: 0, limitPercent: 0, ok: true }
      : fill(tables, { method, conductors, nipple, ...(underground && { least: rules.undergroundTradeSize }) });
  const { tradeSize, fillPercent, limitPercent, ok } = filled;
  return {
    conductors,
    tradeSize,
    fillPercent,
    fillLimit: limitPercent,
    fits: ok,
    foot: cost.racewayFoot(method, tradeSize) + groundingFoot,
    ends: cost.racewayEnds(method, tradeSize),
    bend: cost.bend(method, tradeSize),
  };
}

/** Lines largest first, then one grounding conductor for all, the largest asked for (250.122(C)), then the pilots. */
function conductorsOf(members: readonly Occupant[], { insulation }: Rules): readonly ConduitConductor[] {
  const lines = new Map<string, number>();
  let grounding = members[0]!.choice.grounding.size;
  let pilots = 0;
  for (const { choice, poles, pilot } of members) {
    const { size } = choice.conductor;
    lines.set(size, (lines.get(size) ?? 0) + poles);
    if (compareSizes(choice.grounding.size, grounding) > 0) grounding = choice.grounding.size;
    if (pilot) pilots++;
  }
  const conductors: ConduitConductor[] = [...lines]
    .sort(([a], [b]) => compareSizes(b, a))
    .map(([size, count]) => ({ use: 'line', size, insulation, count }));
  conductors.push({ use: 'grounding', size: grounding, insulation, count: 1 });
  if (pilots > 0) conductors.push({ use: 'pilot', size: PILOT_SIZE, insulation, count: pilots });
  return conductors;
}
