import { accessibleFindings } from '../../routing/checks/access/accessible-findings.ts';
import { guardFindings } from '../../routing/checks/access/guard-findings.ts';
import { reachRangeFindings } from '../../routing/checks/access/reach-range.ts';
import { equipmentFindings } from '../../routing/checks/equipment/equipment-findings.ts';
import { keepoutFindings } from '../../routing/checks/keepout-findings.ts';
import { overlapFindings } from '../../routing/checks/overlaps/overlap-findings.ts';
import { reachFindings } from '../../routing/checks/reach-findings.ts';
import { setbackFindings } from '../../routing/checks/setback-findings.ts';
import { supportFindings } from '../../routing/checks/support/support-findings.ts';
import { kept } from '../../routing/kept/kept.ts';
import { runsOf } from '../../routing/network/runs.ts';
import { reachOf } from '../../routing/reach/reach.ts';
import type { Site } from '../../routing/site/site.ts';
import { allBuried, boxesOf, sharedBoxes } from '../branches/boxes/boxes.ts';
import { handholesOf } from '../branches/boxes/handholes.ts';
import { designOf } from '../branches/design.ts';
import { conduitsOf, equipmentBranches } from '../branches/equipment-branches.ts';
import { ohmsByEquipment } from '../branches/ohms-of.ts';
import { withCode } from '../checks/by-code.ts';
import { checksOf } from '../checks/checks.ts';
import { handholeFindings } from '../checks/conduits/handhole-findings.ts';
import { openBoxFindings } from '../checks/conduits/open-boxes.ts';
import { feederPullFindings } from '../checks/conduits/pull-findings.ts';
import { limitGround } from '../checks/conduits/pull-limits.ts';
import { issuedNameFindings } from '../checks/issued-names.ts';
import type { Looked } from '../checks/looked.ts';
import { notCheckedOf } from '../checks/not-checked.ts';
import { planFindings } from '../checks/plan-findings.ts';
import { withheldOf } from '../checks/sound.ts';
import { supplyChecks } from '../checks/supply/supply-checks.ts';
import { dayGround, plannedDay } from '../day/planned-days.ts';
import type { PlannedDay } from '../plan-file/day.ts';
import { devicesOf } from '../supply/devices/devices.ts';
import { chargerFaults } from '../supply/fault/branch-faults.ts';
import { feederBoxesOf } from '../supply/feeders/feeder-boxes.ts';
import { feederConduits } from '../supply/feeders/feeder-conduit.ts';
import { workingNeeds } from '../supply/panels/working-needs.ts';
import { supplyIn } from '../supply/supply.ts';
import { linesOf, treeOf } from '../supply/tree/supply-lines.ts';
import { supportSpacings } from '../tables/raceway-of.ts';
import { circuitsOf, equipmentPhases } from './circuits.ts';
import type { Counting } from './counting.ts';
import type { Plan } from './plan-shape.ts';

/**
 * The plan of a site: every run, cord, circuit, conduit and quantity, and what there is to say about them. Pure: the same
 * site gives the same plan. Each stage remembers what it was worked from, so that the plan of a site in which one thing
 * moved holds the objects of the last plan wherever nothing changed. What no stage is made of (circuits, conduits,
 * boxes, the supply in figures, the takeoff, what hangs from the steel) is put together when it is asked for: a drag asks
 * for little of it at each step.
 * @param counting what the takeoff and what hangs are put together by, asked for when one of them is
 */
export function planned(site: Site, counting: () => Counting): Plan {
  const runs = runsOf(site);
  const reach = reachOf(site);
  const design = designOf(site.rules);
  const branches = equipmentBranches(site, runs.runs, design);
  const phases = equipmentPhases(site);
  const supply = supplyIn(site, runs.runs, design.tables);
  const shared = sharedBoxes(branches, design);
  const feeders = feederConduits(site, design.tables);
  const onFeeders = feederBoxesOf(site, feeders, shared, design.tables);
  const handholes = handholesOf(allBuried(site, branches, shared, onFeeders), site.stalls, site.aisles);
  const circuits = kept(() => circuitsOf({ branches, phases, boxSupply: supply.boxSupply }));
  const conduits = kept(() => conduitsOf(branches));
  const devices = kept(() => devicesOf(site, design.tables));
  const boxes = kept(() => boxesOf(branches, shared, onFeeders));
  const faults = kept(() => chargerFaults(branches, supply.facts));
  const looked: Looked = {
    site,
    runs: runs.runs,
    reach,
    branches,
    tree: treeOf(site),
    feeders,
    tables: design.tables,
  };
  const days = daysOf(site);
  const findings = planFindings(looked, design, [
    runs.findings,
    keepoutFindings(site),
    setbackFindings(site),
    overlapFindings(site),
    accessibleFindings(site),
    reachRangeFindings(site),
    guardFindings(site),
    supportFindings(site, supportSpacings(design.tables)),
    equipmentFindings(site, workingNeeds(site, design.tables)),
    withCode(reachFindings(site), design.tables),
    supplyChecks(site, supply, ohmsByEquipment(branches), branches),
    handholeFindings(handholes, site.columns, site.equipment, site.drops, site.units, design.tables),
    issuedNameFindings(branches, site.issued),
    openBoxFindings(branches, site.drops, site.raceways, site.members, design),
    ...days.map((day) => day.findings),
    feeders.flatMap((feeder) => feederPullFindings(feeder, design, site.pullpoints, limitGround(site))),
  ]);
  const supports = kept(() => {
    const { supportsOf, feederLays } = counting();
    return supportsOf(site, branches, feederLays(site, feeders, design.tables), design.tables);
  });
  const quantities = kept(() =>
    counting().takeoff(site, design.tables, branches, phases, { shared, onFeeders, handholes }, feeders, supports()),
  );
  const hung = kept(() =>
    counting().hungOf({ site, branches, sharedBoxes: shared, feeders, reach, supports: supports() }),
  );
  const checks = kept(() => checksOf(looked, findings));
  const withheld = kept(() => withheldOf(looked, findings));
  const notChecked = kept(() => notCheckedOf(looked));
  return {
    site: site.name,
    runs: runs.runs,
    reach,
    branches,
    phases,
    boxSupply: supply.boxSupply,
    get circuits() {
      return circuits();
    },
    get conduits() {
      return conduits();
    },
    get boxes() {
      return boxes();
    },
    get supply() {
      return supply.supply;
    },
    get devices() {
      return devices();
    },
    get loadCalculations() {
      return supply.loads;
    },
    get faults() {
      return faults();
    },
    handholes,
    get takeoff() {
      return quantities();
    },
    get hung() {
      return hung().hung;
    },
    get loose() {
      return hung().loose;
    },
    days,
    findings,
    get checks() {
      return checks();
    },
    get withheld() {
      return withheld();
    },
    get notChecked() {
      return notChecked();
    },
  };
}

const NO_DAYS: readonly PlannedDay[] = [];

/** Days of charging: none is worked anew by moving anything but what feeds the chargers. */
function daysOf(site: Site): readonly PlannedDay[] {
  if (site.days.length === 0) return NO_DAYS;
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  return site.days.map((day) => plannedDay(day, ground));
}
