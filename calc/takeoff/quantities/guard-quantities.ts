import { bollardsNear } from '../../../routing/checks/access/guard-findings.ts';
import { kept } from '../../../routing/kept/kept.ts';
import type { Column, Drop } from '../../../routing/site/site.ts';
import { takeoffKind } from '../../prices/kind.ts';
import { type Tally, tallying } from '../tally.ts';

/** Bollards to a pedestal by which none is drawn. */
const USUAL = 2;
const BOLLARD = takeoffKind({
  item: 'bollard',
  spec: 'at a pedestal',
  unit: 'each',
  basis: 'those drawn within 4 ft of a pedestal, each once; two at each pedestal by which none is; common practice',
});

const BOLLARD_FOOTING = takeoffKind({
  item: 'bollard footing',
  spec: 'concrete, 18 in across, 36 in deep',
  unit: 'each',
  basis: 'one of each bollard; common practice',
});

/** Bollards that guard pedestals, each with its footing. */
export const guardQuantities = kept((pedestals: readonly Drop[], bollards: readonly Column[]): Tally => {
  const { add, tally } = tallying();
  const drawn = new Set<string>();
  for (const pedestal of pedestals) {
    const near = bollardsNear(pedestal, bollards);
    if (near.length === 0) {
      add(BOLLARD, pedestal.id, USUAL);
      add(BOLLARD_FOOTING, pedestal.id, USUAL);
    }
    for (const { id } of near) drawn.add(id);
  }
  for (const id of drawn) {
    add(BOLLARD, id, 1);
    add(BOLLARD_FOOTING, id, 1);
  }
  return tally;
});
