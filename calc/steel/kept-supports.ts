import { movedBoxes } from '../../routing/checks/support/kept-near.ts';
import { copied } from '../../routing/kept/changed-places.ts';
import { kept } from '../../routing/kept/kept.ts';
import { keptLists, patched } from '../../routing/kept/kept-list.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { membersNear, steelOf } from '../../routing/network/support/steel-near.ts';
import { type Box, boxesMeet, boxOf, widened } from '../../routing/plane/box.ts';
import type { Member, Raceway, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import type { FeederLays } from './feeder-lays.ts';
import { laysOf, type RacewayLay } from './lays.ts';
import { type RacewaySupports, supportsAlong } from './raceway-supports.ts';

/** Whose conduits hang side by side: the branches of one piece of equipment, or the feeders. */
type Owner = EquipmentBranches | FeederLays;

/** What hangs along one raceway, by the place of the equipment that it belongs to. */
interface Lane {
  readonly raceway: Raceway;
  readonly box: Box;
  readonly lays: ReadonlyMap<number, readonly RacewayLay[]>;
  /** All of it, in the order of the equipment. */
  readonly all: readonly RacewayLay[];
}

/** The lanes in the order of their names, so that what was drawn before has no say in it. */
interface Lanes {
  readonly slots: ReadonlyMap<string, number>;
  readonly lanes: readonly Lane[];
}

/**
 * Supports of all conduits of branches and new feeders that hang along raceways, by raceway. Conduits of several pieces of
 * equipment may hang side by side, so it is worked by raceway: anew only where what hangs there, or a member near it, is
 * another than before.
 */
export function supportsOf(
  site: Pick<Site, 'members' | 'rules'>,
  branches: readonly EquipmentBranches[],
  feeders: FeederLays,
  tables: CodeTables,
): readonly RacewaySupports[] {
  const owners: readonly Owner[] = feeders.byRaceway.size === 0 ? branches : [...branches, feeders];
  return allSupports([lanesOf([owners], [tables]).lanes], [site.members, site.rules.hangReach]);
}

/** Lays of one owner by their raceways. */
const ownLays = kept((owner: Owner, tables: CodeTables): ReadonlyMap<string, readonly RacewayLay[]> => {
  if ('byRaceway' in owner) return owner.byRaceway;
  const own = new Map<string, RacewayLay[]>();
  for (const homeRun of owner.homeRuns) for (const lay of laysOf(homeRun, tables)) addTo(own, lay.raceway.id, lay);
  return own;
});

const lanesOf = keptLists({
  anew: ([owners]: readonly [readonly Owner[]], [tables]: readonly [CodeTables]): Lanes => {
    const lays = new Map<string, Map<number, readonly RacewayLay[]>>();
    owners.forEach((one, place) => {
      for (const [id, own] of ownLays(one, tables)) lays.set(id, (lays.get(id) ?? new Map()).set(place, own));
    });
    const ids = [...lays.keys()].sort();
    return { slots: new Map(ids.map((id, slot) => [id, slot])), lanes: ids.map((id) => laneOf(lays.get(id)!)) };
  },
  after: ({ answer, lists: [before] }, places, [owners], [tables]) => {
    const touched = new Map<number, Map<number, readonly RacewayLay[]>>();
    const touch = (id: string): Map<number, readonly RacewayLay[]> | null => {
      const slot = answer.slots.get(id);
      if (slot === undefined) return null;
      const known = touched.get(slot) ?? new Map(answer.lanes[slot]!.lays);
      touched.set(slot, known);
      return known;
    };
    for (const place of places) {
      for (const id of ownLays(before[place]!, tables).keys()) touch(id)?.delete(place);
      for (const [id, own] of ownLays(owners[place]!, tables)) {
        const lays = touch(id);
        // A raceway along which nothing hung before: the lanes are others.
        if (lays === null) return null;
        lays.set(place, own);
      }
    }
    const lanes = [...answer.lanes];
    for (const [slot, lays] of touched) {
      if (lays.size === 0) return null;
      lanes[slot] = laneOf(lays);
    }
    return {
      slots: answer.slots,
      lanes: copied(
        lanes,
        answer.lanes,
        [...touched.keys()].sort((a, b) => a - b),
      ),
    };
  },
});

function laneOf(lays: ReadonlyMap<number, readonly RacewayLay[]>): Lane {
  const places = [...lays.keys()].sort((a, b) => a - b);
  const all = places.flatMap((place) => lays.get(place)!);
  const { raceway } = all[0]!;
  return { raceway, box: boxOf(raceway.path), lays, all };
}

type Around = readonly [members: readonly Member[], reach: number];

const allSupports = keptLists({
  anew: ([lanes]: readonly [readonly Lane[]], around: Around): readonly RacewaySupports[] =>
    lanes.map((lane) => supportsOn(lane, around)),
  after: ({ answer }, places, [lanes], around) => patched(answer, places, (place) => supportsOn(lanes[place]!, around)),
  also: ([members, reach], { shared: [before, reachBefore], lists: [lanes] }) => {
    const moved = reach === reachBefore ? movedBoxes(before, members) : null;
    if (moved === null) return null;
    return lanes.flatMap(({ box }, place) =>
      moved.some((one) => boxesMeet(one, widened(box, reach + 1))) ? [place] : [],
    );
  },
});

function supportsOn({ raceway, box, all }: Lane, [members, reach]: Around): RacewaySupports {
  if (members.length === 0) return supportsAlong(raceway, all, null, reach);
  return supportsAlong(raceway, all, membersNear(steelOf(members), box, reach), reach);
}
