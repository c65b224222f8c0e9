import * as v from 'valibot';
import { unprotected } from '../../../circuits/unprotected.ts';
import { nonNegativeFigure, positiveFigure, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';
import { bareAmpacity, bareFields, lacksInsulation, NO_INSULATION, notHeld } from './bare-conductor.ts';

const schema = v.strictObject({
  ...bareFields,
  feederAmps: positiveFigure,
  /** Absent for a tap that supplies a transformer. */
  deviceAmps: v.optional(positiveFigure),
  outdoors: v.optional(v.boolean(), false),
  /** On the level, ft: in a high bay alone. */
  level: v.optional(nonNegativeFigure),
});

export const tapKind = kind(schema, (input, tell) => {
  const { conductor, length, feederAmps, deviceAmps, outdoors, level } = input;
  if (lacksInsulation(input)) return refuse(...NO_INSULATION);
  const one = bareAmpacity(input, tell);
  if (one === null) return refuse(...notHeld(conductor));
  const { ok, asks } = unprotected(
    TABLES,
    {
      of: deviceAmps === undefined ? 'transformer tap' : 'tap',
      ampacity: one * conductor.sets,
      length,
      deviceAmps: deviceAmps ?? null,
      aheadAmps: feederAmps,
      ratio: 1,
      outdoors,
      conductor,
      ...(level === undefined ? {} : { condition: 'high-bay', level }),
    },
    tell,
  );
  return answer({ ok, asks: asks.map(({ section, holds, says }) => ({ section, holds, says })) });
});
