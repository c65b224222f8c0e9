import type { Rules } from '../../routing/site/site.ts';
import { kindOf } from '../prices/kind.ts';
import { conductorSpec, racewaySpec } from '../prices/spec.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import { type Tally, tallying } from './tally.ts';

/** Conductors, grounding conductors and raceways of new feeders; existing ones are there already. */
export function feederQuantities(conduits: readonly FeederConduit[], { allowance }: Rules): Tally {
  const { add, tally } = tallying();
  for (const { feeder, method, tradeSize, length, conductors } of conduits) {
    if (feeder.existing === true) continue;
    const { sets, metal } = feeder.conductor;
    for (const { use, size, insulation, count } of conductors)
      add(
        kindOf({
          item: use === 'line' ? 'feeder conductor' : `feeder ${use} conductor`,
          spec: conductorSpec(size, metal, insulation),
          unit: 'ft',
          basis: `${use === 'line' ? 'lines and neutral' : 'one'} of each set: the length and the allowance at both ends`,
        }),
        feeder.id,
        count * sets * (length + 2 * allowance.equipment),
      );
    add(
      kindOf({
        item: 'feeder raceway',
        spec: racewaySpec(method, tradeSize),
        unit: 'ft',
        basis: 'length of the feeder for each set',
      }),
      feeder.id,
      sets * length,
    );
  }
  return tally;
}
