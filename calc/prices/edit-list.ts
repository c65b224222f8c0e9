import { listedAs } from './line-for.ts';
import { type Allowance, INVENTED_NAME, type PriceList, type PriceRow, priceKey, type Quote } from './price-list.ts';
import { type CrewMember, crewRate, type Rate } from './rates.ts';

/** A list that was changed by hand is no longer the invented one, though the rest of it is. */
const named = ({ name }: PriceList): string => {
  if (name === INVENTED_NAME) return `${BY_HAND[0]}, else ${INVENTED_NAME}`;
  return isByHand({ name }) ? name : `${name}${BY_HAND[1]}`;
};
const BY_HAND = ['own prices', ', changed by hand'] as const;

/** Whether a list was changed where its prices stand: two of one name may then differ. */
export const isByHand = ({ name }: Pick<PriceList, 'name'>): boolean =>
  name.startsWith(BY_HAND[0]) || name.endsWith(BY_HAND[1]);

/** A list in which an item of this one spec has a line of its own: before the line that prices it so far. */
export function withLine(list: PriceList, { item, spec, ...figures }: PriceRow): PriceList {
  const [as, of] = listedAs(item, spec);
  const line: PriceRow = { item: as, spec: of, ...figures };
  const key = priceKey(as, of);
  const has = list.rows.some((row) => priceKey(row.item, row.spec) === key);
  const rows = has ? list.rows.map((row) => (priceKey(row.item, row.spec) === key ? line : row)) : [...list.rows, line];
  return { ...list, name: named(list), rows };
}

/** A list with another rate. An own labor rate takes the place of the crew; the burden changes what the crew comes to. */
export function withRate(list: PriceList, rate: Rate, value: number): PriceList {
  const { crew, ...rest } = list;
  const rates = { ...list.rates, [rate]: value };
  const name = named(list);
  if (rate === 'labor' || crew === undefined) return { ...rest, name, rates };
  return withCrew({ ...list, rates }, crew);
}

/** A list with another crew, whose average with the burden is the labor rate. */
export function withCrew(list: PriceList, crew: readonly CrewMember[]): PriceList {
  const labor = crewRate(crew, list.rates.burden ?? 0);
  return { ...list, name: named(list), crew, rates: { ...list.rates, labor } };
}

/** A list with other quotes. */
export const withQuotes = (list: PriceList, quotes: readonly Quote[]): PriceList => ({
  ...list,
  name: named(list),
  quotes,
});

/** A list with other allowances. */
export const withAllowances = (list: PriceList, allowances: readonly Allowance[]): PriceList => ({
  ...list,
  name: named(list),
  allowances,
});

/** A list with other exclusions. */
export const withExclusions = (list: PriceList, exclusions: readonly string[]): PriceList => ({
  ...list,
  name: named(list),
  exclusions,
});

/** A list with another day of the bid, or with none of its own: its prices are the same. */
export function withBidDay({ bidDay: _, ...list }: PriceList, bidDay: string | undefined): PriceList {
  return { ...list, ...(bidDay !== undefined && { bidDay }) };
}
