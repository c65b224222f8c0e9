import { addTo } from '../../lists/grouping.ts';
import { placeOn } from '../../network/support/share-out.ts';
import { boxesMeet, boxOf, widened } from '../../plane/box.ts';
import { insideOf } from '../../plane/obstacle.ts';
import { inPlan } from '../../plane/space.ts';
import type { Member, Point2, Site } from '../../site/site.ts';
import { outlineOf } from '../../standing/outlines.ts';
import { LONGEST_STRINGER } from '../raceways/lattice/held-line.ts';
import { away } from '../raceways/lattice/steel.ts';

/** Members nearer to each other than this, feet, carry a raceway on from one to the next: the spacing of supports of conduit, near enough. */
const NEXT = 10;

/**
 * Members in parcels: steel along which a raceway comes from any of them to any other, one canopy or several that touch;
 * where no aisle lies between, also by a stringer from one to the next.
 */
export function steelParcels({ members, aisles }: Pick<Site, 'members' | 'aisles'>): readonly (readonly Member[])[] {
  const outlines = aisles.map(outlineOf);
  const isOpen = ([x, y]: Point2): boolean => outlines.some((outline) => insideOf(outline, x, y));
  const boxes = members.map(({ from, to }) =>
    widened(
      boxOf([
        [from[0], from[1]],
        [to[0], to[1]],
      ]),
      LONGEST_STRINGER / 2,
    ),
  );
  const parcel = members.map((_, i) => i);
  const top = (i: number): number => {
    let at = i;
    while (parcel[at] !== at) {
      parcel[at] = parcel[parcel[at]!]!;
      at = parcel[at]!;
    }
    return at;
  };
  // By their west edges only those that may meet are looked at.
  const order = members.map((_, i) => i).sort((a, b) => boxes[a]!.minX - boxes[b]!.minX);
  order.forEach((i, k) => {
    for (const j of order.slice(k + 1)) {
      if (boxes[j]!.minX > boxes[i]!.maxX) break;
      if (top(i) !== top(j) && boxesMeet(boxes[i]!, boxes[j]!) && isNext(members[i]!, members[j]!, isOpen))
        parcel[top(j)] = top(i);
    }
  });
  const own = new Map<number, Member[]>();
  members.forEach((member, i) => {
    addTo(own, top(i), member);
  });
  return [...own.values()];
}

/** The parcel that a place hangs under: the nearest, where it is near enough; -1 where there is none. */
export function parcelAt(parcels: readonly (readonly Member[])[], at: Point2): number {
  let [best, least] = [-1, NEXT];
  parcels.forEach((members, i) => {
    for (const member of members) {
      const feet = away(member, at);
      if (feet < least) [best, least] = [i, feet];
    }
  });
  return best;
}

/** From one member to another a raceway is carried on: they cross or lie near, or a stringer may join them over no aisle. */
function isNext(a: Member, b: Member, isOpen: (at: Point2) => boolean): boolean {
  if (cross(inPlan(a.from), inPlan(a.to), inPlan(b.from), inPlan(b.to))) return true;
  const ends = [
    [a, b.from],
    [a, b.to],
    [b, a.from],
    [b, a.to],
  ] as const;
  return ends.some(([member, [x, y, z]]) => {
    const feet = away(member, [x, y]);
    if (feet <= NEXT) return true;
    if (feet > LONGEST_STRINGER) return false;
    const [u, v] = placeOn(member, [x, y, z]);
    return !isOpen([(x + u) / 2, (y + v) / 2]);
  });
}

const side = (a: Point2, b: Point2, p: Point2): number =>
  Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

const cross = (a: Point2, b: Point2, c: Point2, d: Point2): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
