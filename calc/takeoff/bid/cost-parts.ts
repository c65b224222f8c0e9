import { kept } from '../../../routing/kept/kept.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { ON_GROUND } from '../high.ts';
import type { CostRow } from './cost.ts';
import { dealtOut } from './money.ts';

/** What an element takes of a row of the bill. */
export interface CostPart {
  readonly row: CostRow;
  /** Id of the element: a conduit, charger, drop, equipment, feeder. */
  readonly of: string;
  readonly quantity: number;
  readonly material: number;
  readonly labor: number;
  readonly hours: number;
}

/** What the hours of a part go by: its quantity, by the factors of the height at which it is. */
export const effortOf = (
  { quantity, aloft: { high, lift } = ON_GROUND }: TakeoffRow['parts'][number],
  factors: CostRow['factors'],
): number => Math.max(0, quantity + (high - lift) * (factors.ladder - 1) + lift * (factors.lift - 1));

/**
 * A row dealt out to the elements that it is made of: material by how much of it is in each, hours also by how high that
 * is. The cents are all there.
 */
export const partsOfRow = kept((row: CostRow): readonly CostPart[] => {
  const { factors, taken } = row;
  const { parts } = taken;
  const weights = parts.map(({ quantity }) => quantity);
  const net = weights.reduce((sum, quantity) => sum + quantity, 0);
  const efforts = parts.map((part) => effortOf(part, factors));
  const effort = efforts.reduce((sum, one) => sum + one, 0);
  const [materials, labors] = [dealtOut(row.material, weights), dealtOut(row.labor, efforts)];
  return parts.map(
    ({ of, quantity }, i): CostPart => ({
      row,
      of,
      quantity: net > 0 ? (row.quantity * quantity) / net : 0,
      material: materials[i]!,
      labor: labors[i]!,
      hours: effort > 0 ? (row.hours * efforts[i]!) / effort : 0,
    }),
  );
});
