import { kept } from '../../routing/kept/kept.ts';
import { isUpright } from '../../routing/network/support/held-parts.ts';
import { shareOut } from '../../routing/network/support/share-out.ts';
import { type Steel, steelOf } from '../../routing/network/support/steel-near.ts';
import type { Metal, Method } from '../../routing/site/schema/vocabulary.ts';
import type { Member, Point3 } from '../../routing/site/site.ts';
import type { NamedHomeRun } from '../branches/named.ts';
import { type ConduitWay, legAt, NO_LENGTH, pointAt } from '../branches/way.ts';
import type { ConduitConductor } from '../plan-file/branches.ts';
import { conduitWeight } from '../tables/weights/weight-of.ts';
import { type Handed, type LoadOnMember, timesMade } from './loads.ts';

/**
 * An upright leg that comes down to this, feet, or lower stands against a column, a wall or equipment; one that ends
 * higher hangs like the rest. Common practice, no source.
 */
export const HEAD_HIGH = 7;

const stands = (a: Point3, b: Point3): boolean => isUpright(a, b) && Math.min(a[2], b[2]) <= HEAD_HIGH;

/** The parts of a path that hang: its overhead legs, but for upright ones that come down to where a person stands. */
export function hangingParts(path: readonly Point3[], isOverhead: (leg: number) => boolean): readonly Point3[][] {
  const parts: Point3[][] = [];
  let open: Point3[] | null = null;
  for (let leg = 0; leg + 1 < path.length; leg++) {
    const [a, b] = [path[leg]!, path[leg + 1]!];
    if (!isOverhead(leg) || stands(a, b)) {
      open = null;
      continue;
    }
    if (open === null) {
      open = [a];
      parts.push(open);
    }
    open.push(b);
  }
  return parts;
}

/** The hanging parts of a way between two distances. */
export function hangingOnWay(way: ConduitWay, from: number, to: number): readonly Point3[][] {
  const path: Point3[] = [pointAt(way, from)];
  const legs: number[] = [];
  for (let leg = legAt(way, from); leg < way.legs.length && way.at[leg]! < to - NO_LENGTH; leg++) {
    const end = Math.min(to, way.at[leg + 1]!);
    path.push(end === way.at[leg + 1] ? way.points[leg + 1]! : pointAt(way, end));
    legs.push(leg);
  }
  return hangingParts(path, (i) => way.places[legs[i]!] === 'overhead');
}

/** Hands the hanging parts of a conduit to the members that hold them; `times` conduits alike lie side by side. */
export function handConduit(
  of: string,
  parts: readonly (readonly Point3[])[],
  conduit: { method: Method; tradeSize: string | null; conductors: readonly ConduitConductor[] },
  metal: Metal,
  times: number,
  steel: Steel,
  reach: number,
): Handed {
  const made = { ...conduitWeight(conduit, metal) };
  const foot = times * (made.conduit + made.wire + made.fittings);
  const loads: LoadOnMember[] = [];
  const loose: Handed['loose'][number][] = [];
  for (const path of parts) {
    const shared = shareOut(path, steel, reach);
    if (shared.loose > 0) loose.push({ of, pounds: shared.loose * foot });
    for (const share of shared.shares) {
      const { member, feet } = share;
      const place = 'at' in share ? { at: share.at } : { from: share.from, to: share.to };
      loads.push({ member, of, made: timesMade(made, feet * times), place });
    }
  }
  return { loads, loose };
}

/** What the conduits of a home run hang on the members `near` it. */
export const homeRunHanging = kept(
  ({ homeRun, conduits }: NamedHomeRun, near: readonly Member[], reach: number): Handed => {
    const steel = steelOf(near);
    const loads: LoadOnMember[] = [];
    const loose: Handed['loose'][number][] = [];
    homeRun.pieces.forEach((piece, i) => {
      const parts = hangingOnWay(homeRun.ways[piece.along]!, piece.from, piece.to);
      const { metal } = homeRun.members[piece.along]!.choice.conductor;
      const handed = handConduit(conduits[i]!.id, parts, conduits[i]!, metal, 1, steel, reach);
      loads.push(...handed.loads);
      loose.push(...handed.loose);
    });
    return { loads, loose };
  },
);

/** Names of the boxes of a home run that hang with its conduits. */
export const overheadBoxes = kept(({ homeRun, conduits }: NamedHomeRun): ReadonlySet<string> => {
  const names = new Set<string>();
  homeRun.pieces.forEach((piece, i) => {
    const way = homeRun.ways[piece.along]!;
    const ends: readonly [string, number, number][] = [
      [conduits[i]!.from, piece.from, legAt(way, piece.from)],
      [conduits[i]!.to, piece.to, legAt(way, piece.to - 2 * NO_LENGTH)],
    ];
    for (const [name, at, leg] of ends)
      if (way.places[leg] === 'overhead' && pointAt(way, at)[2] > HEAD_HIGH) names.add(name);
  });
  return names;
});
