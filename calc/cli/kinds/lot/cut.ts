import * as v from 'valibot';
import { cut } from '../../../takeoff/cutting/cut.ts';
import { nonNegativeFigure, positiveFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  stock: positiveFigure,
  pieces: v.array(positiveFigure),
  kerf: v.optional(nonNegativeFigure, 0),
});

/** Past these, plans in which every stock has a count of every size would not be held in memory. */
const MOST_PIECES = 20_000;
const MOST_SIZES = 2000;

export const cutKind = kind(schema, (input, tell) => {
  const { pieces, stock } = input;
  if (pieces.length > MOST_PIECES)
    return refuse(
      'pieces',
      `${number(pieces.length)} pieces are more than the ${number(MOST_PIECES)} that are planned`,
    );
  const sizes = new Set(pieces).size;
  if (sizes > MOST_SIZES)
    return refuse(
      'pieces',
      `${number(sizes)} different lengths are more than the ${number(MOST_SIZES)} that are planned`,
    );
  const errors = pieces.flatMap((piece, at) =>
    piece > stock ? [{ place: `pieces[${at}]`, says: `longer than the stock of ${stock}` }] : [],
  );
  return errors.length > 0 ? { ok: false, errors } : answer(cut(input, tell));
});

const number = (count: number): string => count.toLocaleString('en-US');
