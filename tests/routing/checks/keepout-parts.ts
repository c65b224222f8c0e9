import { keepoutFindings } from '../../../routing/checks/keepout-findings.ts';
import type { Keepout, Point2, SiteFile } from '../../../routing/site/site.ts';
import { siteOf } from '../network/sites.ts';

export const square: Point2[] = [
  [10, -5],
  [20, -5],
  [20, 5],
  [10, 5],
];
export const keepout = (more: Partial<Keepout> = {}): Keepout => ({
  id: 'K1',
  outline: square,
  blocks: ['raceway'],
  ...more,
});
export const found = (parts: Partial<SiteFile>) => keepoutFindings(siteOf(parts));
