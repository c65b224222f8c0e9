import type { Gridline } from '../site.ts';

/** Where a coordinate lies from the gridline that a field crew would measure it from. */
export interface FromGridline {
  readonly label: string;
  /** Feet past the gridline; negative before it. */
  readonly offset: number;
}

/**
 * A coordinate as a crew lays it out: from the nearest gridline, of two equally near the one before it. Null where
 * there are no gridlines; then it is measured from the origin. Feet.
 */
export function fromGridline(lines: readonly Gridline[], value: number): FromGridline | null {
  const nearest = nearestGridline(lines, value);
  return nearest && { label: nearest.label, offset: value - nearest.at };
}

/** The gridline from which a coordinate is laid out. */
export function nearestGridline(lines: readonly Gridline[], value: number): Gridline | null {
  let nearest: Gridline | null = null;
  for (const line of lines) {
    if (nearest === null) nearest = line;
    else {
      const closer = Math.abs(value - line.at) - Math.abs(value - nearest.at);
      if (closer < 0 || (closer === 0 && line.at < nearest.at)) nearest = line;
    }
  }
  return nearest;
}
