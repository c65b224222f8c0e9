import * as v from 'valibot';
import { pulling } from '../../../branches/pulls/pulling.ts';
import { finite, nonNegativeFigure, positiveFigure } from '../fields.ts';
import { answer, kind } from '../kind.ts';

const segment = v.variant('kind', [
  v.strictObject({
    kind: v.literal('straight'),
    length: nonNegativeFigure,
    slope: v.optional(v.pipe(finite, v.minValue(-90), v.maxValue(90))),
  }),
  v.strictObject({ kind: v.literal('bend'), angle: nonNegativeFigure, radius: positiveFigure }),
]);

const schema = v.strictObject({
  segments: v.pipe(v.array(segment), v.minLength(1)),
  weightPerFoot: nonNegativeFigure,
  friction: nonNegativeFigure,
  tensionIn: v.optional(nonNegativeFigure),
});

export const pullingKind = kind(schema, (input, tell) => answer(pulling(input, tell)));
