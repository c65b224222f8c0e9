import * as v from 'valibot';
import { ampacity } from '../../circuits/ampacity.ts';
import { unprotected } from '../../circuits/unprotected.ts';
import { ampacityAt } from '../../tables/lookup.ts';
import type { Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { finite, insulation, metal, nonNegative, positive, size, TABLES, terminalC, wholePositive } from './fields.ts';
import { answer, kind, refuse } from './kind.ts';

const schema = v.strictObject({
  conductor: v.strictObject({
    size,
    metal,
    sets: v.optional(wholePositive, 1),
    insulation: v.optional(insulation),
  }),
  length: nonNegative,
  deviceAmps: positive,
  primaryAmps: positive,
  primaryVolts: positive,
  secondaryVolts: positive,
  outdoors: v.optional(v.boolean(), false),
  ambientC: v.optional(finite),
  terminalC: v.optional(terminalC, 75),
});

type Input = v.InferOutput<typeof schema>;

export const secondaryKind = kind(schema, (input, tell) => {
  const { conductor, length, deviceAmps, primaryAmps, primaryVolts, secondaryVolts, outdoors } = input;
  if (input.ambientC !== undefined && conductor.insulation === undefined)
    return refuse('conductor.insulation', 'missing: an ambient corrects by the insulation');
  const one = ampacityOf(input, tell);
  if (one === null)
    return refuse('conductor.size', `${TABLES.ampacity.source} has no ${conductor.size} ${conductor.metal}`);
  const { ok, asks } = unprotected(
    TABLES,
    {
      of: 'secondary',
      ampacity: one * conductor.sets,
      length,
      deviceAmps,
      aheadAmps: primaryAmps,
      ratio: primaryVolts / secondaryVolts,
      outdoors,
    },
    tell,
  );
  return answer({ ok, asks: asks.map(({ section, holds, says }) => ({ section, holds, says })) });
});

/** Of one set, three conductors with current: in the column of the terminals where no insulation is given. */
function ampacityOf({ conductor, ambientC = 30, terminalC: terminals }: Input, tell: Tell): number | null {
  const { size: of, metal: made, insulation: under } = conductor;
  if (under !== undefined) {
    const given = { conductor: { size: of, metal: made, insulation: under }, ambientC, terminalC: terminals };
    return ampacity(TABLES, { ...given, currentCarrying: 3 }, tell)?.ampacity ?? null;
  }
  const amps = ampacityAt(TABLES, of, made, terminals);
  if (amps !== null)
    tell(() => ({
      find: 'ampacity',
      formula: 'of the size in the column of the terminals, at 30 °C, no insulation given',
      values: { conductor: `${of} ${made}`, column: `${terminals} °C` },
      result: measured(amps, 'A'),
      source: TABLES.ampacity.source,
    }));
  return amps;
}
