import type { Equipment, Feeder, Rules } from '../../routing/site/site.ts';
import type { SupplyFeeder } from '../plan-shape.ts';
import { kindOf } from './kind.ts';
import { conductorSpec } from './spec.ts';
import { type Tally, tallying } from './tally.ts';

/** Equipment as drawn; the source is the utility's. */
export function equipmentQuantities(equipment: readonly Equipment[]): Tally {
  const { add, tally } = tallying();
  for (const piece of equipment) {
    if (piece.kind === 'source') continue;
    add(kindOf({ item: piece.kind, spec: ratingOf(piece), unit: 'each', basis: 'as drawn' }), piece.id, 1);
  }
  return tally;
}

function ratingOf({
  kind,
  busAmps,
  mainAmps,
  volts,
  phases,
  spaces,
  kva,
  primaryVolts,
  secondaryVolts,
}: Equipment): string {
  const parts =
    kind === 'transformer'
      ? [
          kva === undefined ? '' : `${kva} kVA`,
          primaryVolts === undefined || secondaryVolts === undefined ? '' : `${primaryVolts}-${secondaryVolts} V`,
        ]
      : [
          busAmps === undefined ? '' : `${busAmps} A bus`,
          mainAmps === undefined ? '' : `${mainAmps} A main`,
          volts === undefined ? '' : `${volts} V`,
          phases === undefined ? '' : phases === 3 ? 'three-phase' : 'single-phase',
          spaces === undefined ? '' : `${spaces} spaces`,
        ];
  return parts.filter(Boolean).join(', ') || 'rating not given';
}

/**
 * Conductors of new feeders over the length that the supply used: three lines and a neutral where it is four-wire, two
 * lines where the equipment it feeds is single-phase, for each set.
 */
export function feederQuantities(feeders: readonly Feeder[], rules: Rules, solved: readonly SupplyFeeder[]): Tally {
  const { add, tally } = tallying();
  const lengthOf = new Map(solved.map(({ id, length }) => [id, length]));
  for (const feeder of feeders) {
    const length = lengthOf.get(feeder.id);
    if (feeder.existing === true || length === undefined) continue;
    const { size, metal, sets, insulation } = feeder.conductor;
    add(
      kindOf({
        item: 'feeder conductor',
        spec: conductorSpec(size, metal, insulation),
        unit: 'ft',
        basis: 'lines and neutral of each set: the length and the allowance at both ends',
      }),
      feeder.id,
      4 * sets * (length + 2 * rules.allowance.equipment),
    );
  }
  return tally;
}
