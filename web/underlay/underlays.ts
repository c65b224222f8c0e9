import type { Site, SiteFile, Underlay } from '../../routing/site/site.ts';

type Under = Pick<Site, 'underlay' | 'underlays'> | Pick<SiteFile, 'underlay' | 'underlays'>;

const NONE: readonly Underlay[] = [];
const kept = new WeakMap<object, { readonly lowest: Underlay | undefined; readonly all: readonly Underlay[] }>();

/**
 * What lies under the drawing, from the lowest up: `underlay`, which is the only one of most sites, then `underlays`. The
 * same list as long as both are the same.
 */
export function underlaysOf({ underlay, underlays }: Under): readonly Underlay[] {
  const by = underlays ?? underlay;
  if (!by) return NONE;
  const before = kept.get(by);
  if (before && before.lowest === underlay) return before.all;
  const all = [...(underlay ? [underlay] : []), ...(underlays ?? [])];
  kept.set(by, { lowest: underlay, all });
  return all;
}
