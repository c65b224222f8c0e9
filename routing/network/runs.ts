import { kept } from '../kept/kept.ts';
import { keptEach, keptLists, movedItems, patched } from '../kept/kept-list.ts';
import { type Partition, partitionBy } from '../kept/parts.ts';
import { flattened } from '../plane/kept-nearby.ts';
import { LENGTH_SLACK } from '../plane/space.ts';
import { dropsOf } from '../site/hanging.ts';
import { byId } from '../site/look-up.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Drop, Equipment, Site } from '../site/site.ts';
import { type Network, networkOf } from './network.ts';
import type { Run } from './run.ts';
import { branchLimitFinding, noRunFinding, type Planned, pedestalFeedFinding } from './run-findings.ts';
import { closestTap } from './taps.ts';
import { shortestWay } from './way.ts';
import { type WaysFrom, waysFrom } from './ways.ts';

export interface Runs {
  readonly runs: readonly Run[];
  readonly findings: readonly Finding[];
}

/** A run, and what is to be said of it. */
interface Worked {
  readonly run: Run;
  readonly findings: readonly Finding[];
}

/** The one list that stands for no findings. */
const NOTHING: readonly Finding[] = [];

/**
 * The run of every charger, in the order of the chargers: the shortest path from the entry of the equipment that feeds
 * it to the box of its drop, tap + raceway + tap, measured in space. Findings: `no-run` where a
 * tap would be longer than `tapLimit`, `branch-limit` where the conductors are longer than allowed, `pedestal-feed` where
 * a pedestal is tapped from overhead. Feet and degrees.
 *
 * Equal lengths are decided by fewer bends, then by the raceways' ids read from the box back to the equipment. A run
 * whose charger, drop, rules, equipment and raceways are the same objects as before is returned as the same object.
 */
export function runsOf(site: Site): Runs {
  const { chargers, drops, rules, units, raceways } = site;
  const network = networkOf(raceways, rules.joinTolerance);
  const { keys, partition } = byFeeding(chargers);
  const feeding = feedingEach([keys], [site.equipment, network, rules.tapLimit]);
  return together(
    allRuns([chargers, dropsOf(chargers, drops), ofChargers([feeding], [partition])], [rules, units, raceways]),
  );
}

/** Chargers by the equipment that feeds them. */
const byFeeding = kept((chargers: readonly Charger[]) => partitionBy(chargers, ({ from }) => from));

/** What feeds chargers, and the ways from there. */
interface Feeding {
  readonly equipment: Equipment;
  readonly ways: WaysFrom;
}

const feedingBy = kept((equipment: Equipment, ways: WaysFrom): Feeding => ({ equipment, ways }));

const feedingEach = keptEach(
  ([id]: readonly [string], [all, network, tapLimit]: readonly [readonly Equipment[], Network, number]): Feeding => {
    const equipment = feedingEquipment(all, id);
    return feedingBy(equipment, waysFrom(network, equipment, tapLimit));
  },
);

/** What feeds each charger, from what there is of each that feeds any. */
const ofChargers = keptLists({
  anew: ([feeding]: readonly [readonly Feeding[]], [{ partOf }]: readonly [Partition]): readonly Feeding[] =>
    Array.from(partOf, (part) => feeding[part]!),
  after: ({ answer }, parts, [feeding], [{ places, partOf }]) =>
    patched(
      answer,
      parts.flatMap((part) => places[part]!).sort((a, b) => a - b),
      (charger) => feeding[partOf[charger]!]!,
    ),
});

/** The runs of all chargers, and what is to be said of each. */
interface Each {
  readonly runs: readonly Run[];
  readonly said: readonly (readonly Finding[])[];
}

type Sides = readonly [readonly Charger[], readonly Drop[], readonly Feeding[]];

const allRuns = keptLists({
  anew: (sides: Sides, shared: readonly [Site['rules'], Site['units'], Site['raceways']]): Each => {
    const { length } = sides[0];
    const runs = new Array<Run>(length);
    const said = new Array<readonly Finding[]>(length);
    for (let place = 0; place < length; place++) {
      const { run, findings } = workAt(sides, shared, place);
      runs[place] = run;
      said[place] = findings;
    }
    return { runs, said };
  },
  after: ({ answer }, places, sides, shared) => {
    const worked = new Map(places.map((place) => [place, workAt(sides, shared, place)]));
    return {
      runs: patched(answer.runs, places, (place) => worked.get(place)!.run),
      said: patched(answer.said, places, (place) => worked.get(place)!.findings),
    };
  },
  moved: ({ runs, said }, from) => ({ runs: movedItems(runs, from), said: movedItems(said, from) }),
});

const together = kept(({ runs, said }: Each): Runs => ({ runs, findings: flattened(said) }));

const workAt = (
  [chargers, drops, feeding]: Sides,
  [rules, units, raceways]: readonly [Site['rules'], Site['units'], Site['raceways']],
  i: number,
): Worked => workOut(chargers[i]!, drops[i]!, feeding[i]!, rules, units, raceways);

function feedingEquipment(equipment: readonly Equipment[], id: string): Equipment {
  const found = byId(equipment).get(id);
  if (!found) throw new RangeError(`${id} feeds a charger and is not in the site`);
  return found;
}

const workOut = kept(
  (
    charger: Charger,
    drop: Drop,
    { equipment, ways }: Feeding,
    rules: Site['rules'],
    units: Site['units'],
    raceways: Site['raceways'],
  ): Worked => {
    const site: Planned = { rules, units, raceways };
    const run = runOf(ways, charger, drop, rules);
    if (run.length === null) return { run, findings: [noRunFinding(site, charger, drop, equipment, ways)] };
    const said = [branchLimitFinding(site, charger, run), pedestalFeedFinding(site, charger, drop, run)];
    const findings = said.filter((finding) => finding !== null);
    return { run, findings: findings.length === 0 ? NOTHING : findings };
  },
);

function runOf(ways: WaysFrom, charger: Charger, drop: Drop, rules: Site['rules']): Run {
  const tap = closestTap(ways.network, drop.box, rules.tapLimit, (component) => ways.parts.has(component));
  const way = tap && shortestWay(ways, [tap], drop.box);
  const conductorLength = way && way.length + rules.allowance.equipment + rules.allowance.box;
  // Written out in full, every run with the same fields in the same order: there are many.
  return {
    charger: charger.id,
    drop: drop.id,
    from: charger.from,
    length: way ? way.length : null,
    conductorLength,
    taps: way && { equipment: way.taps.start, box: way.taps.end },
    path: way ? way.path : [],
    raceways: way ? way.raceways : [],
    legs: way ? way.legs : [],
    bends: way ? way.bends : 0,
    bendDegrees: way ? way.bendDegrees : 0,
    ok: conductorLength !== null && conductorLength <= (charger.branchLimit ?? rules.branchLimit) + LENGTH_SLACK,
  };
}
