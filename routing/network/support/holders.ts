import { boxOf } from '../../plane/box.ts';
import { hypot2 } from '../../plane/hypot.ts';
import { between, distance, inPlan, LENGTH_SLACK } from '../../plane/space.ts';
import type { Member, Point3 } from '../../site/site.ts';
import { distanceAside, heldParts, isUpright, levelOver, type ShareOfStraight, turnsAlong } from './held-parts.ts';
import { membersNear, type Steel } from './steel-near.ts';

/** A part of a leg, as shares of it, and the member that holds it; null where none does. */
export interface HeldPart {
  readonly from: number;
  readonly to: number;
  readonly member: Member | null;
  /** Along it the nearest place of the member is one of its ends. */
  readonly atEnd: boolean;
}

interface Candidate {
  readonly member: Member;
  readonly parts: readonly ShareOfStraight[];
}

/** How far a member is from a place in space, by its nearest place in the plan, feet. */
const away = (member: Member, at: Point3): number =>
  hypot2(distanceAside(member, at) ?? Number.POSITIVE_INFINITY, levelOver(member, at) - at[2]);

/** Ends of parts are found to this, feet. */
const FINE = 1e-4;

/**
 * Which member holds each part of the straight from `a` to `b`: of those within `reach` feet in the plan that are above or
 * beside it the nearest in space, of equally near ones the first by id. In order, from 0 to 1; an upright straight is held
 * as its top is.
 */
export function holdersAlong(a: Point3, b: Point3, steel: Steel, reach: number): readonly HeldPart[] {
  if (isUpright(a, b)) {
    const top = a[2] > b[2] ? a : b;
    return [{ from: 0, to: 1, member: holderOf(top, steel, reach), atEnd: true }];
  }
  const candidates = membersNear(steel, boxOf([inPlan(a), inPlan(b)]), reach)
    .map((member): Candidate => ({ member, parts: heldParts(member, a, b, reach) }))
    .filter(({ parts }) => parts.length > 0)
    .sort((p, q) => (p.member.id < q.member.id ? -1 : 1));
  const cuts = new Set([0, 1]);
  for (const { member, parts } of candidates) {
    for (const [from, to] of parts) cuts.add(from).add(to);
    for (const turn of turnsAlong(member, a, b)) cuts.add(turn);
  }
  const places = [...cuts].sort((p, q) => p - q);
  const whole = distance(a, b);
  const found: HeldPart[] = [];
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [places[i - 1]!, places[i]!];
    if ((to - from) * whole <= LENGTH_SLACK) continue;
    const middle = (from + to) / 2;
    const holding = candidates.filter(({ parts }) => parts.some(([p, q]) => p <= middle && middle <= q));
    addNearest(found, holding, a, b, from, to);
  }
  return found;
}

/** The member that holds a place; null where none does. */
export function holderOf(at: Point3, steel: Steel, reach: number): Member | null {
  const [x, y] = at;
  let best: Member | null = null;
  for (const member of membersNear(steel, { minX: x, minY: y, maxX: x, maxY: y }, reach)) {
    if ((distanceAside(member, at) ?? Number.POSITIVE_INFINITY) > reach + LENGTH_SLACK) continue;
    if (best === null || isNearer(member, best, at)) best = member;
  }
  return best;
}

function isNearer(member: Member, than: Member, at: Point3): boolean {
  const by = away(member, at) - away(than, at);
  return by < -LENGTH_SLACK || (by <= LENGTH_SLACK && member.id < than.id);
}

/** Adds the parts of a stretch over which the same members hold, each to the nearest of them. */
function addNearest(
  found: HeldPart[],
  holding: readonly Candidate[],
  a: Point3,
  b: Point3,
  from: number,
  to: number,
): void {
  const whole = distance(a, b);
  const nearest = (share: number): Member | null => {
    const at = between(a, b, share);
    let best: Member | null = null;
    for (const { member } of holding) if (best === null || isNearer(member, best, at)) best = member;
    return best;
  };
  const add = (low: number, high: number, member: Member | null): void => {
    const last = found.at(-1);
    const atEnd = member !== null && isAtEnd(member, between(a, b, (low + high) / 2));
    if (last !== undefined && last.member === member && last.atEnd === atEnd && last.to === low)
      found[found.length - 1] = { ...last, to: high };
    else if (high > low) found.push({ from: low, to: high, member, atEnd });
  };
  if (holding.length <= 1) {
    add(from, to, holding[0]?.member ?? null);
    return;
  }
  let low = from;
  while (low < to) {
    const own = nearest(low + Math.min((to - low) / 4, FINE / whole));
    let high = to;
    // The nearest may change and change back within a stretch: the first change is looked for in quarters.
    for (const quarter of [0.25, 0.5, 0.75, 1]) {
      const at = low + (to - low) * quarter;
      if (nearest(at) === own) continue;
      let [same, other] = [low, at];
      while ((other - same) * whole > FINE) {
        const middle = (same + other) / 2;
        if (nearest(middle) === own) same = middle;
        else other = middle;
      }
      high = other;
      break;
    }
    add(low, high, own);
    low = high;
  }
}

function isAtEnd({ from, to }: Member, [x, y]: Point3): boolean {
  const [mx, my] = [to[0] - from[0], to[1] - from[1]];
  const along = (x - from[0]) * mx + (y - from[1]) * my;
  return along <= 0 || along >= mx * mx + my * my;
}
