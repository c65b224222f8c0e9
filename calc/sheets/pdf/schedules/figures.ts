import { printLength, printTotal } from '../../../../routing/site/numbers/feet-inches.ts';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Gridline, Site } from '../../../../routing/site/site.ts';

/** What stands in a cell that has nothing to say. */
export const NONE = '–';

/** A length of the plan, or a dash. */
export const lengthWords = (feet: number | null | undefined, units: Units): string =>
  feet === null || feet === undefined ? NONE : printLength(feet, units);

/** A figure with so many decimals, or a dash. */
export const figure = (value: number | null | undefined, decimals: number): string =>
  value === null || value === undefined || !Number.isFinite(value) ? NONE : value.toFixed(decimals);

/** Amperes: whole from 100 on, one decimal below. */
export const ampsFigure = (amps: number | undefined): string =>
  amps === undefined ? NONE : amps >= 100 ? String(Math.round(amps)) : String(Number(amps.toFixed(1)));

/** A quantity of the takeoff in the units of the site. */
export const takeoffQuantity = (
  quantity: number,
  unit: string,
  units: Units,
): readonly [quantity: string, unit: string] => {
  if (unit !== 'ft') return [String(Number(quantity.toFixed(2))), unit];
  const [words = NONE, name = units] = printTotal(quantity, units).split(' ');
  return [words, name];
};

/** A coordinate as it is set out: `2 + 4' 6"` is past gridline 2, `2 - 4' 6"` before it; from the origin without any. */
export function fromGridlineWords(lines: readonly Gridline[], value: number, units: Site['units']): string {
  const from = fromGridline(lines, value);
  if (from === null) return printLength(value, units);
  const distance = printLength(Math.abs(from.offset), units);
  if (distance === printLength(0, units)) return `on ${from.label}`;
  return `${from.label} ${from.offset < 0 ? '−' : '+'} ${distance}`;
}
