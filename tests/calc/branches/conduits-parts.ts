import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

export const planOf = (file: SiteFile): Plan => plan(toSite(file));
