import { runsOf } from '../routing/network/runs.ts';
import { reachOf } from '../routing/reach/reach.ts';
import type { Site } from '../routing/site/site.ts';
import { equipmentCircuits, inChargerOrder } from './circuits/circuits.ts';
import { phasorDrop } from './circuits/line-drop.ts';
import { conduitsOf, equipmentBranches } from './conduits/equipment-branches.ts';
import { designOf } from './conduits/home-run.ts';
import { planFindings } from './findings/plan-findings.ts';
import type { Plan, Supply } from './plan-shape.ts';
import { linesOf } from './supply/supply-lines.ts';
import { takeoff } from './takeoff/takeoff.ts';

const NO_SUPPLY: Supply = { equipment: [], feeders: [], transformers: [], loads: [] };

/**
 * The plan of a site: every run, cord, circuit, conduit and quantity, and what there is to say about them. Pure: the same
 * site gives the same plan. Each stage remembers what it was worked from, so that a plan of a site in which one thing
 * moved holds the objects of the last plan wherever nothing changed.
 */
export function plan(site: Site): Plan {
  const { runs, findings: ofRuns } = runsOf(site);
  const { reach, findings: ofReach } = reachOf(site);
  const design = designOf(site.rules);
  const lines = linesOf(site);
  const branches = equipmentBranches(site, runs, design);
  const supply = NO_SUPPLY;
  const circuits = branches.map((one) => {
    const phases = one.circuits.map((_, i) => lines.chargers.get(site.chargers[one.positions[i]!]!.id)!);
    const atBoxes = one.circuits.map((circuit) => {
      if (circuit === null) return null;
      const { charger } = circuit.way;
      const { dropPercent, voltsAtLoad } = phasorDrop({
        phases: charger.phases,
        volts: charger.volts,
        amps: charger.amps,
        ...circuit.branch.ohms,
        powerFactor: site.rules.powerFactor,
      });
      return { totalDropPercent: dropPercent, volts: voltsAtLoad };
    });
    return equipmentCircuits(one, phases, atBoxes);
  });
  return {
    site: site.name,
    runs,
    reach,
    circuits: inChargerOrder(site, circuits),
    conduits: conduitsOf(branches),
    supply,
    takeoff: takeoff(site, design.tables, circuits, supply.feeders),
    findings: planFindings(site, design, branches, [ofRuns, ofReach]),
  };
}
