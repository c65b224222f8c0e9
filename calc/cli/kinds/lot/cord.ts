import * as v from 'valibot';
import { cord } from '../../../circuits/cord.ts';
import { finite, nonNegativeFigure, phases, positiveFigure, size, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  amps: positiveFigure,
  volts: positiveFigure,
  phases,
  length: nonNegativeFigure,
  size: v.optional(size),
  ambientC: v.optional(finite),
});

export const cordKind = kind(schema, (input, tell) => {
  const found = cord(TABLES, input, tell);
  if (found !== null) return answer(found);
  return input.size === undefined
    ? refuse('amps', `more than any cord of ${TABLES.cords.source} carries there`)
    : refuse('size', `no cord of that size in ${TABLES.cords.source}, or no resistance of it`);
});
