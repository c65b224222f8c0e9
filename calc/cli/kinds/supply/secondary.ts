import * as v from 'valibot';
import { unprotected } from '../../../circuits/unprotected.ts';
import { nonNegativeFigure, positiveFigure, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';
import { bareAmpacity, bareFields, lacksInsulation, NO_INSULATION, notHeld } from './bare-conductor.ts';

const schema = v.strictObject({
  ...bareFields,
  deviceAmps: positiveFigure,
  primaryAmps: positiveFigure,
  primaryVolts: positiveFigure,
  secondaryVolts: positiveFigure,
  outdoors: v.optional(v.boolean(), false),
  tapLength: v.optional(nonNegativeFigure),
  ratedAmps: v.optional(positiveFigure),
});

export const secondaryKind = kind(schema, (input, tell) => {
  const { conductor, length, deviceAmps, primaryAmps, primaryVolts, secondaryVolts, outdoors } = input;
  if (lacksInsulation(input)) return refuse(...NO_INSULATION);
  const one = bareAmpacity(input, tell);
  if (one === null) return refuse(...notHeld(conductor));
  const { ok, asks } = unprotected(
    TABLES,
    {
      of: input.tapLength === undefined ? 'secondary' : 'tapped secondary',
      ampacity: one * conductor.sets,
      length,
      deviceAmps,
      aheadAmps: primaryAmps,
      ratio: primaryVolts / secondaryVolts,
      outdoors,
      ...(input.tapLength === undefined ? {} : { primaryLength: input.tapLength }),
      ...(input.ratedAmps === undefined ? {} : { condition: 'industrial', ratedAmps: input.ratedAmps }),
    },
    tell,
  );
  return answer({ ok, asks: asks.map(({ section, holds, says }) => ({ section, holds, says })) });
});
