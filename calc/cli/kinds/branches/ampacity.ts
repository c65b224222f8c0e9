import * as v from 'valibot';
import { ampacity } from '../../../circuits/ampacity.ts';
import { finite, insulation, metal, size, TABLES, terminalC, wholeNumber } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  conductor: v.strictObject({ size, metal, insulation }),
  ambientC: finite,
  currentCarrying: wholeNumber,
  terminalC: v.optional(terminalC),
});

export const ampacityKind = kind(schema, (input, tell) => {
  const result = ampacity(TABLES, input, tell);
  const { size: wanted, metal: of, insulation: under } = input.conductor;
  return result === null
    ? refuse('conductor.size', `${TABLES.ampacity.source} has no ${wanted} ${of} ${under}`)
    : answer(result);
});
