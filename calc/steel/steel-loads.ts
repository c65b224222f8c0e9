import { kept } from '../../routing/kept/kept.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { Member, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { Hung, HungPoint, HungRun, Made } from '../plan-file/hung.ts';
import { feederConduits } from '../supply/feeders/feeder-conduit.ts';
import { tablesOf } from '../tables/editions.ts';
import { FITTINGS } from '../tables/weights/component-weights.ts';
import { conduitWeight, racewayWeight } from '../tables/weights/weight-of.ts';
import { feederLays } from './feeder-lays.ts';
import { supportsOf } from './kept-supports.ts';
import type { LaidConduit } from './lays.ts';
import { alongMember, timesMade } from './loads.ts';
import { type MemberStatics, memberStatics } from './member-statics.ts';
import type { RacewaySupports } from './raceway-supports.ts';
import { restsOf } from './rests.ts';
import { outsideOf, roomFor, tiersOf } from './trapeze.ts';

/** One load of a member as a list has it: places along the member from its first end, feet. */
export interface ListedLoad {
  readonly from: number;
  /** Null for a point. */
  readonly to: number | null;
  readonly pounds: number;
  /** Null for a point. */
  readonly poundsPerFoot: number | null;
  /** In pounds. */
  readonly made: Made;
  readonly sideways: number;
  /** Degrees counter-clockwise from +x; null where nothing pulls sideways. */
  readonly heading: number | null;
  readonly of: readonly string[];
}

/** What one member carries, for the engineer who checks whether it can. */
export interface MemberLoad {
  readonly member: Member;
  readonly pounds: number;
  readonly statics: MemberStatics;
  readonly loads: readonly ListedLoad[];
  /** Pounds more where every trapeze on it is filled: with conduits like its largest, each with all the copper it takes. */
  readonly whenFilled: number;
}

/** What of a plan the loads are listed from. */
export interface Loaded {
  readonly hung: readonly Hung[];
  readonly branches: readonly EquipmentBranches[];
}

/** The loads of every member that carries any, in the order of the members. */
export const steelLoads = kept((site: Site, { hung, branches }: Loaded): readonly MemberLoad[] => {
  const members = byId(site.members);
  const rests = restsOf(site.members, site.columns);
  const tables = tablesOf(site.rules);
  const feeders = feederLays(site, feederConduits(site, tables), tables);
  const more = moreWhenFilled(supportsOf(site, branches, feeders, tables), site.rules.metal);
  return hung.map((one): MemberLoad => {
    const member = members.get(one.member)!;
    return {
      member,
      pounds: one.pounds,
      statics: memberStatics(member, one, rests.get(one.member) ?? []),
      loads: listed(member, one),
      whenFilled: more.get(one.member) ?? 0,
    };
  });
});

/** Points and runs of a member by where they begin along it. */
export const listed = (member: Member, { points, runs }: Hung): readonly ListedLoad[] =>
  [...points.map((point) => listedPoint(member, point)), ...runs.map((run) => listedRun(member, run))].sort(
    (a, b) => a.from - b.from || (a.to ?? a.from) - (b.to ?? b.from),
  );

const listedPoint = (member: Member, { at, pounds, made, sideways = 0, heading, of }: HungPoint): ListedLoad => ({
  from: alongMember(member, at),
  to: null,
  pounds,
  poundsPerFoot: null,
  made,
  sideways,
  heading: heading ?? null,
  of,
});

function listedRun(member: Member, { from, to, poundsPerFoot, made, of }: HungRun): ListedLoad {
  const [begin, end] = [alongMember(member, from), alongMember(member, to)];
  const feet = end - begin;
  return {
    from: begin,
    to: end,
    pounds: poundsPerFoot * feet,
    poundsPerFoot,
    made: timesMade(made, feet),
    sideways: 0,
    heading: null,
    of,
  };
}

/** Pounds that filled trapezes would add to each member. */
const moreWhenFilled = kept((all: readonly RacewaySupports[], metal: Metal): ReadonlyMap<string, number> => {
  const more = new Map<string, number>();
  for (const { supports } of all)
    for (const { conduits, member, holds } of supports) {
      if (member === null || conduits.length === 1) continue;
      const foot = tiersOf(conduits).reduce((sum, tier) => sum + footWhenFilled(tier, metal), 0);
      more.set(member.id, (more.get(member.id) ?? 0) + foot * holds);
    }
  return more;
});

/** Pounds a foot that a trapeze would carry more if it were full. */
function footWhenFilled(tier: readonly LaidConduit[], metal: Metal): number {
  const largest = tier.reduce((most, one) => (outsideOf(one) > outsideOf(most) ? one : most));
  const drawn = tier.reduce((sum, one) => sum + weightOf(one, metal), 0);
  const filled = tier.reduce((sum, one) => sum + filledFoot(one, metal), 0);
  return Math.max(0, filled + roomFor(tier) * filledFoot(largest, metal) - drawn);
}

function weightOf(conduit: LaidConduit, metal: Metal): number {
  const made = conduitWeight(conduit, conduit.metal ?? metal);
  return made.conduit + made.wire + made.fittings;
}

/** A foot of a conduit with all the copper that it takes; of a tray, which has no fill of its own here, as it is. */
function filledFoot(conduit: LaidConduit, metal: Metal): number {
  const row = racewayWeight(conduit.method, conduit.tradeSize);
  return Math.max(weightOf(conduit, metal), row === undefined ? 0 : row.filled + FITTINGS.share * row.pounds);
}
