import { COINCIDENT } from '../plane/space.ts';
import { joinedSets } from './joined-sets.ts';
import type { Joints } from './joints.ts';
import type { Legs } from './legs.ts';

/** Places where a leg can be left, before they are merged: vertices by their number, then joints' points inside legs. */
export interface Stops {
  readonly count: number;
  readonly along: Float64Array;
  readonly raw: Int32Array;
  readonly firstStop: Int32Array;
  /** Raw stop of each end of a joint. */
  readonly ofJoint: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** The stops of every leg, in order along it. Those of a leg nearer than `COINCIDENT` are one. */
export function stopsOf(legs: Legs, joints: Joints): Stops {
  const vertices = legs.x.length;
  const ends = joints.leg.length;
  const ofJoint = new Int32Array(ends);
  const inside: number[] = [];
  for (let e = 0; e < ends; e++) {
    const i = joints.leg[e]!;
    const at = joints.along[e]!;
    if (at < COINCIDENT) ofJoint[e] = legs.start[i]!;
    else if (at > legs.length[i]! - COINCIDENT) ofJoint[e] = legs.start[i]! + 1;
    else inside.push(e);
  }
  inside.sort((a, b) => joints.leg[a]! - joints.leg[b]! || joints.along[a]! - joints.along[b]! || a - b);
  const most = vertices + inside.length;
  const x = new Float64Array(most);
  const y = new Float64Array(most);
  const z = new Float64Array(most);
  x.set(legs.x);
  y.set(legs.y);
  z.set(legs.z);
  const along = new Float64Array(2 * legs.count + inside.length);
  const raw = new Int32Array(along.length);
  const firstStop = new Int32Array(legs.count + 1);
  let stop = 0;
  let next = 0;
  let count = vertices;
  for (let i = 0; i < legs.count; i++) {
    firstStop[i] = stop;
    const a = legs.start[i]!;
    along[stop] = 0;
    raw[stop++] = a;
    for (; next < inside.length && joints.leg[inside[next]!] === i; next++) {
      const e = inside[next]!;
      const at = joints.along[e]!;
      if (at - along[stop - 1]! >= COINCIDENT) {
        x[count] = legs.x[a]! + at * legs.ux[i]!;
        y[count] = legs.y[a]! + at * legs.uy[i]!;
        z[count] = legs.z[a]! + at * legs.uz[i]!;
        along[stop] = at;
        raw[stop++] = count++;
      }
      ofJoint[e] = raw[stop - 1]!;
    }
    along[stop] = legs.length[i]!;
    raw[stop++] = a + 1;
  }
  firstStop[legs.count] = stop;
  return { count, along: along.subarray(0, stop), raw: raw.subarray(0, stop), firstStop, ofJoint, x, y, z };
}

/** What joints make of the raw stops: those that coincide are one, the others are tied across a gap. */
export interface Ties {
  /** The stop that stands for all that coincide with `raw`. */
  readonly one: (raw: number) => number;
  readonly from: number[];
  readonly to: number[];
  readonly gap: number[];
}

/** Merges the stops that coincide and ties the others across their joints' gaps, each pair once. */
export function tiesOf(legs: Legs, joints: Joints, stops: Stops): Ties {
  const same = joinedSets(stops.count);
  for (let i = 0; i < legs.count; i++) if (legs.length[i]! < COINCIDENT) same.join(legs.start[i]!, legs.start[i]! + 1);
  for (let j = 0; j < joints.gap.length; j++)
    if (joints.gap[j]! < COINCIDENT) same.join(stops.ofJoint[2 * j]!, stops.ofJoint[2 * j + 1]!);
  const ties: Ties = { one: same.first, from: [], to: [], gap: [] };
  const seen = new Set<number>();
  for (let j = 0; j < joints.gap.length; j++) {
    if (joints.gap[j]! < COINCIDENT) continue;
    const a = same.first(stops.ofJoint[2 * j]!);
    const b = same.first(stops.ofJoint[2 * j + 1]!);
    // Two ends near each other are met from both sides.
    const pair = Math.min(a, b) * stops.count + Math.max(a, b);
    if (a === b || seen.has(pair)) continue;
    seen.add(pair);
    ties.from.push(a);
    ties.to.push(b);
    ties.gap.push(joints.gap[j]!);
  }
  return ties;
}
