import { kept } from '../../routing/kept/kept.ts';
import { isUpright } from '../../routing/network/support/held-parts.ts';
import { distance } from '../../routing/plane/space.ts';
import type { Metal, Method } from '../../routing/site/schema/vocabulary.ts';
import type { Point3, Raceway } from '../../routing/site/site.ts';
import type { NamedHomeRun } from '../branches/named.ts';
import { type ConduitWay, legAt, NO_LENGTH } from '../branches/way.ts';
import type { ConduitConductor } from '../plan-file/branches.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { supportSpacing } from '../tables/raceway-of.ts';
import type { Lay } from './place-supports.ts';

/** A conduit as its supports see it: of a branch, or one of the sets of a feeder. */
export interface LaidConduit {
  /** Of the conduit, or of the feeder. */
  readonly id: string;
  readonly method: Method;
  /** Null for a tray, and where the tables cannot size it. */
  readonly tradeSize: string | null;
  readonly conductors: readonly ConduitConductor[];
  /** Of its conductors, where they are not of the metal of the branches. */
  readonly metal?: Metal;
}

/** A conduit where it hangs along one raceway. */
export interface RacewayLay extends Lay {
  readonly conduit: LaidConduit;
  readonly raceway: Raceway;
}

/** How near the path of a raceway a point of a way on it lies, feet: rounding only. */
const ON_IT = 1e-3;

/** Where the straight between two points lies along a raceway, feet from its start to both; null where not along one leg. */
export function placeOnRaceway({ path }: Raceway, a: Point3, b: Point3): readonly [number, number] | null {
  let before = 0;
  for (let leg = 0; leg + 1 < path.length; leg++) {
    const [from, to] = [path[leg]!, path[leg + 1]!];
    const length = distance(from, to);
    const [pa, pb] = [distance(from, a), distance(from, b)];
    const on = (at: Point3, past: number): boolean => past + distance(at, to) - length <= ON_IT;
    if (length > NO_LENGTH && on(a, pa) && on(b, pb)) return [before + pa, before + pb];
    before += length;
  }
  return null;
}

/** Conduit this short between boxes needs no support of its own, feet. Common practice, no source. */
const UNSUPPORTED = 2;

interface Part {
  raceway: Raceway;
  from: number;
  to: number;
  /** Distances on the way. */
  begin: number;
  end: number;
}

/** What of a way its lays are found by. */
export type WayOfLays = Pick<ConduitWay, 'points' | 'at' | 'legs' | 'like'>;

/** Parts of a way between two distances that hang along raceways, one for each raceway that is followed without a break. */
function partsAlong(way: WayOfLays, from: number, to: number): readonly Part[] {
  const parts: Part[] = [];
  for (let leg = legAt(way, from); leg < way.legs.length && way.at[leg]! < to - NO_LENGTH; leg++) {
    const raceway = way.like[leg];
    const [a, b] = [way.points[leg]!, way.points[leg + 1]!];
    if (way.legs[leg] === '' || raceway?.place !== 'overhead' || isUpright(a, b)) continue;
    const [begin, end] = [Math.max(from, way.at[leg]!), Math.min(to, way.at[leg + 1]!)];
    const along = placeOnRaceway(raceway, a, b);
    if (along === null || end - begin <= NO_LENGTH) continue;
    const whole = way.at[leg + 1]! - way.at[leg]!;
    const at = (distanceOn: number): number => along[0] + ((along[1] - along[0]) * (distanceOn - way.at[leg]!)) / whole;
    const last = parts.at(-1);
    if (last !== undefined && last.raceway === raceway && last.end === begin && isOnwards(last, at(begin), at(end))) {
      last.to = at(end);
      last.end = end;
    } else parts.push({ raceway, from: at(begin), to: at(end), begin, end });
  }
  return parts;
}

const isOnwards = (last: Part, from: number, to: number): boolean =>
  Math.abs(last.to - from) <= ON_IT && last.to - last.from > 0 === to - from > 0;

/**
 * Where the conduits of a home run hang along raceways. A support lies within the code distance of a box; where a conduit
 * goes on to another raceway or up and down, each side has half a spacing.
 */
export const laysOf = kept(({ homeRun, conduits }: NamedHomeRun, tables: CodeTables): readonly RacewayLay[] =>
  homeRun.pieces.flatMap((piece, i) =>
    laysBetween(conduits[i]!, homeRun.ways[piece.along]!, piece.from, piece.to, tables),
  ),
);

/** Where a conduit hangs along raceways between two distances of a way, at each of which it ends in a box or equipment. */
export function laysBetween(
  conduit: LaidConduit,
  way: WayOfLays,
  start: number,
  finish: number,
  tables: CodeTables,
): readonly RacewayLay[] {
  const parts = partsAlong(way, start, finish);
  if (parts.length === 0) return [];
  const { spacingFt, firstFt } = supportSpacing(tables, conduit.method, conduit.tradeSize);
  const near = (rest: number, isOutermost: boolean): number =>
    isOutermost && rest <= firstFt ? firstFt - rest : spacingFt / 2;
  return parts.map(({ raceway, from, to, begin, end }, k) => {
    const first = near(begin - start, k === 0);
    const last = near(finish - end, k === parts.length - 1);
    const isNipple = finish - start <= UNSUPPORTED;
    const known = { of: conduit.id, conduit, raceway, spacing: spacingFt, isNipple };
    return from <= to
      ? { ...known, from, to, first, last }
      : { ...known, from: to, to: from, first: last, last: first };
  });
}

/** Feet of a way between two distances that hang along raceways. */
export const hungFeet = (way: ConduitWay, from: number, to: number): number =>
  partsAlong(way, from, to).reduce((sum, { begin, end }) => sum + end - begin, 0);

/** Feet of the longest tap between two distances that hangs by itself: overhead, along no raceway and not upright. */
export function tapFeet(way: ConduitWay, from: number, to: number): number {
  let most = 0;
  for (let leg = legAt(way, from); leg < way.legs.length && way.at[leg]! < to - NO_LENGTH; leg++) {
    if (way.legs[leg] !== '' || way.places[leg] !== 'overhead') continue;
    if (isUpright(way.points[leg]!, way.points[leg + 1]!)) continue;
    most = Math.max(most, Math.min(to, way.at[leg + 1]!) - Math.max(from, way.at[leg]!));
  }
  return most;
}
