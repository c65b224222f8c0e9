import * as v from 'valibot';
import { cut } from '../../takeoff/cut.ts';
import { nonNegative, positive } from './fields.ts';
import { answer, kind, refuse } from './kind.ts';

const schema = v.strictObject({
  stock: positive,
  pieces: v.array(positive),
  kerf: v.exactOptional(nonNegative),
});

export const cutKind = kind(schema, (wish, tell) => {
  const long = wish.pieces.findIndex((piece) => piece > wish.stock);
  if (long >= 0)
    return refuse(`pieces[${long}]`, `a piece of ${wish.pieces[long]} is longer than the stock of ${wish.stock}`);
  return answer(cut(wish, tell));
});
