import { kept } from '../../routing/kept/kept.ts';
import { levelOver } from '../../routing/network/support/held-parts.ts';
import { holderOf } from '../../routing/network/support/holders.ts';
import { type Steel, steelOf } from '../../routing/network/support/steel-near.ts';
import { heldStretches } from '../../routing/network/support/unheld.ts';
import { between, distance } from '../../routing/plane/space.ts';
import type { Member, Point3, Raceway } from '../../routing/site/site.ts';
import type { LaidConduit, RacewayLay } from './lays.ts';
import { placeSupports } from './place-supports.ts';

/** A support of conduits overhead: a hanger where there is one of them, else a trapeze or several. */
export interface HungSupport {
  readonly at: Point3;
  /** Feet along the raceway. */
  readonly along: number;
  readonly conduits: readonly LaidConduit[];
  /** Null where it hangs from a stringer that is put in, and where no member is drawn on the site. */
  readonly member: Member | null;
  /** Feet of rod from the steel down to the conduits. */
  readonly rod: number;
  /** Feet along the raceway for which it holds: half the way to the supports before and after. */
  readonly holds: number;
}

/** A strut between two members that supports hang from where no member is near enough. */
export interface SupportStringer {
  readonly from: Point3;
  readonly to: Point3;
  readonly feet: number;
}

/** Supports of what hangs along one raceway, in order along it. */
export interface RacewaySupports {
  readonly raceway: Raceway;
  readonly supports: readonly HungSupport[];
  /** What they hold, and the parts of the raceway that a member holds; null where no member is drawn on the site. */
  readonly lays: readonly RacewayLay[];
  readonly zones: readonly (readonly [from: number, to: number])[] | null;
  readonly stringers: readonly SupportStringer[];
}

/** Rod where the steel is not known, and the least that there is, feet. Common practice, no source. */
const USUAL_ROD = 2;
const LEAST_ROD = 0.5;

/**
 * Supports along a raceway of the conduits that hang there, as few as the code spacings and the steel allow. `near` are the
 * members near it; null where the site has none.
 */
export const supportsAlong = kept(
  (raceway: Raceway, lays: readonly RacewayLay[], near: readonly Member[] | null, reach: number): RacewaySupports => {
    const { path } = raceway;
    const steel = near === null ? null : steelOf(near);
    const zones = steel === null ? null : heldStretches(path, steel, reach);
    const placed = placeSupports(lays, zones);
    const supports = placed.map(({ at, lays: own, held }, i): HungSupport => {
      const place = pointOn(path, at);
      const member = steel !== null && held ? nearestHolder(place, steel, reach) : null;
      const [begin, end] = reached(own.map((lay) => lays[lay]!));
      const [before, after] = [placed[i - 1]?.at, placed[i + 1]?.at];
      const from = before === undefined ? begin : Math.max(begin, (before + at) / 2);
      const to = after === undefined ? end : Math.min(end, (at + after) / 2);
      const rod = member === null ? USUAL_ROD : Math.max(LEAST_ROD, levelOver(member, place) - place[2]);
      return {
        at: place,
        along: at,
        conduits: own.map((lay) => lays[lay]!.conduit),
        member,
        rod,
        holds: Math.max(0, to - from),
      };
    });
    const loose = placed.filter(({ held }) => !held).map(({ at }) => at);
    return { raceway, supports, lays, zones, stringers: stringersOf(path, zones ?? [], loose) };
  },
);

/** On the edge of what a member holds, rounding may leave none: a hair more reach finds it. */
const nearestHolder = (at: Point3, steel: Steel, reach: number): Member | null =>
  holderOf(at, steel, reach) ?? holderOf(at, steel, reach + 1e-6);

const reached = (lays: readonly RacewayLay[]): readonly [number, number] => [
  Math.min(...lays.map(({ from }) => from)),
  Math.max(...lays.map(({ to }) => to)),
];

/** A stringer for each gap between two parts of the raceway that members hold, where a support stands in it. */
function stringersOf(
  path: readonly Point3[],
  zones: readonly (readonly [number, number])[],
  loose: readonly number[],
): readonly SupportStringer[] {
  return zones.slice(1).flatMap(([to], i): SupportStringer[] => {
    const from = zones[i]![1];
    if (!loose.some((at) => at > from && at < to)) return [];
    return [{ from: pointOn(path, from), to: pointOn(path, to), feet: to - from }];
  });
}

function pointOn(path: readonly Point3[], at: number): Point3 {
  let before = 0;
  for (let i = 1; i < path.length; i++) {
    const length = distance(path[i - 1]!, path[i]!);
    if (before + length >= at && length > 0) return between(path[i - 1]!, path[i]!, Math.max(0, at - before) / length);
    before += length;
  }
  return path.at(-1)!;
}
