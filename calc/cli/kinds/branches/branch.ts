import * as v from 'valibot';
import { branch, branchBreaker } from '../../../circuits/branch.ts';
import { lineAmps } from '../../../circuits/line-amps.ts';
import { finite, insulation, metal, phases, positiveFigure, TABLES, terminalC, wholeNumber } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  amps: v.optional(positiveFigure),
  va: v.optional(positiveFigure),
  volts: v.optional(positiveFigure),
  phases: v.optional(phases),
  continuous: v.boolean(),
  metal,
  insulation,
  ambientC: finite,
  currentCarrying: wholeNumber,
  terminalC,
});

export const branchKind = kind(schema, ({ amps: given, va, volts, phases: of, ...duty }, tell) => {
  if ((given === undefined) === (va === undefined))
    return refuse('amps', 'expected either amps, or va with volts and phases');
  if (va !== undefined && volts === undefined) return refuse('volts', 'missing: va needs volts and phases');
  if (va !== undefined && of === undefined) return refuse('phases', 'missing: va needs volts and phases');
  const amps = given ?? lineAmps(va ?? 0, volts ?? 1, of ?? 1);
  if (va !== undefined)
    tell(() => ({
      find: 'load',
      formula: of === 3 ? 'VA / (sqrt 3 x volts)' : 'VA / volts',
      values: { VA: va, volts: `${volts} V` },
      result: amps,
      unit: 'A',
      source: 'definition',
    }));
  const result = branch(TABLES, { ...duty, amps }, tell);
  if (result !== null) return answer(result);
  return Number.isFinite(branchBreaker(TABLES, amps, duty.continuous))
    ? refuse(
        '',
        `no single conductor of ${TABLES.ampacity.source} does this: use conductors in parallel, or a cooler, emptier raceway`,
      )
    : refuse('', `no standard rating of ${TABLES.standardRatings.source} is so large`);
});
