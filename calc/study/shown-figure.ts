import { printLength, printTotal } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { FIGURES, type WayFigure } from './figures.ts';

const TOTALS: ReadonlySet<WayFigure> = new Set(['raceway', 'trench']);

/** A figure as it is read, with its unit; a dash where there is none such. */
export function shownFigure(figure: WayFigure, value: number | null, units: Units): string {
  if (value === null || !Number.isFinite(value)) return '-';
  const { unit } = FIGURES[figure];
  switch (unit) {
    case 'dollars':
      return `$${Math.round(value).toLocaleString('en-US')}`;
    case 'ft':
      return TOTALS.has(figure) ? printTotal(value, units) : printLength(value, units, { inchParts: 1, decimals: 2 });
    case '%':
      return `${value.toFixed(1)}%`;
    case 'kWh':
    case 'days':
      return `${value.toFixed(1)} ${unit}`;
    case 'A':
    case 'kVA':
      return `${Math.floor(value + 1e-9)} ${unit}`;
    default:
      return String(Math.round(value));
  }
}
