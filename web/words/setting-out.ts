import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { fromGridline } from '../../routing/site/place/from-gridlines.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Gridline } from '../../routing/site/site.ts';

/** A coordinate as it is set out: "3 − 1' 0"", "on 3"; the length itself where there are no gridlines. */
export function setOutWords(lines: readonly Gridline[], value: number, units: Units): string {
  const found = fromGridline(lines, value);
  if (!found) return printLength(value, units);
  if (Math.abs(found.offset) < 1e-6) return `on ${found.label}`;
  return `${found.label} ${found.offset < 0 ? '−' : '+'} ${printLength(Math.abs(found.offset), units)}`;
}
