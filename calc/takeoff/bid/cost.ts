import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { isGuess, itemNames, lineFor, type PricedHow } from '../../prices/line-for.ts';
import type { PriceList, Quote } from '../../prices/price-list.ts';
import { ratesOf } from '../../prices/rates.ts';
import { steady } from '../../words/steady.ts';
import { SYSTEMS, type TakeoffSystem, takeoffSystem } from '../systems.ts';
import { type Bid, bidOf } from './bid.ts';
import { cents, dealtOut, sumOf } from './money.ts';

export { SYSTEMS } from '../systems.ts';

export interface CostRow {
  readonly item: string;
  readonly spec: string;
  readonly quantity: number;
  /** What is paid for: whole sticks and reels, or the quantity. Hours go by the quantity. */
  readonly bought: number;
  readonly unit: string;
  readonly system: TakeoffSystem;
  /** The line of the list that priced it, or the quote. */
  readonly line: string;
  readonly how: PricedHow | 'quote';
  /** Its quote ran out before the day of the bid. */
  readonly isExpired: boolean;
  /** Dollars a unit of material, and hours a unit before the factors. */
  readonly unitMaterial: number;
  readonly unitHours: number;
  /** How much of it is worked from a ladder, and from a lift. */
  readonly ladder: number;
  readonly lift: number;
  /** Factors on the hours of these. */
  readonly factors: { readonly ladder: number; readonly lift: number };
  /** Factor on its hours for so many alike. */
  readonly repetition: number;
  /** Dollars, to the cent. */
  readonly material: number;
  readonly hours: number;
  /** Of these, those worked from a lift. */
  readonly liftHours: number;
  /** Of these, those that its height adds. */
  readonly heightHours: number;
  readonly labor: number;
  readonly cost: number;
  /** What it prices. */
  readonly taken: TakeoffRow;
}

export interface CostSheet extends Bid {
  readonly prices: string;
  readonly list: PriceList;
  readonly rows: readonly CostRow[];
  /** Items of the takeoff that the list gives no price for: they are in no sum. */
  readonly missing: readonly {
    readonly item: string;
    readonly spec: string;
    readonly quantity: number;
    readonly unit: string;
    readonly system: TakeoffSystem;
    /** What would be priced. */
    readonly taken: TakeoffRow;
  }[];
  /** Rows priced by a line for any size, or beyond a curve. */
  readonly guesses: number;
  readonly bySystem: Readonly<Record<TakeoffSystem, number>>;
  /** Sum of the rows, dollars, and what of it is material and labor. */
  readonly cost: number;
  readonly material: number;
  readonly labor: number;
  readonly hours: number;
  readonly liftHours: number;
  readonly heightHours: number;
  /** Price over the stalls that the chargers serve; null where they serve none. */
  readonly pricePerStall: number | null;
  /** Rows whose quote ran out before the day of the bid. */
  readonly expired: number;
  /** Day of the bid; null where none is given, so that no quote is held against it. */
  readonly bidDay: string | null;
  /** The quotes that are in it, each with how it stands on that day. */
  readonly quotes: readonly StandingQuote[];
  readonly exclusions: readonly string[];
}

/** How a quote stands on the day of the bid. */
export interface StandingQuote extends Quote {
  readonly standing: 'holds' | 'ran out' | 'no date of validity' | 'no day of the bid';
}

/** What of a row is to be looked at before the bid goes out; null where nothing is. */
export const doubtOf = ({ how, isExpired }: Pick<CostRow, 'how' | 'isExpired'>): 'a guess' | 'quote ran out' | null =>
  isExpired ? 'quote ran out' : isGuess(how) ? 'a guess' : null;

function standingOf({ validUntil }: Quote, bidDay: string | undefined): StandingQuote['standing'] {
  if (validUntil === undefined) return 'no date of validity';
  if (bidDay === undefined) return 'no day of the bid';
  return validUntil < bidDay ? 'ran out' : 'holds';
}

/** Bought with the feet of their raceway: they are counted for the order, not priced again. */
export const PRICED_WITH_ANOTHER: ReadonlySet<string> = new Set(['raceway stick', 'reel']);

/**
 * What a takeoff costs by a price list, as a bill and as a bid: material and labor a row, to the cent, so that the sums are
 * the sums of what is shown. Material is that of what must be bought: whole sticks and reels. `lineFor` says which line prices a row; what fits none is listed as missing. Hours are the
 * line's by the factors for ladder, lift and repetition. Material that a quote covers is its share of the lump, by what the
 * list would have it cost; those that ran out before the list's day of the bid are told.
 */
