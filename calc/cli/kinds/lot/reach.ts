import * as v from 'valibot';
import { neededLength } from '../../../../routing/reach/cords/needed-length.ts';
import { measured } from '../../../words/measured.ts';
import { finite } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const point3 = v.strictTuple([finite, finite, finite]);
const outline = v.pipe(v.array(v.strictTuple([finite, finite])), v.minLength(3));

const schema = v.strictObject({ retractor: point3, inlet: point3, around: v.optional(v.array(outline), []) });

/** With more corners than this, ways round them all are more than are sought in a few seconds. */
const MOST_CORNERS = 4000;

export const reachKind = kind(schema, (input, tell) => {
  const corners = input.around.reduce((sum, outline) => sum + outline.length, 0);
  if (corners > MOST_CORNERS) {
    const number = (count: number): string => count.toLocaleString('en-US');
    const says = `${number(corners)} corners are more than the ${number(MOST_CORNERS)} round which a way is sought; leave out the outlines that lie far from the straight way`;
    return refuse('around', says);
  }
  const { needed, planLength, path } = neededLength(input);
  tell(() => ({
    find: 'plan length',
    formula: 'shortest path in plan that stays out of every outline, but those that hold the retractor',
    values: { way: path.map((at) => `(${at.map((part) => Number(part.toPrecision(6))).join(', ')})`).join(' ') },
    result: planLength ?? 'no way',
    unit: 'ft',
    source: 'shortest path in the plane round obstacles, exact',
  }));
  if (planLength !== null && needed !== null)
    tell(() => ({
      find: 'needed cord',
      formula: 'sqrt(plan length² + difference of height²)',
      values: {
        'plan length': measured(planLength, 'ft'),
        'difference of height': measured(input.retractor[2] - input.inlet[2], 'ft'),
      },
      result: needed,
      unit: 'ft',
      source: 'the taut cord, a lower bound on comfort',
    }));
  return answer({ needed, planLength });
});
