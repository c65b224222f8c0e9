import type { Surface } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Raceway } from '../../../routing/site/site.ts';

/** Raceways no farther apart than this lie in one trench, feet. Common practice, no source. */
export const TRENCH_WIDTH = 1;

/** Level enough to be dug, not bored: rise over run. */
const STEEPEST = 1;

export interface TrenchPart {
  /** Raceway for which it is dug. */
  readonly raceway: string;
  readonly surface: Surface;
  /** Depth of the raceway under grade, feet, to the inch. */
  readonly depth: number;
  readonly length: number;
  /** Conduits that lie in it side by side. */
  readonly conduits: number;
}

/**
 * Width of a trench for so many conduits, inches: 4 for each and 4 more, in steps of a bucket's 6, from 12 to 36, beyond
 * which they lie in tiers. Common practice, no source.
 */
export const trenchWidth = (conduits: number): number =>
  Math.min(36, Math.max(12, 6 * Math.ceil((4 * conduits + 4) / 6)));

interface Dug {
  readonly from: Point2;
  readonly to: Point2;
}

/**
 * Trenches of the raceways under grade: the plan length of each leg that lies below grade, less what runs within a
 * trench's width of one that is dug already, so that raceways which share a trench are dug once, to the deepest of them.
 * Feet. Does not depend on the order of the raceways.
 * @param conduitsIn conduits that lie along a raceway, by its id
 */
export function trenches(
  raceways: readonly Raceway[],
  conduitsIn: ReadonlyMap<string, number> = new Map(),
): readonly TrenchPart[] {
  const legs: (Dug & TrenchPart)[] = [];
  for (const { id, path, place, surface = 'asphalt' } of raceways) {
    if (place !== 'underground') continue;
    path.slice(1).forEach((b, i) => {
      const a = path[i] as readonly [number, number, number];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 1e-9 || Math.min(a[2], b[2]) >= 0 || Math.abs(b[2] - a[2]) > STEEPEST * length) return;
      const depth = Math.round(-12 * Math.min(a[2], b[2])) / 12;
      const conduits = conduitsIn.get(id) ?? 0;
      legs.push({ raceway: id, surface, depth, length, conduits, from: [a[0], a[1]], to: [b[0], b[1]] });
    });
  }
  legs.sort((a, b) => b.depth - a.depth || (a.raceway < b.raceway ? -1 : a.raceway > b.raceway ? 1 : 0));
  const parts: TrenchPart[] = [];
  const beside = legs.map(() => 0);
  const lengths = legs.map((leg, i) => {
    const before = legs.slice(0, i);
    const shared = sharedParts(leg, leg.length, before);
    for (const { other, low, high } of shared) beside[other]! += (high - low) * leg.conduits;
    return leg.length - coveredBy(shared);
  });
  legs.forEach(({ raceway, surface, depth, length: whole, conduits }, i) => {
    const length = lengths[i]!;
    const all = Math.ceil(conduits + beside[i]! / whole - 1e-6);
    if (length > 1e-9) parts.push({ raceway, surface, depth, length, conduits: all });
  });
  return parts;
}

/** A stretch of a leg that lies along another, which is dug already. */
interface Shared {
  /** Place of that leg. */
  readonly other: number;
  readonly low: number;
  readonly high: number;
}

function sharedParts({ from, to }: Dug, length: number, dug: readonly Dug[]): readonly Shared[] {
  const ux = (to[0] - from[0]) / length;
  const uy = (to[1] - from[1]) / length;
  return dug.flatMap(({ from: start, to: end }, other): Shared[] => {
    const ends = [start, end].map(([x, y]) => ({
      along: (x - from[0]) * ux + (y - from[1]) * uy,
      off: Math.abs((y - from[1]) * ux - (x - from[0]) * uy),
    }));
    if (ends.some(({ off }) => off > TRENCH_WIDTH)) return [];
    const [first, last] = ends.map(({ along }) => along).sort((p, q) => p - q) as [number, number];
    const [low, high] = [Math.max(0, first), Math.min(length, last)];
    return high > low ? [{ other, low, high }] : [];
  });
}

/** Feet that the stretches cover together. */
function coveredBy(shared: readonly Shared[]): number {
  let covered = 0;
  let reached = 0;
  for (const { low, high } of [...shared].sort((a, b) => a.low - b.low)) {
    covered += Math.max(0, high - Math.max(low, reached));
    reached = Math.max(reached, high);
  }
  return covered;
}
