import { kept, steadyList } from '../../routing/kept/kept.ts';
import { chunking } from '../../routing/kept/parts.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { type FeederRoute, feederRoutesOf } from '../../routing/network/feeder-routes.ts';
import { placeOn } from '../../routing/network/support/share-out.ts';
import { membersNear, type Steel, steelOf } from '../../routing/network/support/steel-near.ts';
import { type Box, boxOf } from '../../routing/plane/box.ts';
import { inPlan } from '../../routing/plane/space.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Charger, Drop, Member, Raceway, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { PlannedBox } from '../plan-file/branches.ts';
import type { Hung } from '../plan-file/hung.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import { TRAPEZE_PARTS } from '../tables/weights/component-weights.ts';
import { handConduit, hangingParts, homeRunHanging, overheadBoxes } from './hung-conduits.ts';
import { boxesHanging, dropsHanging } from './hung-drops.ts';
import { byMember, type Handed, type LoadOnMember } from './loads.ts';
import type { RacewaySupports } from './raceway-supports.ts';
import { tiersOf, widthFor } from './trapeze.ts';

/** What hangs, and what it is worked from. */
export interface HungInput {
  readonly site: Site;
  readonly branches: readonly EquipmentBranches[];
  readonly sharedBoxes: readonly PlannedBox[];
  readonly feeders: readonly FeederConduit[];
  readonly reach: readonly Reach[];
  readonly supports: readonly RacewaySupports[];
}

export interface HungResult {
  readonly hung: readonly Hung[];
  readonly loose: Handed['loose'];
}

/**
 * Everything overhead handed to the one member that holds it: conduits of branches and feeders with their wires and
 * fittings, trapezes, boxes, charging modules, retractors with their pull, and cords. A member holds what is within
 * `rules.hangReach` of it in the plan and below it or beside it; of several the nearest does. Parts are kept by the
 * equipment, home run and chunk of drops that they hang for, and by the members near them.
 */
export function hungOf(input: HungInput): HungResult {
  const { site, branches, sharedBoxes } = input;
  const steel = allSteel(site.members);
  const reach = site.rules.hangReach;
  const handed: readonly Handed[] = [
    ...branches.map((one) => branchesHanging(one, nearOf(one, boundsOf(one), steel, reach), reach)),
    boxesHanging(steadyBoxes(site.chargers, hungShared(branches, sharedBoxes)), site.members, reach),
    ...feedersHanging(input, steel),
    ...input.supports.map((one) => trapezesHanging(one)),
    ...dropParts(input, steel),
  ];
  return { hung: byMember(site.members, handed), loose: handed.flatMap(({ loose }) => loose) };
}

/** What the branches of one piece of equipment hang on the members `near` them. */
const branchesHanging = kept((one: EquipmentBranches, near: readonly Member[], reach: number): Handed => {
  const handed = [
    ...one.homeRuns.map((homeRun) => homeRunHanging(homeRun, near, reach)),
    boxesHanging(ownBoxes(one), near, reach),
  ];
  return { loads: handed.flatMap(({ loads }) => loads), loose: handed.flatMap(({ loose }) => loose) };
});

/** Of the boxes that several pieces of equipment share, those that hang with conduits. */
function hungShared(branches: readonly EquipmentBranches[], shared: readonly PlannedBox[]): readonly PlannedBox[] {
  const overhead = new Set(branches.flatMap((one) => overheadIn(one)));
  return shared.filter(({ id, kind, under }) => kind !== 'drop' && under === null && overhead.has(id));
}

const overheadIn = kept((one: EquipmentBranches): readonly string[] => [
  ...new Set(one.homeRuns.flatMap((homeRun) => [...overheadBoxes(homeRun)])),
]);

const steadyBoxes = steadyList<PlannedBox>();
const allSteel = kept((members: readonly Member[]): Steel => steelOf(members));

/** Boxes of one piece of equipment that hang with its conduits, but for those of drops. */
const ownBoxes = kept((one: EquipmentBranches): readonly PlannedBox[] => {
  const overhead = new Set(overheadIn(one));
  return one.boxes.filter(({ id, kind, under }) => kind !== 'drop' && under === null && overhead.has(id));
});

const boundsOf = kept(({ homeRuns }: EquipmentBranches): Box | null => {
  const points = homeRuns.flatMap(({ homeRun }) => homeRun.ways.flatMap((way) => way.points));
  return points.length === 0 ? null : boxOf(points.map(inPlan));
});

const steadyMembers = steadyList<Member>();