export function costOf(takeoff: readonly TakeoffRow[], list: PriceList, stallsServed: number): CostSheet {
  const rows: CostRow[] = [];
  const missing: CostSheet['missing'][number][] = [];
  for (const row of takeoff) {
    if (PRICED_WITH_ANOTHER.has(row.item)) continue;
    const { item, spec, quantity, unit } = row;
    const priced = costRow(row, list);
    if (priced) rows.push(priced);
    else missing.push({ item, spec, quantity, unit, system: takeoffSystem(item, spec), taken: row });
  }
  const quotes = withQuotes(
    rows,
    (list.quotes ?? []).map((quote) => ({ ...quote, standing: standingOf(quote, list.bidDay) })),
  );
  const bySystem = Object.fromEntries(
    SYSTEMS.map((system) => [system, sumOf(rows.filter((row) => row.system === system).map(({ cost }) => cost))]),
  ) as Record<TakeoffSystem, number>;
  const material = sumOf(rows.map((row) => row.material));
  const labor = sumOf(rows.map((row) => row.labor));
  const liftHours = rows.reduce((sum, row) => sum + row.liftHours, 0);
  const groundHours = rows.reduce((sum, row) => sum + (row.system === 'ground' ? row.hours : 0), 0);
  const bid = bidOf({ material, labor, liftHours, groundHours }, list);
  return {
    ...bid,
    prices: list.name,
    list,
    rows,
    missing,
    guesses: rows.filter(({ how }) => isGuess(how)).length,
    bySystem,
    cost: sumOf([material, labor]),
    material,
    labor,
    hours: rows.reduce((sum, row) => sum + row.hours, 0),
    liftHours,
    heightHours: rows.reduce((sum, row) => sum + row.heightHours, 0),
    pricePerStall: stallsServed > 0 ? cents(bid.price / stallsServed) : null,
    expired: rows.filter(({ isExpired }) => isExpired).length,
    bidDay: list.bidDay ?? null,
    quotes,
    exclusions: list.exclusions ?? [],
  };
}

/** A row by the list; null where neither a line nor a quote has it. */
function costRow(taken: TakeoffRow, list: PriceList): CostRow | null {
  const { item, spec, quantity, high, lift = 0, unit } = taken;
  const bought = taken.bought?.quantity ?? quantity;
  const price = lineFor(list.rows, item, spec, unit);
  const isQuoted = (list.quotes ?? []).some((quote) => covers(quote, item, spec));
  if (!price && !isQuoted) return null;
  const { line, how, material: unitMaterial, hours: unitHours } = price ?? NO_LINE;
  const rates = ratesOf(list.rates);
  const repetition = unit === 'each' ? repetitionFactor(quantity, rates.repetition, rates.alike) : 1;
  const ladder = high - lift;
  const higher = ladder * (rates.height - 1) + lift * (rates.lift - 1);
  const hours = (quantity + higher) * unitHours * repetition;
  const material = cents(bought * unitMaterial);
  const labor = cents(hours * rates.labor);
  return {
    item,
    spec,
    quantity,
    bought,
    unit,
    system: takeoffSystem(item, spec),
    line,
    how,
    isExpired: false,
    unitMaterial,
    unitHours,
    ladder,
    lift,
    factors: { ladder: rates.height, lift: rates.lift },
    repetition,
    material,
    hours,
    liftHours: lift * rates.lift * unitHours * repetition,
    heightHours: higher * unitHours * repetition,
    labor,
    cost: sumOf([material, labor]),
    taken,
  };
}

const NO_LINE = { line: 'no line', how: 'quote', material: 0, hours: 0 } as const;

/**
 * Factor on the hours of so many pieces alike: at each doubling beyond `alike` their average is `share` of what it was
 * (T. P. Wright, Factors affecting the cost of airplanes, 1936: the cumulative average).
 */
export const repetitionFactor = (count: number, share: number, alike: number): number =>
  count > alike && share > 0 ? steady((count / Math.max(alike, 1)) ** Math.log2(share)) : 1;

const covers = ({ covers: items }: Quote, item: string, spec: string): boolean =>
  itemNames(item, spec).some(([as, of]) => items.includes(as) || items.includes(`${as}, ${of}`));

/** How many rows of a bill stand on a quote. */
export const quotedRows = ({ rows }: Pick<CostSheet, 'rows'>, { name }: Pick<Quote, 'name'>): number =>
  rows.filter(({ how, line }) => how === 'quote' && line === lineOfQuote(name)).length;

const lineOfQuote = (name: string): string => `quote: ${name}`;

/** Deals each quote out to the rows that it covers; the first that covers a row has it. Quotes that cover none cost nothing. */
function withQuotes(rows: CostRow[], quotes: readonly StandingQuote[]): readonly StandingQuote[] {
  const taken = new Set<number>();
  return quotes.filter((quote) => {
    const places = rows.flatMap(({ item, spec }, i) => (!taken.has(i) && covers(quote, item, spec) ? [i] : []));
    const shares = dealtOut(
      quote.material,
      places.map((i) => rows[i]!.material),
    );
    places.forEach((i, n) => {
      taken.add(i);
      const row = rows[i]!;
      const material = shares[n]!;
      const unitMaterial = row.bought > 0 ? material / row.bought : 0;
      const line = lineOfQuote(quote.name);
      const isExpired = quote.standing === 'ran out';
      const cost = sumOf([material, row.labor]);
      rows[i] = { ...row, line, how: 'quote', isExpired, unitMaterial, material, cost };
    });
    return places.length > 0;
  });
}
