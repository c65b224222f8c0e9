import type { Point3 } from '../../../site/site.ts';
import { type LatticeLines, nearestLine } from './lines.ts';

/** Nearer than this under steel, feet, there is no room for a raceway and its hanger. Common practice, no source. */
const CLOSE = 0.25;

/**
 * Elevation of each line of one way of a lattice, so that raceways along it are level: as the boxes on it hang, between
 * two such lines as the slope from one to the other, and lower where steel is in the way. Feet.
 * @param boxes in the frame of the lattice
 * @param axis which coordinate the lines are at: 0 for u, 1 for v
 * @param hungAt elevation of a raceway under the steel over a place of the lattice, null without steel
 */
export function levelsOf(
  lines: LatticeLines,
  across: LatticeLines,
  boxes: readonly Point3[],
  axis: 0 | 1,
  hungAt: (line: number, other: number) => { readonly steel: number; readonly hung: number } | null,
): readonly number[] {
  const own = lines.at.map((): number[] => []);
  for (const box of boxes) own[nearestLine(lines, box[axis])]!.push(box[2]);
  const known = own.flatMap((zs, i) => (zs.length > 0 ? [{ at: lines.at[i]!, z: usual(zs) }] : []));
  return lines.at.map((at, i) => {
    let z = sloped(known, at);
    across.at.forEach((_, k) => {
      const over = hungAt(i, k);
      if (over !== null && z > over.steel - CLOSE && z < over.steel + 3) z = Math.min(z, over.hung);
    });
    return z;
  });
}

/** How far boxes hang from the level of their line, in all: the way with less of it is the one that lines are level in. */
export function unevenness(lines: LatticeLines, boxes: readonly Point3[], axis: 0 | 1): number {
  const own = lines.at.map((): number[] => []);
  for (const box of boxes) own[nearestLine(lines, box[axis])]!.push(box[2]);
  return own.reduce((sum, zs) => {
    if (zs.length === 0) return sum;
    const level = usual(zs);
    return sum + zs.reduce((off, z) => off + Math.abs(z - level), 0);
  }, 0);
}

/** The value that most have, the first of several. */
function usual(values: readonly number[]): number {
  const count = new Map<number, number>();
  for (const value of values) count.set(value, (count.get(value) ?? 0) + 1);
  return [...count].sort((a, b) => b[1] - a[1])[0]![0];
}

function sloped(known: readonly { readonly at: number; readonly z: number }[], at: number): number {
  const after = known.findIndex((one) => one.at >= at);
  if (after === 0) return known[0]!.z;
  if (after < 0) return known.at(-1)!.z;
  const [a, b] = [known[after - 1]!, known[after]!];
  return a.z + ((b.z - a.z) * (at - a.at)) / (b.at - a.at);
}
