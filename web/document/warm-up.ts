import { designOf } from '../../calc/branches/design.ts';
import { equipmentBranches } from '../../calc/branches/equipment-branches.ts';
import { runsOf } from '../../routing/network/runs.ts';
import { reachOfChargers } from '../../routing/reach/reach.ts';
import type { Site } from '../../routing/site/site.ts';

/** Fills what `pagePlan` remembers, a slice at a time, so that the page stays alive; `done` of `of` after each slice. */
export type WarmUp = (site: Site, onProgress: (done: number, of: number) => void) => Promise<void>;

/** So long the page may stand still at a time, in milliseconds, where the work can be cut. */
const SLICE_MS = 25;

/** Chargers to a piece. */
const CHARGERS = 10;

/**
 * Works ahead what takes a plan long: the reach of every charger, some at a time, then the runs and the branches. A site
 * that takes no longer than a slice is done when this returns, a larger one lets the page draw and listen in between.
 */
export const warm: WarmUp = async (site, onProgress) => {
  const pieces = piecesOf(site);
  let until = performance.now() + SLICE_MS;
  for (const [i, piece] of pieces.entries()) {
    piece();
    if (performance.now() < until || i === pieces.length - 1) continue;
    onProgress(i + 1, pieces.length);
    await new Promise((resolve) => setTimeout(resolve));
    until = performance.now() + SLICE_MS;
  }
};

function piecesOf(site: Site): readonly (() => void)[] {
  const { length } = site.chargers;
  const reach = Array.from(
    { length: Math.ceil(length / CHARGERS) },
    (_, i) => () => void reachOfChargers(site, i * CHARGERS, Math.min(length, (i + 1) * CHARGERS)),
  );
  const branches = (): void => void equipmentBranches(site, runsOf(site).runs, designOf(site.rules));
  return [...reach, () => void runsOf(site), branches];
}
