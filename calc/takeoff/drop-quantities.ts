import type { Charger, Drop } from '../../routing/site/site.ts';
import { IDLE_DROP } from './box-quantities.ts';
import { byWords, kindOf } from './kind.ts';
import { type Tally, tallying } from './tally.ts';

const RETRACTOR = kindOf({ item: 'retractor', spec: 'cord', unit: 'each', basis: 'one at each drop that has one' });
/** Bollards to a pedestal. */
const BOLLARDS = 2;
const BOLLARD = kindOf({
  item: 'bollard',
  spec: 'at a pedestal',
  unit: 'each',
  basis: 'two at each pedestal; common practice, no source',
});
const PEDESTAL = kindOf({ item: 'pedestal', spec: 'box and cord', unit: 'each', basis: 'one at each pedestal drop' });

const cordKind = byWords((length, amps) =>
  kindOf({ item: 'cord', spec: `${length} usable, ${amps} A`, unit: 'each', basis: 'one of each charger' }),
);
const LABEL = kindOf({
  item: 'label',
  spec: 'circuit',
  unit: 'each',
  basis: 'two of each charger: at its breaker and at its box; common practice, no source',
});
const moduleKind = byWords((rating, phases) =>
  kindOf({ item: 'charging module', spec: `${rating} ${phases}`, unit: 'each', basis: 'one of each charger' }),
);

/** Retractors, pedestals and cords of drops. A charger has one cord, as long as its drop says, in the words of the file. */
export function dropQuantities(
  drops: readonly Drop[],
  chargersAt: ReadonlyMap<string, readonly Charger[]>,
  lengthInWords: (feet: number) => string,
): Tally {
  const { add, tally } = tallying();
  for (const drop of drops) {
    if (drop.mount === 'pedestal') {
      add(PEDESTAL, drop.id, 1);
      add(BOLLARD, drop.id, BOLLARDS);
    }
    if (drop.retractor !== undefined) add(RETRACTOR, drop.id, 1);
    const chargers = chargersAt.get(drop.id);
    if (chargers === undefined) add(IDLE_DROP, drop.id, 1);
    for (const { id, amps } of chargers ?? []) {
      add(cordKind(lengthInWords(drop.cord), String(amps)), id, 1);
    }
  }
  return tally;
}

/** Charging modules and labels. */
export function chargerQuantities(chargers: readonly Charger[]): Tally {
  const { add, tally } = tallying();
  for (const { id, amps, volts, phases } of chargers) {
    add(LABEL, id, 2);
    add(moduleKind(`${amps} A ${volts} V`, phases === 3 ? 'three-phase' : 'single-phase'), id, 1);
  }
  return tally;
}
