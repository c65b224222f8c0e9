import { runsOf } from '../../../routing/network/runs.ts';
import type { Site } from '../../../routing/site/site.ts';

export const first = (site: Site) => runsOf(site).runs[0]!;
