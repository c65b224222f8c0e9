/** So many of one kind are told one by one. */
const MOST_ALIKE = 5;

/** What a reason says but for where and how much: of reasons alike it is the same. */
const kindOf = (reason: string): string =>
  reason
    .replace(/^line \d+: /, '')
    .replace(/\[\d+\]/g, '[]')
    .replace(/, got .*$/s, '');

/** Reasons in their order, of those alike the first few, the last of these with how many more there are. */
export function fewAlike(reasons: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const reason of reasons) counts.set(kindOf(reason), (counts.get(kindOf(reason)) ?? 0) + 1);
  const told = new Map<string, number>();
  return reasons.flatMap((reason) => {
    const kind = kindOf(reason);
    const nth = (told.get(kind) ?? 0) + 1;
    told.set(kind, nth);
    const more = counts.get(kind)! - MOST_ALIKE;
    if (nth > MOST_ALIKE) return [];
    return [nth === MOST_ALIKE && more > 0 ? `${reason} (and ${more} more like it)` : reason];
  });
}
