import { PILOT_FLOOR_AMPS } from '../../supply/panels/pilot-floor.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { USUAL_CHARGER, USUAL_PANELBOARD } from '../usual.ts';

/**
 * Greatest line current of so many equal single-phase chargers dealt to the three pairs of lines as evenly as can be, for
 * one ampere each: a line carries its two pairs 60 degrees apart.
 */
export function lineShare(chargers: number): number {
  const [a, b] = [Math.ceil(chargers / 3), Math.ceil((chargers - 1) / 3)];
  return Math.sqrt(a * a + b * b + a * b);
}

/** Amperes that a new charger counts for in a calculated load: its rating, or the least load of the code, the larger. */
export const countedAmps = ({ vehicleSupply }: CodeTables): number =>
  Math.max(USUAL_CHARGER.amps, vehicleSupply.unitLoadVa / USUAL_PANELBOARD.volts);

/** What load management is to do. */
export type LoadWish =
  /** Nothing: every charger at its rating at once. */
  | { readonly kind: 'full' }
  /** Each car gets so many kilowatt-hours in so many hours, all at once. */
  | { readonly kind: 'energy'; readonly kwh: number; readonly hours: number }
  /** All chargers of the lot together draw no more than so many amperes a line, at the volts of the chargers. */
  | { readonly kind: 'ceiling'; readonly amps: number }
  /** No car of the site's charging days gets less than at full rate; found by the day. */
  | { readonly kind: 'day' }
  /** So many amperes for each charger, all at once: what a day was found to need. */
  | { readonly kind: 'each'; readonly amps: number };

export const FULL_RATE: LoadWish = { kind: 'full' };

/** Amperes of a charger that give so much energy in so many hours. */
const energyAmps = ({ kwh, hours }: { readonly kwh: number; readonly hours: number }): number =>
  (kwh * 1000) / hours / USUAL_PANELBOARD.volts;

/** Line current of so many chargers at full rate, counted as the code does, A. */
export const fullLineAmps = (tables: CodeTables, chargers: number): number => lineShare(chargers) * countedAmps(tables);

/**
 * Line current that so many chargers of a lot of `all` are held to, A; null where they are not held. A ceiling of the lot is
 * dealt out by the chargers. It is never under what their pilots can call for.
 */
export function heldLineAmps(wish: LoadWish, chargers: number, all: number): number | null {
  switch (wish.kind) {
    case 'full':
    case 'day':
      return null;
    case 'energy':
      return lineShare(chargers) * Math.max(energyAmps(wish), PILOT_FLOOR_AMPS);
    case 'each':
      return lineShare(chargers) * Math.max(wish.amps, PILOT_FLOOR_AMPS);
    case 'ceiling':
      return Math.max((wish.amps * chargers) / Math.max(1, all), lineShare(chargers) * PILOT_FLOOR_AMPS);
  }
}
