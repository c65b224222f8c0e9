import { kept } from '../../routing/kept/kept.ts';
import type { Run } from '../../routing/network/run.ts';
import { runsOf } from '../../routing/network/runs.ts';
import { siteRule } from '../../routing/site/rules/rule-notes.ts';
import type { Site } from '../../routing/site/site.ts';
import { designOf } from '../branches/design.ts';
import type { BranchOhms } from '../branches/equipment-branches.ts';
import { type EquipmentBranches, equipmentBranches } from '../branches/equipment-branches.ts';
import { ohmsOf } from '../branches/ohms-of.ts';
import type { Supply } from '../plan-file/supply.ts';
import { branchFaultSteps } from '../supply/fault/branch-fault-steps.ts';
import { branchFaultOf } from '../supply/fault/branch-faults.ts';
import { ohmText } from '../supply/fault/fault-steps.ts';
import { feederSteps } from '../supply/feeders/feeder-steps.ts';
import type { BoxVolts } from '../supply/load-flow/box-volts.ts';
import { equipmentSteps, lineText, SWEEP_SOURCE } from '../supply/panels/equipment-steps.ts';
import { siteLoads } from '../supply/service/site-loads.ts';
import { type SupplyWork, supplyOf, supplyWork } from '../supply/supply.ts';
import { transformerSteps } from '../supply/transformers/transformer-steps.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { explained, type Step } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

interface Worked {
  readonly branches: readonly EquipmentBranches[];
  readonly runs: readonly Run[];
  readonly tables: CodeTables;
  readonly ohms: readonly (BranchOhms | null)[];
  readonly work: SupplyWork;
  readonly supply: Supply;
  readonly boxes: readonly (BoxVolts | null)[];
}

/** The calculations of a lot ask for the steps of every circuit: what they are steps of is gathered once. */
const worked = kept((site: Site): Worked => {
  const design = designOf(site.rules);
  const { tables } = design;
  const { runs } = runsOf(site);
  const branches = equipmentBranches(site, runs, design);
  const ohms = ohmsOf(site, branches);
  return { branches, runs, tables, ohms, work: supplyWork(site, runs, tables), ...supplyOf(site, runs, ohms, tables) };
});

/**
 * How what the plan says of a piece of equipment was found, step by step, from the solution of the whole supply: connected
 * load, amps, volts, demand, loading, fault current; of a transformer its loading too. Empty where there is none.
 */
export function whyEquipment(site: Site, id: string): readonly Step[] {
  const { runs, tables, work, supply } = worked(site);
  const row = supply.equipment.find((each) => each.id === id);
  if (row === undefined) return [];
  const transformer = supply.transformers.find((each) => each.id === id);
  return [
    ...equipmentSteps(site, runs, work, row, tables),
    ...(transformer === undefined ? [] : transformerSteps(work, transformer, tables)),
  ];
}

/** How the load calculation of the service of a source was found, step by step. Empty where there is no such source. */
export function whyLoad(site: Site, source: string): readonly Step[] {
  const { runs, work, tables } = worked(site);
  return explained((tell) => siteLoads(site, runs, work, tables, tell, source)).steps;
}

/** How what the plan says of a feeder was found, step by step, likewise. Empty where there is none in the supply. */
export function whyFeeder(site: Site, id: string): readonly Step[] {
  const { tables, work, supply } = worked(site);
  const row = supply.feeders.find((each) => each.id === id);
  return row === undefined ? [] : feederSteps(work, row, site, tables);
}

/** How the volts at a charger's box, and the drop from nominal to it, were found. Empty where it has no branch. */
export function whyBox(site: Site, charger: string): readonly Step[] {
  const at = site.chargers.findIndex(({ id }) => id === charger);
  const { work, supply, boxes, ohms } = worked(site);
  const box = boxes[at] ?? null;
  const branch = ohms[at] ?? null;
  if (box === null || branch === null) return [];
  const { from, amps } = site.chargers[at]!;
  const row = supply.equipment.find(({ id }) => id === from)!;
  const nominal = work.tree.nodes[work.tree.placeOf.get(from)!]!.system.volts;
  const { AB, BC, CA } = row.volts;
  return [
    {
      find: 'volts at the box',
      formula: `volts at ${from}, everything on, less the drop of its current in the ohms of its branch, as phasors`,
      values: {
        [`volts at ${from}`]: lineText({ AB, BC, CA }, 'V'),
        lines: work.lines.chargers.get(charger) ?? '',
        amperes: measured(amps * row.chargerShare, 'A'),
        'power factor': site.rules.powerFactor,
        'one line of the branch': ohmText({ re: branch.r, im: branch.x }),
      },
      result: box.volts,
      unit: 'V',
      source: SWEEP_SOURCE,
    },
    {
      find: 'drop in all',
      formula: '100 x (nominal volts - volts at the box) / nominal volts',
      values: { nominal: measured(nominal, 'V'), 'at the box': measured(box.volts, 'V') },
      result: box.totalDropPercent,
      unit: '%',
      source: 'definition',
    },
    {
      find: 'worst drop in all',
      formula:
        row.chargerShare === 1
          ? 'the drop in all, of the cases with generation and without; no less than its branch by itself'
          : 'the same where it alone runs at its rating and the rest of what is managed with it is scaled by one factor so that the ceiling is kept; what hangs beside its way keeps its currents; of the cases with generation and without, and no less than its branch by itself',
      values: {
        amperes: measured(amps, 'A'),
        'the others, of their rating':
          row.chargerShare === 1
            ? 'all of it'
            : `about ${(100 * row.chargerShare).toFixed(0)}%, less what it takes more`,
      },
      result: box.worstDropPercent,
      unit: '%',
      source: `${SWEEP_SOURCE}; limit: ${siteRule('dropLimit.total')}`,
    },
  ];
}

/** How the fault currents at a charger's box were found. Empty where it has no branch, or nothing is known of its supply. */
export function whyBranchFault(site: Site, charger: string): readonly Step[] {
  const { tables, work, branches } = worked(site);
  const found = branchFaultOf(branches, { ...work, rules: site.rules, tables }, charger);
  return found === null ? [] : branchFaultSteps(found, work.tree, site.rules, tables);
}
