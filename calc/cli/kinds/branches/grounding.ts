import * as v from 'valibot';
import { grounding } from '../../../circuits/grounding.ts';
import { metal, positiveFigure, size, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

/** A size by itself, or a conductor of which only the size counts. */
const conductor = v.union([
  size,
  v.pipe(
    v.strictObject({
      size,
      metal: v.optional(metal),
      insulation: v.optional(v.string()),
      sets: v.optional(v.number()),
    }),
    v.transform(({ size: only }) => only),
  ),
]);

const schema = v.strictObject({
  breakerAmps: positiveFigure,
  metal,
  conductor: v.optional(conductor),
  conductorNeeded: v.optional(conductor),
});

export const groundingKind = kind(schema, (input, tell) => {
  if (input.conductorNeeded !== undefined && input.conductor === undefined)
    return refuse('conductor', 'missing: conductorNeeded is compared with it');
  if (input.breakerAmps > (TABLES.grounding.rows.at(-1)?.breakerAmps ?? 0))
    return refuse('breakerAmps', `past the end of ${TABLES.grounding.source}`);
  return answer({ grounding: grounding(TABLES, input, tell) });
});
