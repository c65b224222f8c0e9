import { kept } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { hypot2 } from '../../routing/plane/hypot.ts';
import { distance } from '../../routing/plane/space.ts';
import type { Member, Point2, Point3 } from '../../routing/site/site.ts';
import type { Hung, HungPoint, HungRun, Made, MadeOf } from '../plan-file/hung.ts';

/** One thing on one member, before things at one place are added up. */
export interface LoadOnMember {
  readonly member: Member;
  /** Id of the conduit, box, drop or feeder. */
  readonly of: string;
  /** What it is made of, pounds. */
  readonly made: Made;
  readonly place: { readonly at: Point3 } | { readonly from: Point3; readonly to: Point3 };
  /** Pull at the place that is not downward, pounds along x and y. */
  readonly sideways?: Point2;
}

/** Pounds of all that something is made of. */
export const poundsOf = (made: Made): number => Object.values(made).reduce((sum, pounds) => sum + pounds, 0);

/** What several things are made of together. */
function madeOfAll(all: readonly Made[]): Made {
  const sum: Partial<Record<MadeOf, number>> = {};
  for (const made of all)
    for (const [what, pounds] of Object.entries(made) as [MadeOf, number][])
      if (pounds !== 0) sum[what] = (sum[what] ?? 0) + pounds;
  return sum;
}

/** `made` times a factor. */
export function timesMade(made: Made, by: number): Made {
  const product: Partial<Record<MadeOf, number>> = {};
  for (const [what, pounds] of Object.entries(made) as [MadeOf, number][])
    if (pounds !== 0) product[what] = by * pounds;
  return product;
}

/** Places no farther apart than this along a member are one, feet. */
const ONE_PLACE = 0.01;

/** How far a place on a member is along it from its first end, feet. */
export const alongMember = ({ from }: Pick<Member, 'from'>, at: Point3): number => distance(from, at);

/** What hangs at a reach from members, as far as one part of a plan hangs it there. */
export interface Handed {
  readonly loads: readonly LoadOnMember[];
  /** What no member holds any of: whose it is, and how much. */
  readonly loose: readonly { readonly of: string; readonly pounds: number }[];
}

/**
 * The loads of each member, added up by their places, in the order of the members; those that carry nothing are left out.
 * A member is added up anew only where one of the parts hangs something else on it.
 */
export function byMember(members: readonly Member[], parts: readonly Handed[]): readonly Hung[] {
  const own = new Map<string, (readonly LoadOnMember[])[]>();
  for (const part of parts) for (const [id, loads] of loadsByMember(part)) addTo(own, id, loads);
  return members.flatMap((member) => {
    const on = own.get(member.id);
    return on === undefined ? [] : [hungOn(member, on)];
  });
}

const loadsByMember = kept(({ loads }: Handed): ReadonlyMap<string, readonly LoadOnMember[]> => {
  const own = new Map<string, LoadOnMember[]>();
  for (const load of loads) addTo(own, load.member.id, load);
  return own;
});

const hungOn = kept((member: Member, lists: readonly (readonly LoadOnMember[])[]): Hung => {
  const points: HungPoint[] = [];
  const runs: HungRun[] = [];
  let pounds = 0;
  for (const group of groups(member, lists.flat())) {
    const { place } = group[0]!;
    const made = madeOfAll(group.map((load) => load.made));
    const own = poundsOf(made);
    const of = [...new Set(group.map((load) => load.of))];
    pounds += own;
    if ('at' in place) {
      points.push({ at: place.at, pounds: own, of, made, ...sidewaysOf(group) });
    } else {
      const feet = distance(place.from, place.to);
      runs.push({ ...place, poundsPerFoot: own / feet, of, made: timesMade(made, 1 / feet) });
    }
  }
  return { member: member.id, pounds, points, runs };
});

/** The pull of all together that is not downward, and which way it goes; nothing where there is none. */
function sidewaysOf(group: readonly LoadOnMember[]): Pick<HungPoint, 'sideways' | 'heading'> {
  let [x, y] = [0, 0];
  for (const { sideways = [0, 0] } of group) {
    x += sideways[0];
    y += sideways[1];
  }
  const sideways = hypot2(x, y);
  if (sideways < 1e-9) return {};
  const heading = (Math.atan2(y, x) * 180) / Math.PI;
  return { sideways, heading: heading < 0 ? heading + 360 : heading };
}

/** Loads at one place together, in order along the member. */
function groups(member: Member, loads: readonly LoadOnMember[]): readonly (readonly LoadOnMember[])[] {
  const placed = loads.map((load) => {
    const { place } = load;
    if ('at' in place) return { load, isRun: 0, from: alongMember(member, place.at), to: 0 };
    const [from, to] = [alongMember(member, place.from), alongMember(member, place.to)];
    if (from <= to) return { load, isRun: 1, from, to };
    return { load: { ...load, place: { from: place.to, to: place.from } }, isRun: 1, from: to, to: from };
  });
  placed.sort((p, q) => p.isRun - q.isRun || p.from - q.from || p.to - q.to);
  const all: LoadOnMember[][] = [];
  let last: (typeof placed)[number] | undefined;
  for (const one of placed) {
    const isSame =
      last !== undefined &&
      last.isRun === one.isRun &&
      one.from - last.from <= ONE_PLACE &&
      Math.abs(one.to - last.to) <= ONE_PLACE;
    if (isSame) all.at(-1)!.push(one.load);
    else {
      all.push([one.load]);
      last = one;
    }
  }
  return all;
}
