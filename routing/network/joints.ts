import { ascending } from '../lists/ascending.ts';
import { hypot2, hypot3 } from '../plane/hypot.ts';
import { LENGTH_SLACK } from '../plane/space.ts';
import { closestAlong, distanceTo, type Legs } from './legs.ts';

/**
 * Where raceways touch. Joint i ties the points `2i` and `2i + 1` of the lists: each a leg and a distance along it.
 * `gap[i]` is the distance in space between the two, 0 to the join tolerance.
 */
export interface Joints {
  readonly leg: number[];
  readonly along: number[];
  readonly gap: number[];
}

// Below this sine two legs count as parallel in plan: their crossing would lie too far off to be told.
const PARALLEL = 1e-9;

/**
 * All joints of the raceways: a vertex within `tolerance` of another raceway, tied to that
 * raceway's closest point in space; and two legs that cross in plan with elevations within `tolerance` at the crossing.
 *
 * Where the rule leaves a case open:
 * - A raceway that crosses itself, or comes back to itself, is joined there too. Parts of one raceway nearer than four
 *   tolerances along it are no such return, or a finely drawn curve would be cut short.
 * - A leg that stands upright (no longer in plan than the tolerance), or whose plan is parallel to the other's, has no
 *   single crossing in plan: it is joined where the two come within `tolerance` in space.
 */
export function jointsOf(legs: Legs, tolerance: number): Joints {
  const joints: Joints = { leg: [], along: [], gap: [] };
  if (!legs.index) return joints;
  joinVertices(legs, tolerance, joints);
  joinCrossings(legs, tolerance, joints);
  return joints;
}

function add(joints: Joints, legA: number, alongA: number, legB: number, alongB: number, gap: number): void {
  joints.leg.push(legA, legB);
  joints.along.push(alongA, alongB);
  joints.gap.push(gap);
}

function joinVertices(legs: Legs, tolerance: number, joints: Joints): void {
  const { x, y, z, along, firstVertex, start, rank, length, index } = legs;
  const limit = tolerance + LENGTH_SLACK;
  const loop = 4 * tolerance;
  let vertexLeg = -1;
  for (let own = 0; own + 1 < firstVertex.length; own++) {
    const last = firstVertex[own + 1]! - 1;
    for (let v = firstVertex[own]!; v <= last; v++) {
      if (v < last) vertexLeg++;
      const px = x[v]!;
      const py = y[v]!;
      const pz = z[v]!;
      const near = index!.search(px - limit, py - limit, px + limit, py + limit);
      if (near.length <= 2 && near.every((i) => rank[i] === own && isEnd(start[i]!, v))) continue;
      ascending(near);
      for (let k = 0; k < near.length; ) {
        // The legs of one raceway stand together: its closest point wins, the first along it where several are equal.
        const other = rank[near[k]!]!;
        let bestLeg = -1;
        let bestAlong = 0;
        let best = Number.POSITIVE_INFINITY;
        for (; k < near.length && rank[near[k]!] === other; k++) {
          const i = near[k]!;
          const at = closestAlong(legs, i, px, py, pz);
          if (other === own && Math.abs(along[start[i]!]! + at - along[v]!) <= loop) continue;
          const d = distanceTo(legs, i, at, px, py, pz);
          if (d > limit || d >= best - LENGTH_SLACK) continue;
          best = d;
          bestLeg = i;
          bestAlong = at;
        }
        if (bestLeg >= 0) add(joints, vertexLeg, v < last ? 0 : length[vertexLeg]!, bestLeg, bestAlong, best);
      }
    }
  }
}

const isEnd = (start: number, vertex: number): boolean => start === vertex || start + 1 === vertex;

