import { EQUIPMENT_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment } from '../../../routing/site/site.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import { type Tally, tallying } from '../tally.ts';

/** Equipment that stands on a pad; boards on a wall or a rack have none. Common practice, no source. */
const ON_PAD: ReadonlySet<Equipment['kind']> = new Set(['service', 'switchboard', 'transformer', 'inverter']);
/** How far a pad goes past the footprint, feet. Common practice, no source. */
const PAD_EDGE = 0.5;

/** Square feet of the pad of a piece of equipment, to the whole one. */
const padFeet = ({ size: [width, depth] }: Equipment): number =>
  Math.ceil((width + 2 * PAD_EDGE) * (depth + 2 * PAD_EDGE) - 1e-9);

const padKind = byWords((feet) =>
  takeoffKind({
    item: 'equipment pad',
    spec: `concrete, ${feet} sq ft`,
    unit: 'each',
    basis: 'one under each piece of service equipment, switchboard, transformer and inverter, 6 in past its footprint',
  }),
);

/** Equipment as drawn, with its pads; the source is the utility's, and what stands already is not bought. */
export function equipmentQuantities(equipment: readonly Equipment[]): Tally {
  const { add, tally } = tallying();
  for (const piece of equipment) {
    if (piece.kind === 'source' || piece.existing === true) continue;
    add(
      takeoffKind({ item: EQUIPMENT_WORDS[piece.kind], spec: ratingOf(piece), unit: 'each', basis: 'as drawn' }),
      piece.id,
      1,
    );
    if (ON_PAD.has(piece.kind)) add(padKind(String(padFeet(piece)), ''), piece.id, 1);
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
