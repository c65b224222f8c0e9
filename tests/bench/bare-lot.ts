import type { SiteFile } from '../../routing/site/site.ts';
import { makeLot } from './make-lot.ts';

/** A made lot of so many stalls under canopies, with its source and nothing else. */
export function bareLot(stalls: number): SiteFile {
  const { drops, chargers, raceways, feeders, ...ground } = makeLot({ name: `bare lot of ${stalls}`, stalls });
  return { ...ground, equipment: ground.equipment!.slice(0, 1) };
}
