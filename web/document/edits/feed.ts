import type { Feeder, SiteFile } from '../../../routing/site/site.ts';
import type { Edit } from '../edit.ts';
import type { ElementOf } from '../element-lists.ts';
import { addElements } from './add.ts';
import { newId } from './new-id.ts';

/** Parallel sets and sizes of copper that carry a feeder's breaker at 75 C: NEC Table 310.16, from memory. */
const SIZES: readonly { readonly amps: number; readonly size: string; readonly sets: number }[] = [
  { amps: 100, size: '3', sets: 1 },
  { amps: 150, size: '1/0', sets: 1 },
  { amps: 200, size: '3/0', sets: 1 },
  { amps: 230, size: '4/0', sets: 1 },
  { amps: 310, size: '350', sets: 1 },
  { amps: 420, size: '600', sets: 1 },
  { amps: 620, size: '350', sets: 2 },
  { amps: 840, size: '600', sets: 2 },
  { amps: 1260, size: '600', sets: 3 },
];

/** A feeder between two pieces of equipment, with conductors that its breaker can have; to be changed in its form. */
export function addFeeder(file: SiteFile, from: string, to: string, breakerAmps: number): Edit {
  const { size, sets } = SIZES.find(({ amps }) => amps >= breakerAmps) ?? SIZES.at(-1)!;
  const conductor: Feeder['conductor'] = { size, metal: 'copper', sets, insulation: 'THWN-2' };
  const feeder: ElementOf<'feeders'> = { id: newId(file, 'F'), from, to, conductor, breakerAmps };
  return addElements(file, 'feeders', [feeder]);
}
