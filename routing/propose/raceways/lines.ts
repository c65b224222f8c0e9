/** Lines of a lattice at values in order, none nearer to another than `apart`. */
export interface Lines {
  readonly at: readonly number[];
  readonly apart: number;
}

/** More nodes than these would keep the search for routes too long: lines that lie near one another become one. */
const MOST_NODES = 4000;

/** Lines at some values, the first of several that lie near one another being kept. */
function linesAt(values: readonly number[], apart: number): Lines {
  const kept: number[] = [];
  for (const value of values) if (kept.every((other) => Math.abs(other - value) >= apart)) kept.push(value);
  return { at: kept.sort((a, b) => a - b), apart };
}

/** The lines of both ways of a lattice, farther apart the more there would be. Feet. */
export function latticeLines(
  us: readonly number[],
  vs: readonly number[],
  least: number,
): { readonly u: Lines; readonly v: Lines } {
  for (let apart = least; ; apart *= 1.5) {
    const [u, v] = [linesAt(us, apart), linesAt(vs, apart)];
    if (u.at.length * v.at.length <= MOST_NODES || apart > 1000) return { u, v };
  }
}

/** Place of the line nearest to a value. RangeError where there is none. */
export function nearestLine({ at }: Lines, value: number): number {
  if (at.length === 0) throw new RangeError('no lines');
  let best = 0;
  at.forEach((line, i) => {
    if (Math.abs(line - value) < Math.abs(at[best]! - value)) best = i;
  });
  return best;
}
