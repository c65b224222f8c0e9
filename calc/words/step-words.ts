import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { printTemperature } from '../../routing/site/numbers/temperature.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';

/** A length as the steps tell it. */
const FEET = /^(-?[\d.]+(?:e[+-]?\d+)?) ft$/;

/** A figure of a step: six significant digits, lengths and temperatures as elsewhere on the page, a word as it is. */
export function stepFigure(value: string | number, units: Units, unit?: string): string {
  if (typeof value === 'string') {
    const feet = FEET.exec(value);
    return feet ? printLength(Number(feet[1]), units) : withUnit(value.replace(/ %$/, '%'), unit);
  }
  if (unit === 'ft') return printLength(value, units);
  if (unit === '°C') return printTemperature(value);
  return withUnit(String(Number(value.toPrecision(6))), unit);
}

const withUnit = (words: string, unit: string | undefined): string =>
  unit === undefined || unit === '' ? words : unit === '%' ? `${words}%` : `${words} ${unit}`;
