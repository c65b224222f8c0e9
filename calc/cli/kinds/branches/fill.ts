import * as v from 'valibot';
import { fill } from '../../../branches/home-runs/fill.ts';
import { findConductorArea } from '../../../tables/conductor-of.ts';
import { hasRaceway, tradeSizes } from '../../../tables/raceway-of.ts';
import { covering, method, size, TABLES, tradeSize, wholeFigure } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  method,
  conductors: v.pipe(v.array(v.strictObject({ size, insulation: covering, count: wholeFigure })), v.minLength(1)),
  tradeSize: v.optional(tradeSize),
  nipple: v.optional(v.boolean()),
});

export const fillKind = kind(schema, (input, tell) => {
  if (tradeSizes(TABLES, input.method).length === 0)
    return refuse(
      'method',
      `${TABLES.raceways.source} has no ${input.method}: its fill is Article 392, which is not covered`,
    );
  if (input.tradeSize !== undefined && !hasRaceway(TABLES, input.method, input.tradeSize))
    return refuse('tradeSize', `${TABLES.raceways.source} has no ${input.method} ${input.tradeSize}`);
  const errors = input.conductors.flatMap(({ size: wanted, insulation }, at) =>
    findConductorArea(TABLES, insulation, wanted) === undefined
      ? [{ place: `conductors[${at}]`, says: `${TABLES.insulated.source} has no ${wanted} ${insulation}` }]
      : [],
  );
  return errors.length > 0 ? { ok: false, errors } : answer(fill(TABLES, input, tell));
});
