import { kept } from '../../routing/kept/kept.ts';
import type { Site, SiteFile, Underlay } from '../../routing/site/site.ts';

type Under = Pick<Site, 'underlay' | 'underlays'> | Pick<SiteFile, 'underlay' | 'underlays'>;

const NONE: readonly Underlay[] = [];
/**
 * What lies under the drawing, from the lowest up: `underlay`, which is the only one of most sites, then `underlays`. The
 * same list as long as both are the same.
 */
export function underlaysOf({ underlay, underlays }: Under): readonly Underlay[] {
  const by = underlays ?? underlay;
  return by ? together(by, underlay, underlays) : NONE;
}

const together = kept(
  (_: object, underlay: Underlay | undefined, underlays: readonly Underlay[] | undefined): readonly Underlay[] => [
    ...(underlay ? [underlay] : []),
    ...(underlays ?? []),
  ],
);
