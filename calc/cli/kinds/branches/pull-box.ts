import * as v from 'valibot';
import { pullBox } from '../../../branches/boxes/pull-box.ts';
import { TABLES, tradeSize } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({
  /** True: the raceways of `rows` go straight through. Or the trade sizes that do, besides the rows that turn. */
  straight: v.optional(v.union([v.boolean(), tradeSize, v.array(tradeSize)]), false),
  rows: v.optional(v.array(v.strictObject({ entries: v.pipe(v.array(tradeSize), v.minLength(1)) })), []),
});

export const pullBoxKind = kind(schema, ({ straight, rows }, tell) => {
  const entries = rows.map((row) => row.entries);
  const through = typeof straight === 'boolean' ? (straight ? entries.flat() : []) : [straight].flat();
  const turning = straight === true ? [] : entries;
  if (through.length + turning.length === 0) return refuse('rows', 'expected at least one raceway');
  return answer(pullBox(TABLES, { straight: through, rows: turning }, tell));
});
