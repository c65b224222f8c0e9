import type { Surface } from '../../routing/site/schema/vocabulary.ts';
import type { Point2, Raceway } from '../../routing/site/site.ts';

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
}

interface Dug {
  readonly from: Point2;
  readonly to: Point2;
}

/**
 * Trenches of the raceways under grade: the plan length of each leg that lies below grade, less what runs within a
 * trench's width of one that is dug already, so that raceways which share a trench are dug once, to the deepest of them.
 * Feet. Does not depend on the order of the raceways.
 */
export function trenches(raceways: readonly Raceway[]): readonly TrenchPart[] {
  const legs: (Dug & TrenchPart)[] = [];
  for (const { id, path, place, surface = 'asphalt' } of raceways) {
    if (place !== 'underground') continue;
    path.slice(1).forEach((b, i) => {
      const a = path[i] as readonly [number, number, number];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 1e-9 || Math.min(a[2], b[2]) >= 0 || Math.abs(b[2] - a[2]) > STEEPEST * length) return;
      const depth = Math.round(-12 * Math.min(a[2], b[2])) / 12;
      legs.push({ raceway: id, surface, depth, length, from: [a[0], a[1]], to: [b[0], b[1]] });
    });
  }
  legs.sort((a, b) => b.depth - a.depth || (a.raceway < b.raceway ? -1 : a.raceway > b.raceway ? 1 : 0));
  const parts: TrenchPart[] = [];
  legs.forEach((leg, i) => {
    const { raceway, surface, depth } = leg;
    const length = leg.length - sharedLength(leg, leg.length, legs.slice(0, i));
    if (length > 1e-9) parts.push({ raceway, surface, depth, length });
  });
  return parts;
}

/** Feet of a leg that lie along what is dug already. */
function sharedLength({ from, to }: Dug, length: number, dug: readonly Dug[]): number {
  const ux = (to[0] - from[0]) / length;
  const uy = (to[1] - from[1]) / length;
  const shared: [number, number][] = [];
  for (const other of dug) {
    const ends = [other.from, other.to].map(([x, y]) => ({
      along: (x - from[0]) * ux + (y - from[1]) * uy,
      off: Math.abs((y - from[1]) * ux - (x - from[0]) * uy),
    }));
    if (ends.some(({ off }) => off > TRENCH_WIDTH)) continue;
    const [start, end] = ends.map(({ along }) => along).sort((a, b) => a - b) as [number, number];
    const [low, high] = [Math.max(0, start), Math.min(length, end)];
    if (high > low) shared.push([low, high]);
  }
  let covered = 0;
  let reached = 0;
  for (const [low, high] of shared.sort((a, b) => a[0] - b[0])) {
    covered += Math.max(0, high - Math.max(low, reached));
    reached = Math.max(reached, high);
  }
  return covered;
}
