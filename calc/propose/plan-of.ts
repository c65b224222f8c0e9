import { kept } from '../../routing/kept/kept.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';

/** The plan of a file: several steps of a proposal ask for that of the same one. */
export const planOf = kept((file: SiteFile) => plan(toSite(file)));
