import type { Method } from '../../routing/site/schema/vocabulary.ts';
import { racewayWeight } from '../tables/weights/weight-of.ts';

/** A conduit on a trapeze, by what it takes up. */
export interface OnTrapeze {
  readonly method: Method;
  readonly tradeSize: string | null;
}

/** Clear between conduits for their straps, and from a rod to the first, inches. Common practice, no source. */
export const CONDUIT_GAP = 1;
export const ROD_GAP = 1.5;
/** Trapezes are cut in these steps and made no wider, inches. Common practice, no source. */
const STEP = 6;
const LEAST = 12;
const WIDEST = 36;
/** A tray takes up this much, inches. Common practice, no source. */
const TRAY_WIDTH = 12;

export const outsideOf = ({ method, tradeSize }: OnTrapeze): number =>
  racewayWeight(method, tradeSize)?.outside ?? (method === 'tray' ? TRAY_WIDTH : 1);

/** Inches of channel that conduits take up side by side, from rod to rod. */
export const takenUp = (conduits: readonly OnTrapeze[]): number =>
  conduits.reduce((sum, one) => sum + outsideOf(one), 0) + (conduits.length - 1) * CONDUIT_GAP + 2 * ROD_GAP;

/** Width of a trapeze for conduits side by side, inches: the least that is cut. */
export const widthFor = (conduits: readonly OnTrapeze[]): number =>
  Math.max(LEAST, STEP * Math.ceil(takenUp(conduits) / STEP - 1e-9));

/** How many more conduits like the largest fit on a trapeze. */
export function roomFor(conduits: readonly OnTrapeze[]): number {
  const largest = Math.max(...conduits.map(outsideOf));
  return Math.max(0, Math.floor((widthFor(conduits) - takenUp(conduits)) / (largest + CONDUIT_GAP) + 1e-9));
}

/** Conduits shared out on as few trapezes as hold them in their order, none wider than the widest. */
export function tiersOf<Conduit extends OnTrapeze>(conduits: readonly Conduit[]): readonly (readonly Conduit[])[] {
  const tiers: Conduit[][] = [];
  let taken = Number.POSITIVE_INFINITY;
  for (const conduit of conduits) {
    const own = outsideOf(conduit);
    taken += own + CONDUIT_GAP;
    if (taken <= WIDEST + 1e-9) tiers.at(-1)!.push(conduit);
    else {
      tiers.push([conduit]);
      taken = own + 2 * ROD_GAP;
    }
  }
  return tiers;
}
