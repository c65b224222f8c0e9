import { runsOf } from '../../routing/network/runs.ts';
import type { Site } from '../../routing/site/site.ts';
import { hottestOn } from '../branches/ambient.ts';
import { designOf } from '../branches/design.ts';
import { type EquipmentBranches, equipmentBranches } from '../branches/equipment-branches.ts';
import { fill } from '../branches/home-runs/fill.ts';
import { isNipple } from '../branches/home-runs/home-run.ts';
import { lengthByKind } from '../branches/home-runs/member.ts';
import { branchSize } from '../circuits/branch-size.ts';
import { cord, type SizedCord } from '../circuits/cord.ts';
import { explained, SILENT, type Step, type Tell } from '../words/explain.ts';

const branchesOf = (site: Site): readonly EquipmentBranches[] =>
  equipmentBranches(site, runsOf(site).runs, designOf(site.rules));

/**
 * How the circuit of a charger was sized, step by step: design load, breaker, ampacity, conductor, voltage drop, grounding
 * conductor. From the code that sized it. Empty where it has no circuit.
 */
export function whyCircuit(site: Site, charger: string): readonly Step[] {
  const { tables, rules } = designOf(site.rules);
  for (const { circuits } of branchesOf(site)) {
    const circuit = circuits.find((one) => one?.charger === charger);
    if (!circuit) continue;
    const { way, branch } = circuit;
    return explained((tell) => {
      hottestOn(tables, rules, way.like, tell);
      return branchSize(tables, rules, way.charger, branch, lengthByKind(way, rules.allowance), tell);
    }).steps;
  }
  return [];
}

/** How the trade size of a conduit was found, step by step. Empty for a tray and where there is no such conduit. */
export function whyConduit(site: Site, conduit: string): readonly Step[] {
  const { tables } = designOf(site.rules);
  for (const { conduits } of branchesOf(site)) {
    const found = conduits.find(({ id }) => id === conduit);
    if (found === undefined) continue;
    if (found.method === 'tray') return [];
    const { method, conductors, length } = found;
    return explained((tell) => fill(tables, { method, conductors, nipple: isNipple(tables, length) }, tell)).steps;
  }
  return [];
}

/**
 * The cord of a charger by the tables, as long as its drop has it, at the ambient of the site; null where no size of them
 * carries its amperes, and where there is no such charger.
 */
export function cordOf(site: Site, charger: string, tell: Tell = SILENT): SizedCord | null {
  const one = site.chargers.find(({ id }) => id === charger);
  const drop = site.drops.find(({ id }) => id === one?.drop);
  if (one === undefined || drop === undefined) return null;
  const { tables, rules } = designOf(site.rules);
  const { amps, volts, phases } = one;
  return cord(tables, { amps, volts, phases, length: drop.cord, ambientC: rules.ambientC }, tell);
}

/** How the cord of a charger was found, step by step. Empty where no size of the tables carries its amperes. */
export const whyCord = (site: Site, charger: string): readonly Step[] =>
  explained((tell) => cordOf(site, charger, tell)).steps;
