import * as v from 'valibot';
import { transformer } from '../../supply/transformers/transformer.ts';
import { nonNegative, phases, positive, powerFactor } from './fields.ts';
import { answer, kind } from './kind.ts';

const schema = v.strictObject({
  kva: positive,
  primaryVolts: positive,
  secondaryVolts: positive,
  phases,
  impedancePercent: v.optional(positive),
  xr: v.optional(nonNegative),
  loadKva: v.optional(nonNegative),
  powerFactor: v.optional(powerFactor),
  leading: v.optional(v.boolean()),
});

export const transformerKind = kind(schema, (input, tell) => answer(transformer(input, tell)));
