import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { letteredRaised } from '../lettered/lettered-raised.ts';
import type { FontBytes } from '../pdf/kit/lettering/lettering.ts';
import { svg } from './svg.ts';
import { BAND, svgHead } from './svg-head.ts';
import { marksOver, withMarks } from './svg-marks.ts';

const SAYS = 'Raised view: the plan is true to scale, heights are drawn straight up at the same scale.';

/**
 * The site raised as an SVG document, with its title, scale and north, and its names where the drawing set has room for
 * them; `date` as it is to be printed.
 */
export async function raisedSvg(
  site: Site,
  plan: Plan,
  { fonts, date }: { readonly fonts: FontBytes; readonly date: string },
): Promise<string> {
  const { drawing, marks } = await letteredRaised(site, plan, fonts);
  return svg(withMarks(drawing, marks), site, {
    band: BAND,
    head: (width) => svgHead(site, SAYS, date, width),
    over: marksOver(marks),
  });
}
