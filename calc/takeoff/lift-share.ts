import { kept } from '../../routing/kept/kept.ts';
import { chunking } from '../../routing/kept/parts.ts';
import type { Drop, Raceway } from '../../routing/site/site.ts';
import { highAlong, LADDER_FROM, LIFT_FROM } from './high.ts';

/** Of what is worked off the ground, how much is over the reach of a ladder: 0 to 1. */
export interface LiftShares {
  readonly atDrops: number;
  readonly along: number;
}

/** Items that hang or stand at drops; all others lie along raceways. */
const AT_DROPS: ReadonlySet<string> = new Set(['charging module', 'retractor', 'cord', 'strain relief', 'label']);

/** The share of a row by where its item is. */
export const liftShareOf = ({ atDrops, along }: LiftShares, item: string, spec: string): number =>
  AT_DROPS.has(item) || spec.startsWith('at the drop') ? atDrops : along;

/**
 * The shares of a site by the heights that are drawn: of boxes of drops over 7 ft those over 12 ft, and of the feet of
 * raceway over 7 ft those over 12 ft. A row of the takeoff has the share of its kind.
 */
export const liftShares = (raceways: readonly Raceway[], drops: readonly Drop[]): LiftShares => ({
  along: alongOf(raceways),
  atDrops: dropsOf(drops),
});

const alongOf = kept((raceways: readonly Raceway[]): number => {
  const feetOver = (from: number): number =>
    raceways.reduce((feet, { path, place }) => feet + highAlong(path, place, from), 0);
  const high = feetOver(LADDER_FROM);
  return high > 0 ? feetOver(LIFT_FROM) / high : 0;
});

const dropChunks = chunking<Drop>(128);

function dropsOf(drops: readonly Drop[]): number {
  let [high, over] = [0, 0];
  for (const chunk of dropChunks(drops)) {
    const counts = countsIn(chunk);
    high += counts.high;
    over += counts.over;
  }
  return high > 0 ? over / high : 0;
}

/** Boxes of some drops over either height. */
const countsIn = kept((chunk: readonly Drop[]): { readonly high: number; readonly over: number } => ({
  high: chunk.filter(({ box }) => box[2] > LADDER_FROM).length,
  over: chunk.filter(({ box }) => box[2] > LIFT_FROM).length,
}));