/** The members near something: the same list as long as they are the same. */
function nearOf(owner: object, bounds: Box | null, steel: Steel, reach: number): readonly Member[] {
  const found = bounds === null ? [] : membersNear(steel, bounds, reach);
  return steadyMembers(owner, found);
}

function feedersHanging({ site, feeders }: HungInput, steel: Steel): readonly Handed[] {
  const routes = new Map(feederRoutesOf(site).routes.map(({ feeder, way }) => [feeder, way]));
  return feeders.flatMap((conduit) => {
    const way = routes.get(conduit.feeder.id) ?? null;
    // One whose length the file gives lies where nobody drew it.
    if (way === null) return [];
    const near = nearOf(conduit.feeder, boxOf(way.path.map(inPlan)), steel, site.rules.hangReach);
    return [feederHanging(conduit, way, site.raceways, near, site.rules.hangReach)];
  });
}

/** The trapezes along a raceway with their rods and clamps. */
const trapezesHanging = kept(({ raceway, supports }: RacewaySupports): Handed => {
  const loads: LoadOnMember[] = [];
  let loose = 0;
  for (const { at, conduits, member, rod } of supports) {
    if (conduits.length === 1) continue;
    const trapeze = tiersOf(conduits).reduce((sum, tier) => sum + trapezePounds(widthFor(tier), rod), 0);
    if (member === null) loose += trapeze;
    else loads.push({ member, of: raceway.id, made: { trapeze }, place: { at: placeOn(member, at) } });
  }
  return { loads, loose: loose > 0 ? [{ of: raceway.id, pounds: loose }] : [] };
});

const trapezePounds = (inches: number, rod: number): number =>
  (inches / 12) * TRAPEZE_PARTS.channelFoot + 2 * (rod * TRAPEZE_PARTS.rodFoot + TRAPEZE_PARTS.clamp);

/** A feeder along raceways overhead. */
const feederHanging = kept(
  (
    conduit: FeederConduit,
    way: NonNullable<FeederRoute['way']>,
    raceways: readonly Raceway[],
    near: readonly Member[],
    reach: number,
  ): Handed => {
    const places = placesOf(way.legs, byId(raceways));
    const parts = hangingParts(way.path, (leg) => places[leg] === 'overhead');
    const { id, conductor } = conduit.feeder;
    return handConduit(id, parts, conduit, conductor.metal, conductor.sets, steelOf(near), reach);
  },
);

/** Place of each leg: a tap lies as the raceway before it, the first as the one after. */
function placesOf(
  legs: readonly (string | null)[],
  raceways: ReadonlyMap<string, Raceway>,
): readonly Raceway['place'][] {
  const own = legs.map((leg) => (leg === null ? undefined : raceways.get(leg)?.place));
  let last = own.find((place) => place !== undefined) ?? 'overhead';
  return own.map((place) => {
    last = place ?? last;
    return last;
  });
}

const dropChunks = chunking<Drop>(128);

function dropParts({ site, branches, sharedBoxes, reach }: HungInput, steel: Steel): readonly Handed[] {
  const boxes = new Map<string, PlannedBox>();
  for (const list of [...branches.map((one) => one.boxes), sharedBoxes])
    for (const box of list) if (box.kind === 'drop') boxes.set(box.id, box);
  const chargers = grouped(site.chargers, ({ drop }) => drop);
  const reaches = grouped(reach, ({ charger }) => charger);
  return dropChunks(site.drops).map((drops) => {
    const own = drops.map(({ id }) => chargers.get(id) ?? []);
    const places = drops.flatMap(({ box, retractor = box }) => [inPlan(box), inPlan(retractor)]);
    return keptDrops(
      drops,
      own.flat(),
      own.flat().flatMap(({ id }) => reaches.get(id) ?? []),
      drops.map(({ id }) => boxes.get(id)),
      site.rules,
      nearOf(drops, boxOf(places), steel, site.rules.hangReach),
    );
  });
}

const keptDrops = kept(
  (
    drops: readonly Drop[],
    chargers: readonly Charger[],
    reach: readonly Reach[],
    boxes: readonly (PlannedBox | undefined)[],
    rules: Site['rules'],
    members: readonly Member[],
  ): Handed => {
    const own = grouped(chargers, ({ drop }) => drop);
    const reaches = grouped(reach, ({ charger }) => charger);
    return dropsHanging(drops, own, reaches, boxes, rules, members);
  },
);

function grouped<Item>(list: readonly Item[], keyOf: (item: Item) => string): ReadonlyMap<string, readonly Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of list) {
    const key = keyOf(item);
    addTo(groups, key, item);
  }
  return groups;
}
