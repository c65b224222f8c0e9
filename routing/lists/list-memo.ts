/**
 * A mapping over lists that keeps its results by the identity of the items. `good` says whether a kept record still
 * holds. The last list and its records are at hand, so that going through a list of which one item is new costs a
 * comparison an item; behind them every item keeps its own record, for lists put together otherwise.
 */
export function listMemo<T extends object, C, R>(
  make: (item: T, context: C) => R,
  good: (record: R, context: C) => boolean,
): { readonly one: (item: T, context: C) => R; readonly all: (items: readonly T[], context: C) => readonly R[] } {
  const kept = new WeakMap<T, R>();
  let last: { readonly items: readonly T[]; readonly records: readonly R[] } = { items: [], records: [] };
  const one = (item: T, context: C): R => {
    const known = kept.get(item);
    if (known !== undefined && good(known, context)) return known;
    const record = make(item, context);
    kept.set(item, record);
    return record;
  };
  const all = (items: readonly T[], context: C): readonly R[] => {
    const records = items.map((item, i) => {
      const known = last.items[i] === item ? last.records[i] : undefined;
      return known !== undefined && good(known, context) ? known : one(item, context);
    });
    last = { items, records };
    return records;
  };
  return { one, all };
}
