import { lengthThrough } from '../../../checks/keepout-findings.ts';
import { distance } from '../../../plane/space.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import type { EdgeRow } from '../../shared/home-graph.ts';
import { type LatticeLines, nearestLine } from './lines.ts';
import type { LotFrame } from './lot-frame.ts';

const NOTHING = 1e-6;

/** A lattice as far as it is laid: places and edges are put into it one by one. Lengths in feet. */
export interface GrowingLattice {
  readonly points: Point3[];
  readonly edges: EdgeRow[];
  /** Whether an edge would be a new raceway. */
  readonly isNew: boolean[];
  /** Puts a place; gives its number. */
  readonly put: (at: Point3) => number;
  /**
   * Puts an edge between two places, a foot of which costs so many times what the hangers of a foot overhead do; conduits
   * that lie there have room for so many circuits.
   */
  readonly join: (a: number, b: number, multiplier: number, fresh: boolean, room?: number) => void;
  /** Whether nothing that blocks raceways stands between two points. */
  readonly isFree: (a: Point3, b: Point3) => boolean;
}

export function growingLattice(site: Site): GrowingLattice {
  const points: Point3[] = [];
  const edges: EdgeRow[] = [];
  const isNew: boolean[] = [];
  const blocking = site.keepouts.filter(({ blocks }) => blocks.includes('raceway'));
  return {
    points,
    edges,
    isNew,
    put: (at) => points.push(at) - 1,
    join: (a, b, multiplier, fresh, room = 0) => {
      const length = distance(points[a]!, points[b]!);
      edges.push([a, b, length, multiplier, room]);
      isNew.push(fresh && length > NOTHING);
    },
    isFree: (a, b) => blocking.every((one) => lengthThrough(one, a, b) <= NOTHING),
  };
}

/** The number of the crossing of two families of lines that is nearest to a place; those of one line of `u` stand together. */
export const crossingNear =
  (frame: LotFrame, u: LatticeLines, v: LatticeLines) =>
  (at: readonly number[]): number => {
    const [a, b]: Point2 = frame.into([at[0]!, at[1]!]);
    return nearestLine(u, a) * v.at.length + nearestLine(v, b);
  };
