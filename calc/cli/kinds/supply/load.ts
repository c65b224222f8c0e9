import * as v from 'valibot';
import { serviceLoad } from '../../../supply/service/balanced-load.ts';
import { nonNegativeFigure, phases, positiveFigure, TABLES, wholeFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  volts: positiveFigure,
  phases,
  chargers: v.array(
    v.strictObject({
      count: wholeFigure,
      amps: positiveFigure,
      volts: v.optional(positiveFigure),
      phases: v.optional(phases),
    }),
  ),
  managedAmps: v.optional(positiveFigure),
  loads: v.optional(
    v.array(v.strictObject({ name: v.optional(v.string()), va: nonNegativeFigure, continuous: v.boolean() })),
  ),
  existingAmps: v.optional(positiveFigure),
  ratingAmps: v.optional(positiveFigure),
});

/** What of a load calculation a single one answers: the rest is what was asked. */
export const loadKind = kind(schema, (input, tell) => {
  if (input.phases === 1 && input.chargers.some((one) => one.phases === 3))
    return refuse('chargers', 'three-phase chargers on a single-phase service');
  const { chargers, managed, cases, decides, designAmps, ratingAmps, spareAmps, transformerKva } = serviceLoad(
    TABLES,
    input,
    tell,
  );
  const fits = cases.find(({ method }) => method === decides)?.fits ?? null;
  return answer({
    chargers: chargers.map(({ count, nameplateVa, unitVa }) => ({ count, nameplateVa, unitVa })),
    ...(managed[0] !== undefined && { managedVa: Math.min(managed[0].unitVa, managed[0].ceilingVa) }),
    cases: cases.map(({ method, kva, amps, designAmps: design, fits: fitting }) => ({
      method,
      kva,
      amps: amps[0],
      designAmps: design[0],
      ...(fitting !== null && { fits: fitting }),
    })),
    decides,
    designAmps,
    ...(ratingAmps !== null && { fits, spareAmps }),
    transformerKva,
  });
});
