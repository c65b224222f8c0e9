import Flatbush from 'flatbush';
import { hypot3 } from '../plane/hypot.ts';
import { COINCIDENT } from '../plane/space.ts';
import type { Point3, Raceway } from '../site/site.ts';

/**
 * The straight legs of all raceways as flat arrays. Raceways stand in the order of their ids, so that nothing that
 * follows depends on the order of the file; `rank` of a raceway is its place in that order. Lengths in feet.
 */
export interface Legs {
  /** Ids of the raceways by rank. */
  readonly raceways: readonly string[];
  readonly count: number;
  /** Vertices of all raceways, one after the other. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Developed distance of each vertex from its raceway's first. */
  readonly along: Float64Array;
  /** First vertex of each raceway by rank, and one past the last. */
  readonly firstVertex: Int32Array;
  /** Leg i goes from vertex `start[i]` to the next one, on the raceway of rank `rank[i]`. */
  readonly start: Int32Array;
  readonly rank: Int32Array;
  readonly length: Float64Array;
  /** Direction of each leg, of length 1; none where it has no length. */
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  readonly uz: Float64Array;
  /** The legs' boxes in plan; null where there is no leg. */
  readonly index: Flatbush | null;
}

/**
 * Legs of the raceways. Vertices that repeat the one before are passed over; a raceway whose vertices all coincide
 * keeps one leg of no length, so that it can still be joined and tapped.
 */
export function legsOf(raceways: readonly Raceway[]): Legs {
  const sorted = inOrderOfId(raceways);
  let most = 0;
  for (const { path } of sorted) most += path.length;
  const x = new Float64Array(most);
  const y = new Float64Array(most);
  const z = new Float64Array(most);
  const along = new Float64Array(most);
  const firstVertex = new Int32Array(sorted.length + 1);
  const start = new Int32Array(most);
  const rank = new Int32Array(most);
  const length = new Float64Array(most);
  const ux = new Float64Array(most);
  const uy = new Float64Array(most);
  const uz = new Float64Array(most);
  let vertex = 0;
  let leg = 0;
  for (let r = 0; r < sorted.length; r++) {
    const { id, path } = sorted[r]!;
    if (path.length < 2) throw new RangeError(`raceway ${id} has ${path.length} points, 2 or more were due`);
    firstVertex[r] = vertex;
    for (let i = 0; i < path.length; i++) {
      const point = path[i]!;
      const px = point[0];
      const py = point[1];
      const pz = point[2];
      if (i > 0) {
        const gone = hypot3(px - x[vertex - 1]!, py - y[vertex - 1]!, pz - z[vertex - 1]!);
        const lone = i === path.length - 1 && vertex - firstVertex[r]! === 1;
        if (gone < COINCIDENT && !lone) continue;
        along[vertex] = along[vertex - 1]! + gone;
        start[leg] = vertex - 1;
        rank[leg] = r;
        length[leg] = gone;
        if (gone > 0) {
          ux[leg] = (px - x[vertex - 1]!) / gone;
          uy[leg] = (py - y[vertex - 1]!) / gone;
          uz[leg] = (pz - z[vertex - 1]!) / gone;
        }
        leg++;
      }
      x[vertex] = px;
      y[vertex] = py;
      z[vertex++] = pz;
    }
  }
  firstVertex[sorted.length] = vertex;
  const table = {
    raceways: sorted.map(({ id }) => id),
    count: leg,
    x: x.subarray(0, vertex),
    y: y.subarray(0, vertex),
    z: z.subarray(0, vertex),
    along: along.subarray(0, vertex),
    firstVertex,
    start: start.subarray(0, leg),
    rank: rank.subarray(0, leg),
    length: length.subarray(0, leg),
    ux: ux.subarray(0, leg),
    uy: uy.subarray(0, leg),
    uz: uz.subarray(0, leg),
  };
  return { ...table, index: indexOf(table) };
}

function inOrderOfId(raceways: readonly Raceway[]): readonly Raceway[] {
  const inOrder = raceways.every((raceway, i) => i === 0 || raceways[i - 1]!.id < raceway.id);
  return inOrder ? raceways : [...raceways].sort((a, b) => (a.id < b.id ? -1 : 1));
}

function indexOf({ count, start, x, y }: Omit<Legs, 'index'>): Flatbush | null {
  if (count === 0) return null;
  const index = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    const a = start[i]!;
    const b = a + 1;
    index.add(Math.min(x[a]!, x[b]!), Math.min(y[a]!, y[b]!), Math.max(x[a]!, x[b]!), Math.max(y[a]!, y[b]!));
  }
  index.finish();
  return index;
}

/** Distance along leg `i` of its point closest to (px, py, pz). */
export function closestAlong(
  { start, x, y, z, ux, uy, uz, length }: Legs,
  i: number,
  px: number,
  py: number,
  pz: number,
): number {
  const a = start[i]!;
  const along = (px - x[a]!) * ux[i]! + (py - y[a]!) * uy[i]! + (pz - z[a]!) * uz[i]!;
  return Math.min(length[i]!, Math.max(0, along));
}

/** Distance in space from (px, py, pz) to the point some way along leg `i`. */
export function distanceTo(
  { start, x, y, z, ux, uy, uz }: Legs,
  i: number,
  along: number,
  px: number,
  py: number,
  pz: number,
): number {
  const a = start[i]!;
  const dx = x[a]! + along * ux[i]! - px;
  const dy = y[a]! + along * uy[i]! - py;
  const dz = z[a]! + along * uz[i]! - pz;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/** The point some way along leg `i`; its own vertices at its ends. */
export function pointOf({ start, x, y, z, ux, uy, uz, length }: Legs, i: number, along: number): Point3 {
  const a = start[i]!;
  if (along === length[i]) return [x[a + 1]!, y[a + 1]!, z[a + 1]!];
  return [x[a]! + along * ux[i]!, y[a]! + along * uy[i]!, z[a]! + along * uz[i]!];
}
