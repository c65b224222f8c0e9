import { INVENTED_LIST } from './invented-list.ts';
import { listedAs } from './line-for.ts';
import { keyOf, type PriceList, type PriceRow } from './price-list.ts';
import { type CrewMember, crewRate, type Rate } from './rates.ts';

/** A list that was changed by hand is no longer the invented one, though the rest of it is. */
const named = ({ name }: PriceList): string =>
  name === INVENTED_LIST.name ? `own prices, else ${INVENTED_LIST.name}` : name;

/** A list in which an item of this one spec has a line of its own: before the line that prices it so far. */
export function withLine(list: PriceList, { item, spec, ...figures }: PriceRow): PriceList {
  const [as, of] = listedAs(item, spec);
  const line: PriceRow = { item: as, spec: of, ...figures };
  const key = keyOf(as, of);
  const has = list.rows.some((row) => keyOf(row.item, row.spec) === key);
  const rows = has ? list.rows.map((row) => (keyOf(row.item, row.spec) === key ? line : row)) : [...list.rows, line];
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
