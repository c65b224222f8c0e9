import { printLength } from '../../routing/site/feet-inches.ts';
import type { Charger, Drop, Rules, Site } from '../../routing/site/site.ts';
import type { Units } from '../../routing/site/vocabulary.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import type { NamedHomeRun } from '../conduits/named.ts';
import { inChunks, remembered } from '../memo.ts';
import type { PhasePair, SupplyFeeder, TakeoffRow } from '../plan-shape.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { chargerQuantities, dropQuantities, pullpointQuantities } from './drop-quantities.ts';
import { homeRunQuantities } from './home-run-quantities.ts';
import { rowsOf } from './rows.ts';
import { equipmentQuantities, feederQuantities } from './supply-quantities.ts';
import { addedUp, type Tally } from './tally.ts';

/** The branches of one piece of equipment with the lines that each of its chargers hangs on. */
export interface PhasedBranches {
  readonly branches: EquipmentBranches;
  /** In the order of the equipment's chargers. */
  readonly phases: readonly PhasePair[];
}

/**
 * Quantities of everything that the site's branches, drops, equipment and new feeders need. Conductor and raceway
 * lengths include the waste of the rules; every row says what it counts and opens into the elements it is made of.
 */
export function takeoff(
  site: Site,
  tables: CodeTables,
  branches: readonly PhasedBranches[],
  feeders: readonly SupplyFeeder[],
): readonly TakeoffRow[] {
  const { rules, units } = site;
  const chargersAt = chargersByDrop(site.chargers);
  const total = addedUp([
    equipmentTally(site.equipment),
    feedersTally(site.feeders, rules, feeders),
    ...branches.map(({ branches, phases }) => branchesTally(branches, phases, tables, rules)),
    pullsTally(site.pullpoints),
    ...inChunks(site.drops, (first, chunk) => dropsTally(first, chunk, chargersAt, units)),
    ...inChunks(site.chargers, chargersTally),
  ]);
  return rowsOf([...total.values()], rules);
}

const equipmentTally = remembered(equipmentQuantities);
const feedersTally = remembered(feederQuantities);
const pullsTally = remembered(pullpointQuantities);

const dropsTally = remembered(
  (_first: Drop, chunk: readonly Drop[], chargersAt: ReadonlyMap<string, readonly Charger[]>, units: Units): Tally =>
    dropQuantities(chunk, chargersAt, (feet) => printLength(feet, units)),
);

const chargersTally = remembered((_first: Charger, chunk: readonly Charger[]): Tally => chargerQuantities(chunk));

const chargersByDrop = remembered((chargers: readonly Charger[]): ReadonlyMap<string, readonly Charger[]> => {
  const at = new Map<string, Charger[]>();
  for (const charger of chargers) {
    const others = at.get(charger.drop);
    if (others === undefined) at.set(charger.drop, [charger]);
    else others.push(charger);
  }
  return at;
});

const branchesTally = remembered(
  (branches: EquipmentBranches, phases: readonly PhasePair[], tables: CodeTables, rules: Rules): Tally => {
    const byCharger = new Map<string, PhasePair>();
    branches.circuits.forEach((circuit, i) => {
      if (circuit !== null) byCharger.set(circuit.charger, phases[i]!);
    });
    return addedUp(
      branches.homeRuns.map((homeRun) =>
        homeRunTally(
          homeRun,
          homeRun.circuits.map(({ charger }) => byCharger.get(charger)!),
          tables,
          rules,
        ),
      ),
    );
  },
);

const homeRunTally = remembered(
  (homeRun: NamedHomeRun, phases: readonly PhasePair[], tables: CodeTables, rules: Rules): Tally =>
    homeRunQuantities(tables, rules, homeRun, phases),
);
