import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { type LetteredParts, letteredPlan } from '../lettered/lettered-plan.ts';
import { svg } from './svg.ts';
import { BAND, svgHead } from './svg-head.ts';
import { marksOver, withMarks } from './svg-marks.ts';

/**
 * The plan as an SVG document, as the site file lies: with the words, dimensions and clouds where the drawing set has room
 * for them, each as wide as it is there, feeders, and over the plan its title, scale and north. With a revision it has
 * the clouds and deltas of the revised set.
 */
export async function planSvg(site: Site, plan: Plan, parts: LetteredParts): Promise<string> {
  const { drawing, marks } = await letteredPlan(site, plan, parts);
  const { revision } = parts;
  const revised = revision ? `Revision ${revision.number} of ${revision.since}. ` : '';
  return svg(withMarks(drawing, marks), site, {
    band: BAND,
    head: (width) => svgHead(site, `${revised}Raceway and drop plan.`, parts.date, width),
    over: marksOver(marks),
  });
}
