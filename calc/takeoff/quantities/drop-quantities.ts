import type { Charger, Drop } from '../../../routing/site/site.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import { aloftAt, times, type WorkHeight } from '../high.ts';
import { type Tally, tallying } from '../tally.ts';
import { IDLE_DROP } from './box-quantities.ts';

const RETRACTOR = takeoffKind({
  item: 'retractor',
  spec: 'cord',
  unit: 'each',
  basis: 'one at each drop that has one',
});
const PEDESTAL_BASE = takeoffKind({
  item: 'pedestal base',
  spec: 'concrete, with anchor bolts',
  unit: 'each',
  basis: 'one of each pedestal, its conduit coming up in it; common practice',
});
const strainKind = byWords((amps) =>
  takeoffKind({
    item: 'strain relief',
    spec: `cord of ${amps} A`,
    unit: 'each',
    basis: 'one where each cord leaves its box; the first of a pedestal comes with it',
  }),
);
const PEDESTAL = takeoffKind({
  item: 'pedestal',
  spec: 'box and cord',
  unit: 'each',
  basis: 'one at each pedestal drop, with its box, its cover and the cord of its first charger',
});

const cordKind = byWords((length, amps) =>
  takeoffKind({
    item: 'cord',
    spec: `${length} usable, ${amps} A`,
    unit: 'each',
    basis: 'one of each charger; the first of a pedestal comes with it',
  }),
);
const LABEL = takeoffKind({
  item: 'label',
  spec: 'circuit',
  unit: 'each',
  basis: 'two of each charger: at its breaker and at its box; common practice',
});
const COMMISSIONING = takeoffKind({
  item: 'test',
  spec: 'charger, commissioning',
  unit: 'each',
  basis: 'one of each charger, under load; common practice',
});
const moduleKind = byWords((rating, phases) =>
  takeoffKind({ item: 'charging module', spec: `${rating} ${phases}`, unit: 'each', basis: 'one of each charger' }),
);

/**
 * What stands or hangs at drops: retractors, pedestals, and of each charger its cord, as long as its drop says in the
 * words of the file, its module and its labels. A pedestal brings its box and its first cord with it.
 */
export function dropQuantities(
  drops: readonly Drop[],
  chargersAt: ReadonlyMap<string, readonly Charger[]>,
  lengthInWords: (feet: number) => string,
  heights: WorkHeight,
): Tally {
  const { add, tally } = tallying();
  for (const drop of drops) {
    const isPedestal = drop.mount === 'pedestal';
    if (isPedestal) {
      add(PEDESTAL, drop.id, 1);
      add(PEDESTAL_BASE, drop.id, 1);
    }
    const { box, retractor } = drop;
    if (retractor !== undefined) add(RETRACTOR, drop.id, 1, aloftAt(retractor[2], heights));
    const chargers = chargersAt.get(drop.id) ?? [];
    const aloft = aloftAt(box[2], heights);
    if (chargers.length === 0 && !isPedestal) add(IDLE_DROP, drop.id, 1, aloft);
    chargers.forEach(({ id, amps, volts, phases }, i) => {
      if (!isPedestal || i > 0) {
        add(cordKind(lengthInWords(drop.cord), String(amps)), id, 1, aloft);
        add(strainKind(String(amps), ''), id, 1, aloft);
      }
      add(moduleKind(`${amps} A ${volts} V`, phases === 3 ? 'three-phase' : 'single-phase'), id, 1, aloft);
      add(LABEL, id, 2, times(aloft, 2));
      add(COMMISSIONING, id, 1);
    });
  }
  return tally;
}
