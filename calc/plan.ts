import { equipmentFindings } from '../routing/network/equipment-findings.ts';
import { keepoutFindings } from '../routing/network/keepouts.ts';
import { runsOf } from '../routing/network/runs.ts';
import { reachOf } from '../routing/reach/reach.ts';
import type { Site } from '../routing/site/site.ts';
import { equipmentCircuits, inChargerOrder, ohmsOf } from './circuits/circuits.ts';
import { boxesOf } from './conduits/boxes.ts';
import { designOf } from './conduits/design.ts';
import { conduitsOf, equipmentBranches } from './conduits/equipment-branches.ts';
import { feederConduits } from './conduits/feeder-conduit.ts';
import { planFindings } from './findings/plan-findings.ts';
import { feederFindings } from './findings/pull-findings.ts';
import { limitGround } from './findings/pull-limits.ts';
import type { Plan } from './plan-shape.ts';
import { supplyOf } from './supply/supply.ts';
import { linesOf } from './supply/supply-lines.ts';
import { takeoff } from './takeoff/takeoff.ts';

/**
 * The plan of a site: every run, cord, circuit, conduit and quantity, and what there is to say about them. Pure: the same
 * site gives the same plan. Each stage remembers what it was worked from, so that the plan of a site in which one thing
 * moved holds the objects of the last plan wherever nothing changed.
 */
export function plan(site: Site): Plan {
  const runs = runsOf(site);
  const reach = reachOf(site);
  const design = designOf(site.rules);
  const branches = equipmentBranches(site, runs.runs, design);
  const supply = supplyOf(site, runs.runs, ohmsOf(site, branches), design.tables);
  const circuits = equipmentCircuits(site, branches, linesOf(site), supply.boxes);
  const boxes = boxesOf(site, branches, design.tables);
  const feeders = feederConduits(site, supply.supply.feeders, design.tables);
  return {
    site: site.name,
    runs: runs.runs,
    reach: reach.reach,
    circuits: inChargerOrder(site, circuits),
    conduits: conduitsOf(site, branches),
    boxes: boxes.all,
    supply: supply.supply,
    takeoff: takeoff(site, design.tables, circuits, boxes.shared, feeders),
    findings: planFindings(site, design, branches, [
      runs.findings,
      keepoutFindings(site),
      equipmentFindings(site),
      reach.findings,
      supply.findings,
      feeders.flatMap((feeder) => feederFindings(feeder, design, site.pullpoints, limitGround(site))),
    ]),
  };
}
