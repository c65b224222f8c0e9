import type { Underlay } from '../../calc/sheets/pdf/underlay.ts';
import { direction } from '../../routing/plane/direction.ts';
import type { Site } from '../../routing/site/site.ts';
import { keptBytes } from '../underlay/kept-bytes.ts';
import { underlaysOf } from '../underlay/underlays.ts';

/** The PDF page that lies under the plan, the lowest that is shown where there are several, for the drawing set to place as vectors; undefined where there is none to place. */
export async function drawingUnderlay(site: Pick<Site, 'underlay' | 'underlays'>): Promise<Underlay | undefined> {
  const underlay = underlaysOf(site).find(({ kind, hidden }) => kind === 'pdf' && !hidden);
  if (!underlay) return undefined;
  const bytes = await keptBytes(underlay.hash, Date.now());
  if (!bytes) return undefined;
  const { at, origin = [0, 0], scale, rotation = 0, page = 1 } = underlay;
  const [ux, uy] = direction(rotation);
  // The site says where `origin` lies; the set wants the page's lower left corner.
  const x = at[0] - scale * (origin[0] * ux - origin[1] * uy);
  const y = at[1] - scale * (origin[0] * uy + origin[1] * ux);
  return { bytes, page, placement: { x, y, scale, rotation } };
}
