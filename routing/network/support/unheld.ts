import { between, distance, LENGTH_SLACK } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';
import { heldParts, isUpright, type ShareOfStraight } from './held-parts.ts';
import { membersNear, type Steel } from './steel-near.ts';

/** A stretch of a raceway with no member to hold it: its length along the raceway, feet, and the place at its middle. */
export interface Unheld {
  readonly length: number;
  readonly middle: Point3;
  /** A member holds the raceway at both of its ends, so that a stringer can be laid from one to the other. */
  readonly between: boolean;
}

/** A raceway has a leg that does not stand upright. */
export const hangs = (path: readonly Point3[]): boolean => path.some((b, i) => i > 0 && !isUpright(path[i - 1]!, b));

/**
 * The stretches of a path over which no member is within `reach` feet in the plan, above or beside it, each from one
 * held place, upright leg or end to the next, in order along the path. One may go round corners.
 */
export function unheldStretches(path: readonly Point3[], steel: Steel, reach: number): Unheld[] {
  const stretches: Unheld[] = [];
  let open: { from: Point3; to: Point3; length: number }[] = [];
  let heldBefore = false;
  const close = (isHeld: boolean): void => {
    const length = open.reduce((sum, part) => sum + part.length, 0);
    if (length > LENGTH_SLACK)
      stretches.push({ length, middle: middleOf(open, length / 2), between: heldBefore && isHeld });
    open = [];
    heldBefore = isHeld;
  };
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    if (isUpright(a, b)) {
      close(false);
      continue;
    }
    const whole = distance(a, b);
    if (whole <= LENGTH_SLACK) continue;
    let reached = 0;
    const add = (from: number, to: number): void => {
      if ((to - from) * whole > LENGTH_SLACK)
        open.push({ from: between(a, b, from), to: between(a, b, to), length: (to - from) * whole });
    };
    for (const [from, to] of heldOn(a, b, steel, reach)) {
      if (from > reached) add(reached, from);
      close(true);
      reached = Math.max(reached, to);
    }
    if (reached < 1) add(reached, 1);
  }
  close(false);
  return stretches;
}

/**
 * The share of the straight from `a` to `b` that hangs from nothing: that lies in stretches longer than supports may be
 * apart, the straight being thought on by as much to both sides, for a lattice is made of short pieces of long lines.
 */
export function unheldShare(a: Point3, b: Point3, steel: Steel, reach: number, apart: number): number {
  const length = distance(a, b);
  if (length <= LENGTH_SLACK || isUpright(a, b)) return 0;
  const [c, d] = [between(a, b, -apart / length), between(a, b, 1 + apart / length)];
  const whole = length + 2 * apart;
  let loose = 0;
  let reached = 0;
  const end = (from: number, to: number): void => {
    if ((to - from) * whole <= apart + LENGTH_SLACK) return;
    loose += Math.max(0, Math.min(to * whole, apart + length) - Math.max(from * whole, apart));
  };
  for (const [from, to] of heldOn(c, d, steel, reach)) {
    end(reached, from);
    reached = Math.max(reached, to);
  }
  end(reached, 1);
  return Math.min(1, loose / length);
}

/**
 * The stretches of a path that some member holds, above or beside within `reach` feet in the plan: from and to which
 * distance along it, feet, in order and apart. Upright legs are none.
 */
export function heldStretches(
  path: readonly Point3[],
  steel: Steel,
  reach: number,
): readonly (readonly [from: number, to: number])[] {
  const held: [number, number][] = [];
  let before = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const whole = distance(a, b);
    if (whole > LENGTH_SLACK && !isUpright(a, b))
      for (const [from, to] of heldOn(a, b, steel, reach)) {
        const last = held.at(-1);
        const begin = before + from * whole;
        if (last !== undefined && begin <= last[1] + LENGTH_SLACK) last[1] = Math.max(last[1], before + to * whole);
        else held.push([begin, before + to * whole]);
      }
    before += whole;
  }
  return held;
}

/** The parts of a leg that some member may hold, by where they begin. */
export function heldOn(a: Point3, b: Point3, steel: Steel, reach: number): ShareOfStraight[] {
  const box = {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  };
  const parts: ShareOfStraight[] = [];
  for (const member of membersNear(steel, box, reach))
    for (const part of heldParts(member, a, b, reach)) parts.push(part);
  return parts.sort((p, q) => p[0] - q[0]);
}

function middleOf(parts: readonly { from: Point3; to: Point3; length: number }[], at: number): Point3 {
  let gone = 0;
  for (const { from, to, length } of parts) {
    if (gone + length >= at) return between(from, to, (at - gone) / length);
    gone += length;
  }
  return parts.at(-1)!.to;
}
