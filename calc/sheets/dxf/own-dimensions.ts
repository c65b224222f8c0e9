import { dimensionLine } from '../../../routing/site/kinds/dimensions.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import type { LetteredPlan } from '../lettered/lettered-plan.ts';
import type { DimensionMark } from '../lettered/mark.ts';
import { CAP } from '../pdf/kit/lettering/letters.ts';
import { pointsPerFoot } from '../pdf/kit/view/scales.ts';

/** Dimensions that a person put on the plan, and those from new equipment to the boundary. */
export function ownDimensions(site: Site, { dimensions, drawing, job, scale }: LetteredPlan): DimensionMark[] {
  const perFoot = pointsPerFoot(scale);
  const least = (job.lettering.sizes.small * CAP) / perFoot;
  const words = drawing.items.filter((item) => item.kind === 'text' && item.layer === 'dimensions') as DrawnText[];
  return dimensions.map((dimension, i): DimensionMark => {
    const [from, to] = dimensionLine(dimension);
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    const drawn = words[i];
    const height = Math.max(least, drawn?.height ?? 0);
    const text = printLength(length, site.units);
    const width = job.lettering.width(text, height / CAP);
    const radians = ((drawn?.turn ?? 0) * Math.PI) / 180;
    return {
      kind: 'dimension',
      layer: 'dimensions',
      from,
      to,
      fromOrigin: dimension.from,
      toOrigin: dimension.to,
      turn,
      feet: length,
      figure: drawn
        ? {
            words: text,
            at: [drawn.at[0] - (width / 2) * Math.cos(radians), drawn.at[1] - (width / 2) * Math.sin(radians)],
            width,
            height,
            turn: drawn.turn,
          }
        : null,
      tick: 2.5 / perFoot,
      past: 0,
    };
  });
}
