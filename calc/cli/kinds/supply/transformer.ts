import * as v from 'valibot';
import { transformer } from '../../../supply/transformers/transformer.ts';
import { nonNegativeFigure, phases, positiveFigure, powerFactor } from '../fields.ts';
import { answer, kind } from '../kind.ts';

const schema = v.strictObject({
  kva: positiveFigure,
  primaryVolts: positiveFigure,
  secondaryVolts: positiveFigure,
  phases,
  impedancePercent: v.optional(positiveFigure),
  xr: v.optional(nonNegativeFigure),
  loadKva: v.optional(nonNegativeFigure),
  powerFactor: v.optional(powerFactor),
  leading: v.optional(v.boolean()),
});

export const transformerKind = kind(schema, (input, tell) => answer(transformer(input, tell)));
