import type { SupplyEquipment } from '../../plan-file/supply.ts';
import { mostAt } from './series-rating.ts';

/**
 * What a board is marked with for its available fault current; null where none is known. The date of the calculation is
 * written where it is known, else left to be filled in.
 */
export function faultLabel({ id, fault }: SupplyEquipment, system: string, date?: string): string | null {
  if (fault === undefined) return null;
  const most = Math.round(mostAt(fault, true));
  const supply = fault.isUnlimited ? ', taken with an unlimited supply' : '';
  return `${id}: maximum available fault current ${most} A at ${system}${supply}; calculated ${date ?? '____-__-__'}`;
}
