import type { Site } from '../../routing/site/site.ts';
import { COUNTING } from './counting.ts';
import type { Plan } from './plan-shape.ts';
import { planned } from './planned.ts';

/** The plan of a site, with all that counts it at hand: see `planned`. */
export const plan = (site: Site): Plan => planned(site, () => COUNTING);
