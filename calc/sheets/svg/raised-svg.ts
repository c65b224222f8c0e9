import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { raisedDrawing } from '../drawing/raised-drawing.ts';
import { svg } from './svg.ts';
import { BAND, svgHead } from './svg-head.ts';

const SAYS = 'Raised view: the plan is true to scale, heights are drawn straight up at the same scale.';

/** The site raised as an SVG document, with its title, scale and north; `date` as it is to be printed. */
export const raisedSvg = (site: Site, plan: Plan, date: string): string =>
  svg(raisedDrawing(site, plan), site, { band: BAND, head: (width) => svgHead(site, SAYS, date, width) });
