import { FIGURE_NAMES, FIGURES, type WayFigures } from './figures.ts';

/** Figures that differ by less than this part of themselves are alike. */
const ALIKE = 1e-9;

/** Whether one way is at least as good as another on every figure and better on one. A figure that is not known is the worst. */
export function beats(one: WayFigures, other: WayFigures): boolean {
  let isBetter = false;
  for (const name of FIGURE_NAMES) {
    const sign = FIGURES[name].better === 'more' ? 1 : -1;
    const [a, b] = [worth(one[name], sign), worth(other[name], sign)];
    if (a === b || alike(a, b)) continue;
    if (a < b) return false;
    isBetter = true;
  }
  return isBetter;
}

const alike = (a: number, b: number): boolean =>
  Number.isFinite(a) && Number.isFinite(b) && Math.abs(a - b) <= ALIKE * Math.max(1, Math.abs(a), Math.abs(b));

const worth = (value: number | null, sign: 1 | -1): number =>
  value === null ? Number.NEGATIVE_INFINITY : sign * value;

/** Ids of the ways that no other beats on all counts. */
export function unbeatenOf(
  ways: readonly { readonly id: string; readonly figures: WayFigures }[],
): ReadonlySet<string> {
  return new Set(
    ways.filter(({ figures }) => !ways.some((other) => beats(other.figures, figures))).map(({ id }) => id),
  );
}
