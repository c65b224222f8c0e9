import { kept } from '../../../routing/kept/kept.ts';
import { type Box, boxesMeet, boxOf, joinedBox } from '../../../routing/plane/box.ts';
import type { Member, Point2, Site } from '../../../routing/site/site.ts';

/** Members whose plan boxes come this close, feet, are of one canopy. */
const NEAR = 2;

/** The outline of each canopy: the hull of the members that hang together in the plan. */
export const canopyOutlines = kept((members: Site['members']): readonly (readonly Point2[])[] =>
  clustersOf(members)
    .map((cluster) => hullOf(cluster.flatMap(endsOf)))
    .filter((hull) => hull.length > 2),
);

const endsOf = ({ from, to }: Member): [Point2, Point2] => [
  [from[0], from[1]],
  [to[0], to[1]],
];

function clustersOf(members: readonly Member[]): Member[][] {
  let clusters: { box: Box; members: Member[] }[] = [];
  for (const member of members) {
    const own = boxOf(endsOf(member));
    const near = { minX: own.minX - NEAR, minY: own.minY - NEAR, maxX: own.maxX + NEAR, maxY: own.maxY + NEAR };
    const touching = clusters.filter(({ box }) => boxesMeet(box, near));
    const joined = { box: own, members: [member] };
    for (const other of touching) {
      joined.members.push(...other.members);
      joined.box = joinedBox(joined.box, other.box);
    }
    if (touching.length > 0) clusters = clusters.filter((cluster) => !touching.includes(cluster));
    clusters.push(joined);
  }
  return clusters.map((cluster) => cluster.members);
}

/** Convex hull, counter-clockwise (monotone chain); points on an edge are left out. */
export function hullOf(points: readonly Point2[]): Point2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: readonly Point2[]): Point2[] => {
    const chain: Point2[] = [];
    for (const p of from) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: Point2, b: Point2, c: Point2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
