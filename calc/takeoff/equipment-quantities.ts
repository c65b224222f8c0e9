import { EQUIPMENT_WORDS } from '../../routing/site/schema/vocabulary.ts';
import type { Equipment } from '../../routing/site/site.ts';
import { kindOf } from '../prices/kind.ts';
import { type Tally, tallying } from './tally.ts';

/** Equipment as drawn; the source is the utility's. */
export function equipmentQuantities(equipment: readonly Equipment[]): Tally {
  const { add, tally } = tallying();
  for (const piece of equipment) {
    if (piece.kind === 'source') continue;
    add(
      kindOf({ item: EQUIPMENT_WORDS[piece.kind], spec: ratingOf(piece), unit: 'each', basis: 'as drawn' }),
      piece.id,
      1,
    );
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
          kind === 'service' ? 'with metering' : '',
        ];
  return parts.filter(Boolean).join(', ') || 'rating not given';
}
