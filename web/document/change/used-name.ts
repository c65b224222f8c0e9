import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Site } from '../../../routing/site/site.ts';

/** Whether an element goes by that name. */
export const isUsed = (site: Site, id: string): boolean =>
  ELEMENT_LISTS.some((list) => byId(site[list] as readonly { readonly id: string }[]).has(id));
