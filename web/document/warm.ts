import { reachOfCharger } from '../../routing/reach/reach.ts';
import type { Site } from '../../routing/site/site.ts';

/** Fills what `plan` remembers, a slice at a time, so that the page stays alive; `done` of `of` after each slice. */
export type Warm = (site: Site, onProgress: (done: number, of: number) => void) => Promise<void>;

/** So long the page may stand still at a time, in milliseconds. */
const SLICE_MS = 25;

/**
 * Works the reach of every charger ahead of the plan, of which it is nearly all: a site that takes no longer than a
 * slice is done when this returns, a larger one lets the page draw and listen between slices.
 */
export const warm: Warm = async (site, onProgress) => {
  const of = site.chargers.length;
  let until = performance.now() + SLICE_MS;
  for (let place = 0; place < of; place++) {
    reachOfCharger(site, place);
    if (performance.now() < until || place === of - 1) continue;
    onProgress(place + 1, of);
    await new Promise((resolve) => setTimeout(resolve));
    until = performance.now() + SLICE_MS;
  }
};
