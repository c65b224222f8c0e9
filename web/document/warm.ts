import type { Site } from '../../routing/site/site.ts';

/** Fills what `plan` remembers, a slice at a time, so that the page stays alive; `done` of `of` after each slice. */
export type Warm = (site: Site, onProgress: (done: number, of: number) => void) => Promise<void>;

/** Lets the page draw what it has to say before the plan is worked out. */
export const warm: Warm = async (site, onProgress) => {
  if (site.chargers.length === 0) return;
  onProgress(0, site.chargers.length);
  await new Promise((resolve) => setTimeout(resolve));
};
