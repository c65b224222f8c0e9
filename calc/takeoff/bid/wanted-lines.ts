import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { isGuess, lineFor, listedAs } from '../../prices/line-for.ts';
import { type PriceList, priceKey } from '../../prices/price-list.ts';
import { PRICE_COLUMNS } from '../../prices/price-sheet.ts';
import { PRICED_WITH_ANOTHER } from './cost.ts';

/** A line that a price list should have for a job. */
export interface WantedLine {
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  /** How much of it the job takes, unrounded. */
  readonly quantity: number;
  readonly why: string;
}

/**
 * The lines that takeoffs need: of a list those that it lacks, or has by a line for any size or beyond a curve; without
 * one all, as a list is begun with. Each as a list has it: a conductor once, whatever its color.
 */
export function wantedLines(takeoff: readonly TakeoffRow[], list: PriceList | null): readonly WantedLine[] {
  const wanted = new Map<string, WantedLine>();
  for (const { item, spec, unit, quantity } of takeoff) {
    if (PRICED_WITH_ANOTHER.has(item)) continue;
    const why = whyWanted(item, spec, unit, list);
    if (why === null) continue;
    const [as, of] = listedAs(item, spec);
    const key = priceKey(as, of);
    wanted.set(key, { item: as, spec: of, unit, quantity: (wanted.get(key)?.quantity ?? 0) + quantity, why });
  }
  return [...wanted.values()];
}

function whyWanted(item: string, spec: string, unit: string, list: PriceList | null): string | null {
  if (list === null) return 'needed';
  const line = lineFor(list.rows, item, spec, unit);
  if (line === null) return 'no price';
  return isGuess(line.how) ? `priced by ${line.line}` : null;
}

/** Wanted lines as a price file to be filled in: material and hours are empty, the last two columns are for who fills it in. */
export const wantedSheet = (lines: readonly WantedLine[]): readonly (readonly (string | number | null)[])[] => [
  [...PRICE_COLUMNS, 'quantity', 'why'],
  ...lines.map(({ item, spec, unit, quantity, why }) => [
    item,
    spec,
    unit,
    null,
    null,
    Number(quantity.toFixed(1)),
    why,
  ]),
];
