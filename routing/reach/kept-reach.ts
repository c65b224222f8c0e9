import { kept } from '../kept/kept.ts';
import { keptEach, keptLists, patched } from '../kept/kept-list.ts';
import { addTo } from '../lists/grouping.ts';
import { type Box, widened } from '../plane/box.ts';
import { flattened, keptNearby } from '../plane/kept-nearby.ts';
import { dropsOf } from '../site/hanging.ts';
import { listingIds, placesById } from '../site/ids.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Drop, Site, Stall, Vehicle } from '../site/site.ts';
import { chargerReach } from './charger-reach.ts';
import { type CordField, changesBetween, fieldOf } from './field.ts';
import type { Reach } from './reach-result.ts';
import { type Served, type Shared, sharedOf } from './shared.ts';

/** A site made ready for its reach to be worked. */
export interface Now {
  readonly site: Site;
  readonly field: CordField;
  readonly shared: Shared;
}

export const nowOf = (site: Site): Now => ({ site, field: fieldOf(site), shared: sharedOf(site) });

/** The reach of one charger, and the box that had a say in it. */
interface Worked {
  readonly near: Box;
  readonly reach: readonly Reach[];
  readonly findings: readonly Finding[];
}

type ServedStalls = Served['stalls'];

/** A stall touches the box of its own cords; this much more keeps rounding from setting them apart. */
const MARGIN = 1e-6;

/** The one list that stands for no findings. */
const NO_FINDINGS: readonly Finding[] = [];

const workedOf = kept(
  (charger: Charger, drop: Drop, stalls: ServedStalls, field: CordField, shared: Shared): Worked => {
    const { reach, findings, seen } = chargerReach({ charger, drop, stalls, field, shared });
    return { near: widened(seen, MARGIN), reach, findings: findings.length === 0 ? NO_FINDINGS : findings };
  },
);

const workEach = keptNearby({
  work: (
    [charger, drop, stalls]: readonly [Charger, Drop, ServedStalls],
    [field, shared]: readonly [CordField, Shared],
  ) => workedOf(charger, drop, stalls, field, shared),
  near: ({ near }) => near,
  stale: ([field, shared], [fieldBefore, sharedBefore]) => {
    const boxes = shared === sharedBefore ? changesBetween(fieldBefore, field) : null;
    return boxes && { boxes, places: [] };
  },
});

const saidEach = keptEach(([{ findings }]: readonly [Worked]) => findings);

/** The reach of all chargers, in their order, and what is to be said of it. */
export function reachOfAll({ site: { chargers, drops }, field, shared }: Now): {
  readonly reach: readonly Reach[];
  readonly findings: readonly Finding[];
} {
  const worked = workEach([chargers, dropsOf(chargers, drops), servedIn(chargers, field)], [field, shared]);
  return { reach: oneList([worked], [chargers]), findings: flattened(saidEach([worked], [])) };
}

/** The reach of the chargers from one place up to another, the same as in the list of all. RangeError where there are none. */
export function reachBetween(
  { site: { chargers, drops }, field, shared }: Now,
  from: number,
  to: number,
): readonly Reach[] {
  if (from < 0 || to > chargers.length) throw new RangeError(`no chargers from place ${from} up to ${to}`);
  const [served, hung] = [servedIn(chargers, field), dropsOf(chargers, drops)];
  return chargers
    .slice(from, to)
    .flatMap((charger, i) => workedOf(charger, hung[from + i]!, served[from + i]!, field, shared).reach);
}

/** Where the reaches of each charger begin in the list of all. */
const firstOf = kept((chargers: readonly Charger[]): Int32Array => {
  const first = new Int32Array(chargers.length + 1);
  for (let i = 0; i < chargers.length; i++) first[i + 1] = first[i]! + chargers[i]!.stalls.length;
  return first;
});

const oneList = keptLists({
  anew: ([worked]: readonly [readonly Worked[]], _: readonly [readonly Charger[]]) =>
    worked.flatMap(({ reach }) => reach) as readonly Reach[],
  after: ({ answer }, places, [worked], [chargers]) => {
    const first = firstOf(chargers);
    const others = new Map(places.flatMap((i) => worked[i]!.reach.map((reach, k) => [first[i]! + k, reach] as const)));
    return patched(answer, [...others.keys()], (place) => others.get(place)!);
  },
});

const stallIds = listingIds<Stall>();

/** The stalls that each charger serves, with what is parked in them. */
const servedIn = (chargers: readonly Charger[], { stalls, vehicles }: CordField): readonly ServedStalls[] =>
  servedEach([parkedEach([stalls, vehicles], [])], [chargers, stallIds(stalls)]);

/** Each stall with what is parked in it, as what a charger serves that serves it alone: most do. */
const parkedEach = keptEach(([stall, vehicle]: readonly [Stall, Vehicle]): ServedStalls => [{ stall, vehicle }]);

const servedEach = keptLists({
  anew: (
    [parked]: readonly [readonly ServedStalls[]],
    [chargers, ids]: readonly [readonly Charger[], readonly string[]],
  ): readonly ServedStalls[] => {
    const places = placesById(ids);
    return chargers.map((charger) => servedNow(charger, parked, places));
  },
  after: ({ answer }, changed, [parked], [chargers, ids]) => {
    const serving = servingEach(chargers);
    const places = new Set(changed.flatMap((i) => serving.get(ids[i]!) ?? []));
    return patched(
      answer,
      [...places].sort((a, b) => a - b),
      (i) => servedNow(chargers[i]!, parked, placesById(ids)),
    );
  },
});

/** Places of the chargers that serve each stall. */
const servingEach = kept((chargers: readonly Charger[]): ReadonlyMap<string, readonly number[]> => {
  const serving = new Map<string, number[]>();
  chargers.forEach(({ stalls }, place) => {
    for (const id of stalls) addTo(serving, id, place);
  });
  return serving;
});

function servedNow(
  charger: Charger,
  parked: readonly ServedStalls[],
  placeOf: ReadonlyMap<string, number>,
): ServedStalls {
  const own = charger.stalls.map((id) => {
    const place = placeOf.get(id);
    if (place === undefined)
      throw new RangeError(`no element "${id}": a site's references are checked when it is read`);
    return parked[place]!;
  });
  return own.length === 1 ? own[0]! : servedBy(charger, own);
}

const servedBy = kept((_: Charger, own: readonly ServedStalls[]): ServedStalls => own.flat());

/** The ids of stalls that no charger serves. */
export const unservedIds = (chargers: readonly Charger[], stalls: readonly Stall[]): readonly string[] =>
  unservedBy(chargers, stallIds(stalls));

const unservedBy = kept((chargers: readonly Charger[], ids: readonly string[]): readonly string[] => {
  const serving = servingEach(chargers);
  return ids.filter((id) => !serving.has(id));
});
