import * as v from 'valibot';
import { cut } from '../../takeoff/cut.ts';
import { nonNegative, positive } from './fields.ts';
import { answer, kind } from './kind.ts';

const schema = v.strictObject({ stock: positive, pieces: v.array(positive), kerf: v.optional(nonNegative, 0) });

export const cutKind = kind(schema, (input, tell) => {
  const errors = input.pieces.flatMap((piece, at) =>
    piece > input.stock ? [{ place: `pieces[${at}]`, says: `longer than the stock of ${input.stock}` }] : [],
  );
  return errors.length > 0 ? { ok: false, errors } : answer(cut(input, tell));
});
