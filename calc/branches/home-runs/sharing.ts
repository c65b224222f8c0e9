import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import { numbering } from '../../../routing/kept/numbered.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Design } from '../design.ts';
import type { ConduitWay } from '../way.ts';
import { conduitKey, type IssuedConduits } from './conduit-names.ts';
import { bundleGauge, type HomeRun, homeRun, homeRunCost } from './home-run.ts';
import { type Grouping, leastGrouping } from './least-grouping.ts';
import { sharedBetween, type Travel } from './travel-order.ts';

const waysOf = ({ ways }: Travel, members: readonly number[]): readonly ConduitWay[] =>
  members.map((place) => ways[place]!);

/**
 * Dollars in place of one home run, Infinity where a member cannot be sized so. Of many sets that are weighed few are
 * chosen, and sets alike cost alike: while one box moves, only those that it is in are weighed again.
 */
const costOf = keptByKey(bundleGauge, homeRunCost);

/** The home run of a set that is chosen, with the first of its ways. */
const chosen = kept(
  (_: ConduitWay, design: Design, ways: readonly ConduitWay[], shared: readonly number[]): HomeRun | null =>
    homeRun(design, ways, shared),
);

function homeRunOf(design: Design, travel: Travel, members: readonly number[]): HomeRun | null {
  const ways = waysOf(travel, members);
  return chosen(ways[0]!, design, ways, sharedBetween(travel, members));
}

/**
 * Shares conduits among circuits from one piece of equipment so that conduits and conductors cost least in place, with at
 * most `rules.circuitsPerConduit` to a home run: more in one conduit save raceway, and derate and so may thicken
 * conductors. Never dearer than a conduit for each circuit or than a fixed number to a conduit. Circuits that cannot be
 * sized even alone are left out. Circuits that were issued as one home run stay one as long as they can be sized so and
 * still go together: the rest are shared anew.
 */
export function shareConduits(
  design: Design,
  travel: Travel,
  issued: IssuedConduits | null = null,
): readonly HomeRun[] {
  const kept = issued === null ? [] : issuedGroups(design, travel, issued);
  const held = new Set(kept.flat());
  if (held.size === 0)
    return groupingOf(design, travel, placesById(travel)).flatMap(
      (members) => homeRunOf(design, travel, members) ?? [],
    );
  const free = travel.ways.flatMap((_, place) => (held.has(place) ? [] : [place]));
  const rest: Travel = { ways: waysOf(travel, free), shared: sharedBetween(travel, free) };
  const anew = groupingOf(design, rest, placesById(rest)).map((members) => members.map((place) => free[place]!));
  return [...kept, ...anew]
    .sort((a, b) => a[0]! - b[0]!)
    .flatMap((members) => homeRunOf(design, travel, members) ?? []);
}

/** Feet that circuits go together at the least to stay one home run. */
const TOGETHER = 1;

/** Places of circuits whose first conduit was issued as one, of those that can stay so. */
function issuedGroups(design: Design, travel: Travel, issued: IssuedConduits): Grouping {
  const byName = new Map<string, number[]>();
  travel.ways.forEach(({ charger }, place) => {
    const name = issued.get(conduitKey(charger.id, 1));
    if (name !== undefined) addTo(byName, name, place);
  });
  return [...byName.values()].filter((members) => {
    const shared = sharedBetween(travel, members);
    return (
      members.length <= design.rules.circuitsPerConduit &&
      shared.every((feet) => feet > TOGETHER) &&
      Number.isFinite(costOf(design, waysOf(travel, members), shared))
    );
  });
}

const alikeNumber = numbering();

/**
 * Which circuits share a conduit. Equipment with ways alike, that go together equally far and are named in the same order,
 * groups them alike: many rows of a lot are one case.
 */
const groupingOf = keptByKey(
  ({ ways, shared }: Travel, byId: readonly number[]) =>
    alikeNumber([...ways.map(({ gauge }) => gauge), ...shared, ...byId]),
  (design: Design, travel: Travel, byId: readonly number[]): Grouping => {
    const most = design.rules.circuitsPerConduit;
    return leastGrouping({
      count: travel.ways.length,
      most,
      costOf: (members) => costOf(design, waysOf(travel, members), sharedBetween(travel, members)),
      others: fixedNumbers(byId, most),
      isOpen: (members) => forks(travel, members) || !alike(travel, members),
    });
  },
);

/** Places of the ways in the order of the chargers' ids. */
function placesById({ ways }: Travel): readonly number[] {
  const places = ways.map((_, place) => place);
  return places.sort((a, b) => (ways[a]!.charger.id < ways[b]!.charger.id ? -1 : 1));
}

/** So many to a conduit in the order of the chargers' ids, for every number up to the most. */
function fixedNumbers(byId: readonly number[], most: number): readonly Grouping[] {
  return Array.from({ length: Math.min(most, byId.length) }, (_, i) =>
    Array.from({ length: Math.ceil(byId.length / (i + 1)) }, (_, chunk) =>
      byId.slice(chunk * (i + 1), (chunk + 1) * (i + 1)).sort((a, b) => a - b),
    ),
  );
}

/** True where the members do not all leave one trunk one after the other. */
function forks(travel: Travel, members: readonly number[]): boolean {
  const shared = sharedBetween(travel, members);
  return shared.some((feet, i) => i > 0 && feet < shared[i - 1]! - 1e-6);
}

/** True where the members' chargers are alike, so that only where they are tells them apart. */
function alike({ ways }: Travel, members: readonly number[]): boolean {
  const first = ways[members[0]!]!.charger;
  return members.every((place) => {
    const { amps, volts, phases, pilot } = ways[place]!.charger;
    return amps === first.amps && volts === first.volts && phases === first.phases && pilot === first.pilot;
  });
}
