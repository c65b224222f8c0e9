import * as v from 'valibot';
import {
  dayFields,
  dayLimitSchema,
  daySearchSchema,
  STRATEGY_NAMES,
} from '../../../../routing/site/schema/day-schema.ts';
import type { NewLinearProgram } from '../../../day/optimum/linear-program.ts';
import { readDay } from '../../../day/read-day.ts';
import { STRATEGIES } from '../../../day/rules/rules.ts';
import { type BestOutcome, charge, isSolvable, type StrategyOutcome } from '../../../day/simulated/charge.ts';
import { tellCharge } from '../../../day/simulated/charge-steps.ts';
import { nonNegativeFigure, positiveFigure, wholeFigure } from '../fields.ts';
import { answer, type CalcKind, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  ...dayFields,
  chargers: v.pipe(
    v.array(
      v.strictObject({
        id: v.pipe(v.string(), v.nonEmpty()),
        lines: v.picklist(['AB', 'BC', 'CA', 'ABC']),
        amps: positiveFigure,
        volts: positiveFigure,
        stalls: v.optional(wholeFigure, 1),
        minAmps: v.optional(nonNegativeFigure, 6),
      }),
    ),
    v.maxLength(20_000),
  ),
  limits: v.pipe(v.array(dayLimitSchema), v.maxLength(200)),
  strategies: v.optional(v.array(v.picklist(STRATEGY_NAMES)), [...STRATEGIES]),
  optimum: v.optional(v.boolean(), true),
  search: v.optional(daySearchSchema, {}),
  amps: v.optional(v.boolean(), false),
  proof: v.optional(v.boolean(), false),
});

/** A day of charging, by the rules and at its best; the best needs a solver of linear programs. */
export const chargeKind = (newProgram: NewLinearProgram): CalcKind =>
  kind(schema, ({ chargers, limits, strategies, search, amps, proof, ...fields }, tell) => {
    const twice = chargers.findIndex(({ id }, i) => chargers.findIndex((one) => one.id === id) < i);
    if (twice >= 0) return refuse(`chargers[${twice}].id`, `"${chargers[twice]!.id}" is there twice`);
    const read = readDay(fields, chargers, limits);
    if (!read.ok) return { ok: false, errors: read.errors };
    const { ceiling, share = 1, more = false } = search;
    if (ceiling !== undefined && !limits.some(({ id }) => id === ceiling))
      return refuse('search.ceiling', `there is no limit "${ceiling}"`);
    const needsSolver = fields.optimum || ceiling !== undefined;
    if (needsSolver && !isSolvable(read.day))
      return refuse(
        'cars',
        'too many cars and steps for the best schedule: a longer step, or "optimum": false and no search',
      );
    const wish = {
      strategies,
      optimum: fields.optimum,
      amps,
      search: { share, more, ...(ceiling !== undefined && { ceiling }) },
    };
    const charged = charge(read.day, wish, needsSolver ? newProgram : null);
    tellCharge(charged, tell);
    const { cars, strategies: outcomes, optimum } = charged;
    return answer({
      cars,
      strategies: Object.fromEntries(Object.entries(outcomes).map(([name, one]) => [name, plain(one)])),
      ...(optimum !== null && { optimum: best(optimum, amps, proof, fields.tariff !== undefined) }),
    });
  });

const lists = (amps: readonly Float64Array[]): number[][] => amps.map((one) => Array.from(one));

const plain = ({ amps, ...one }: StrategyOutcome): object => ({ ...one, ...(amps && { amps: lists(amps) }) });

const best = (
  { amps, proof, got: _, costBound, ...one }: BestOutcome,
  withAmps: boolean,
  withProof: boolean,
  priced: boolean,
): object => ({
  ...one,
  ...(priced && { costBound }),
  ...(withAmps && { amps: lists(amps) }),
  ...(withProof && { proof }),
});