function joinCrossings(legs: Legs, tolerance: number, joints: Joints): void {
  const { x, y, start, index } = legs;
  const limit = tolerance + LENGTH_SLACK;
  const upright = (i: number): boolean => {
    const a = start[i]!;
    return hypot2(x[a + 1]! - x[a]!, y[a + 1]! - y[a]!) <= tolerance;
  };
  for (let i = 0; i < legs.count; i++) {
    const a = start[i]!;
    const grow = upright(i) ? limit : 0;
    // A pair is met once: from the upright one, else from the first.
    const near = index!.search(
      Math.min(x[a]!, x[a + 1]!) - grow,
      Math.min(y[a]!, y[a + 1]!) - grow,
      Math.max(x[a]!, x[a + 1]!) + grow,
      Math.max(y[a]!, y[a + 1]!) + grow,
      (j) => (j > i ? grow > 0 || !upright(j) : j < i && grow > 0 && !upright(j)),
    );
    for (const j of ascending(near)) {
      if (grow > 0 || !joinAtPlanCrossing(legs, i, j, tolerance, joints))
        joinAtClosestApproach(legs, i, j, tolerance, joints);
    }
  }
}

/** Joins two legs at their crossing in plan, if they meet there. False where they are parallel in plan. */
function joinAtPlanCrossing(legs: Legs, i: number, j: number, tolerance: number, joints: Joints): boolean {
  const { x, y, z, start, length, ux, uy, uz } = legs;
  const a = start[i]!;
  const b = start[j]!;
  const cross = ux[i]! * uy[j]! - uy[i]! * ux[j]!;
  if (Math.abs(cross) <= PARALLEL * hypot2(ux[i]!, uy[i]!) * hypot2(ux[j]!, uy[j]!)) return false;
  const wx = x[b]! - x[a]!;
  const wy = y[b]! - y[a]!;
  const s = (wx * uy[j]! - wy * ux[j]!) / cross;
  const t = (wx * uy[i]! - wy * ux[i]!) / cross;
  if (s < 0 || s > length[i]! || t < 0 || t > length[j]!) return true;
  const gap = Math.abs(z[b]! + t * uz[j]! - z[a]! - s * uz[i]!);
  if (gap <= tolerance + LENGTH_SLACK && !isNearAlong(legs, i, s, j, t, tolerance)) add(joints, i, s, j, t, gap);
  return true;
}

/** Joins two legs where the straight lines they lie on come closest, if that is on both and within the tolerance. */
function joinAtClosestApproach(legs: Legs, i: number, j: number, tolerance: number, joints: Joints): void {
  const { x, y, z, start, length, ux, uy, uz } = legs;
  const a = start[i]!;
  const b = start[j]!;
  const wx = x[b]! - x[a]!;
  const wy = y[b]! - y[a]!;
  const wz = z[b]! - z[a]!;
  const cosine = ux[i]! * ux[j]! + uy[i]! * uy[j]! + uz[i]! * uz[j]!;
  const square = 1 - cosine * cosine;
  // Parallel in space: where such legs come near each other, a vertex of one is near the other.
  if (square <= PARALLEL) return;
  const uw = ux[i]! * wx + uy[i]! * wy + uz[i]! * wz;
  const vw = ux[j]! * wx + uy[j]! * wy + uz[j]! * wz;
  const s = (uw - vw * cosine) / square;
  const t = (uw * cosine - vw) / square;
  if (s < 0 || s > length[i]! || t < 0 || t > length[j]!) return;
  const gap = hypot3(wx + t * ux[j]! - s * ux[i]!, wy + t * uy[j]! - s * uy[i]!, wz + t * uz[j]! - s * uz[i]!);
  if (gap <= tolerance + LENGTH_SLACK && !isNearAlong(legs, i, s, j, t, tolerance)) add(joints, i, s, j, t, gap);
}

/** Two places on one raceway, too near each other along it to count as its coming back to itself. */
function isNearAlong(
  { rank, along, start }: Legs,
  i: number,
  s: number,
  j: number,
  t: number,
  tolerance: number,
): boolean {
  return rank[i] === rank[j] && Math.abs(along[start[i]!]! + s - along[start[j]!]! - t) <= 4 * tolerance;
}
