import type { DropHeld } from './hold-drop.ts';

/** So many names are written out; of more there is a count. */
const MOST_NAMED = 6;

/**
 * What was made larger than its load asks for, so that the drop from nominal to each box is within its limit, and what that
 * adds to the price.
 */
export function dropWords({ widened, larger, limited, dollars }: Omit<DropHeld, 'file'>): readonly string[] {
  const to = [...new Set(limited.values())].sort((a, b) => b - a);
  const more = `$${Math.round(dollars).toLocaleString('en-US')}`;
  return [
    ...some(
      widened,
      (has) =>
        `${has('has', 'have')} larger conductors, or more in parallel, than the breaker asks for, to hold the drop.`,
    ),
    ...some(larger, (is) => `${is('is', 'are')} larger than the load asks for, to hold the drop.`),
    ...to.map((limit) => {
      const panels = [...limited].flatMap(([id, own]) => (own === limit ? [id] : []));
      return `Branches out of ${listed(panels)} are held to a drop of ${limit}%, so that what feeds ${panels.length === 1 ? 'it' : 'them'} may lose more: those that would lose more than that have larger conductors.`;
    }),
    ...(widened.length + larger.length + limited.size > 0 ? [`Holding the drop adds about ${more} to the price.`] : []),
  ];
}

const some = (
  names: readonly string[],
  says: (verb: (one: string, many: string) => string) => string,
): readonly string[] =>
  names.length === 0 ? [] : [`${listed(names)} ${says((one, many) => (names.length === 1 ? one : many))}`];

const listed = (names: readonly string[]): string =>
  names.length <= MOST_NAMED
    ? names.join(', ')
    : `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more`;
