import type { Equipment } from '../../../routing/site/site.ts';
import type { FaultAmps, SupplyEquipment } from '../../plan-file/supply.ts';

/** The most that a device at a place may have to interrupt, A, motors among it; at a board a line to neutral as well. */
export const mostAt = (fault: FaultAmps, isBoard: boolean): number =>
  Math.max(fault.most, isBoard ? (fault.lineToNeutral ?? 0) : 0) + (fault.motorAmps ?? 0);

/** Whether a piece of equipment rests on its series rating: its own is below what may be there. */
export const restsOnSeries = ({ interruptingAmps, seriesAmps }: Equipment, amps: number): boolean =>
  seriesAmps !== undefined && amps > (interruptingAmps ?? 0) * (1 + 1e-9) && amps <= seriesAmps * (1 + 1e-9);

/** What equipment that is used with a series rating is marked with; the words of the code from memory. */
export const seriesLabel = ({ id, seriesAmps, seriesWith }: Equipment): string =>
  `${id}: CAUTION, SERIES COMBINATION SYSTEM RATED ${seriesAmps} AMPERES${seriesWith === undefined ? '' : ` WITH ${seriesWith.toUpperCase()}`}. IDENTIFIED REPLACEMENT COMPONENTS REQUIRED.`;

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
