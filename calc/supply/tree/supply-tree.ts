import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { indexById } from '../../../routing/site/ids.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Equipment, Feeder, Site } from '../../../routing/site/site.ts';
import { type System, singlePhaseSystem, suitsVolts, systemName, threePhaseSystem } from './system.ts';

/** One piece of equipment in the supply, with what feeds it. */
export interface SupplyNode {
  readonly equipment: Equipment;
  /** Place in the tree's list of what feeds it; -1 where nothing does. */
  readonly parent: number;
  /** The feeder that comes in; null where nothing feeds it. */
  readonly feeder: Feeder | null;
  /** The side that its chargers, its loads and what it feeds hang on. */
  readonly system: System;
  /** Of a transformer, the side that its own feeder comes in on; null for other equipment. */
  readonly primary: System | null;
}

/** All equipment, each after what feeds it: one tree, or several where not all hang on one source. */
export interface SupplyTree {
  readonly nodes: readonly SupplyNode[];
  readonly placeOf: ReadonlyMap<string, number>;
  /** Place of the transformer or the top of the tree that a piece of equipment is derived from: itself, or above. */
  readonly derivedFrom: readonly number[];
  readonly findings: readonly Finding[];
}

/** The voltage of last resort, where neither the equipment nor anything near it says one. */
const USUAL_VOLTS = 208;

const noted = (
  severity: Finding['severity'],
  rule: Finding['rule'],
  about: readonly string[],
  says: string,
  source = 'ratings as entered',
): Finding => ({ severity, rule, about, says, source });

/**
 * The supply as trees, rooted at what nothing feeds: the source, and any equipment without a feeder, which is then held at
 * its nominal voltage. A feeder that would be the second into one piece of equipment, that would close a ring or that
 * leads into a source is left out, with a finding; so is nothing else. Nominal systems come from the equipment, else from
 * what feeds it, else from what it feeds, which the `hints` say in the order of the equipment.
 */
export const supplyTree = kept(
  (equipment: readonly Equipment[], feeders: readonly Feeder[], hints: readonly (number | undefined)[]): SupplyTree => {
    const findings: Finding[] = [];
    const feederInto = incoming(equipment, feeders, findings);
    const order = outwards(equipment, feederInto);
    const placeOf = indexById(order);
    const hintOf = new Map(equipment.map(({ id }, i) => [id, hints[i]]));
    const hint = (id: string): number | undefined => hintOf.get(id);
    const nodes: SupplyNode[] = [];
    const derivedFrom: number[] = [];
    for (const one of order) {
      const feeder = feederInto.get(one.id) ?? null;
      const parent = feeder === null ? -1 : placeOf.get(feeder.from)!;
      const above = parent < 0 ? null : nodes[parent]!;
      derivedFrom.push(above === null || one.kind === 'transformer' ? nodes.length : derivedFrom[parent]!);
      nodes.push({ equipment: one, parent, feeder, ...systemsOf(one, above, hint, findings) });
    }
    findings.push(...rootFindings(nodes));
    return { nodes, placeOf, derivedFrom, findings };
  },
);

/** The feeder into each piece of equipment, without those that would make it no tree. */
function incoming(
  equipment: readonly Equipment[],
  feeders: readonly Feeder[],
  findings: Finding[],
): ReadonlyMap<string, Feeder> {
  const kinds = new Map(equipment.map(({ id, kind }) => [id, kind]));
  const into = new Map<string, Feeder>();
  for (const feeder of feeders) {
    const { id, from, to } = feeder;
    const leftOut = (why: string, cure: string): void => {
      const says = `Feeder ${id} from ${from} to ${to} is left out of the supply: ${why}. ${cure}`;
      findings.push(noted('fail', 'supply-tree', [id, to, from], says));
    };
    const other = into.get(to);
    if (kinds.get(to) === 'source') leftOut(`${to} is a source`, 'A source is where the supply starts.');
    else if (other !== undefined)
      leftOut(`${other.id} feeds ${to} already`, 'One feeder with more sets, or two pieces of equipment.');
    else if (leadsTo(to, from, into)) leftOut('it closes a ring', 'Open the ring at one of its feeders.');
    else into.set(to, feeder);
  }
  return into;
}

/** True where going up from `start` one comes to `target`, or they are the same. */
function leadsTo(target: string, start: string, into: ReadonlyMap<string, Feeder>): boolean {
  for (let at: string | undefined = start; at !== undefined; at = into.get(at)?.from) if (at === target) return true;
  return false;
}

/** Each after what feeds it; else in the order of the file. */
function outwards(equipment: readonly Equipment[], into: ReadonlyMap<string, Feeder>): Equipment[] {
  const fed = new Map<string | undefined, Equipment[]>();
  for (const one of equipment) {
    const from = into.get(one.id)?.from;
    addTo(fed, from, one);
  }
  const order = [...(fed.get(undefined) ?? [])];
  for (let next = 0; next < order.length; next++) order.push(...(fed.get(order[next]!.id) ?? []));
  return order;
}

/**
 * Volts that what hangs on each piece of equipment speaks of, where it says none itself: its first charger, what it feeds,
 * a three-phase load. Undefined where it says its own, or nothing does.
 */
export function voltsHints({ equipment, feeders, chargers, loads }: Site): readonly (number | undefined)[] {
  return equipment.map(({ id, kind, volts, secondaryVolts }) => {
    if (volts !== undefined || (kind === 'transformer' && secondaryVolts !== undefined)) return undefined;
    const charger = chargers.find(({ from }) => from === id);
    if (charger !== undefined) return charger.volts;
    for (const { from, to } of feeders) {
      const fed = from === id ? equipment.find((one) => one.id === to) : undefined;
      const hinted = fed?.kind === 'transformer' ? fed.primaryVolts : fed?.volts;
      if (hinted !== undefined) return hinted;
    }
    return loads.find(({ from, phases }) => from === id && phases === 3)?.volts;
  });
}

function systemsOf(
  equipment: Equipment,
  above: SupplyNode | null,
  hint: (id: string) => number | undefined,
  findings: Finding[],
): { readonly system: System; readonly primary: System | null } {
  const { id, kind } = equipment;
  const from = above?.system;
  const wanted = equipment.phases ?? from?.phases ?? 3;
  const phases = from?.phases === 1 ? 1 : wanted;
  const guessed = (what: string): number => {
    const volts = from?.volts ?? hint(id) ?? USUAL_VOLTS;
    if (from === undefined || what !== 'voltage')
      findings.push(noted('warn', 'supply-data', [id], `${id} has no ${what}; ${volts} V is taken. Enter it.`));
    return volts;
  };
  const alone = (volts: number): System => (phases === 3 ? threePhaseSystem(volts) : singlePhaseSystem(volts));
  if (kind === 'transformer') {
    const primary = equipment.primaryVolts ?? guessed('primary voltage');
    const secondary = equipment.secondaryVolts ?? equipment.volts ?? hint(id) ?? guessed('secondary voltage');
    compareVolts(id, primary, wanted, above, findings);
    const system: System =
      phases === 3 ? threePhaseSystem(secondary) : { volts: secondary, phases: 1, neutral: 'halfway' };
    return { system, primary: phases === 3 ? threePhaseSystem(primary) : (pairOf(from, primary) ?? alone(primary)) };
  }
  const volts = equipment.volts ?? guessed('voltage');
  compareVolts(id, volts, wanted, above, findings);
  if (from === undefined) return { system: alone(volts), primary: null };
  if (phases === 3 && from.phases === 3) return { system: threePhaseSystem(volts), primary: null };
  return { system: pairOf(from, volts)!, primary: null };
}

/** Two lines of what is above, at a nominal voltage, with its neutral. */
const pairOf = (from: System | undefined, volts: number): System | undefined =>
  from === undefined ? undefined : { volts, phases: 1, neutral: from.neutral };

function compareVolts(id: string, volts: number, phases: 1 | 3, above: SupplyNode | null, findings: Finding[]): void {
  if (above === null) return;
  const { system, equipment } = above;
  if (!suitsVolts(volts, system.volts)) {
    findings.push({
      ...noted(
        'fail',
        'voltage-mismatch',
        [id, equipment.id],
        `${id} is rated ${volts} V and is fed by ${equipment.id} at ${systemName(system)}. A transformer between them, or the right voltage on one of them.`,
      ),
      value: volts,
      limit: system.volts,
      unit: 'V',
    });
  }
  if (phases === 3 && system.phases === 1) {
    const says = `${id} is three-phase and is fed by ${equipment.id}, which has two lines. It is worked as single-phase.`;
    findings.push(noted('fail', 'voltage-mismatch', [id, equipment.id], says));
  }
}

function rootFindings(nodes: readonly SupplyNode[]): Finding[] {
  const roots = nodes.filter(({ parent }) => parent < 0);
  const loose = roots.filter(({ equipment }) => equipment.kind !== 'source').map(({ equipment }) => equipment.id);
  if (loose.length === 0) return [];
  const held = loose.length === 1 ? 'is held at its nominal voltage' : 'are held at their nominal voltages';
  const drops = 'so no drop ahead of it counts';
  if (loose.length === roots.length) {
    const says = `The site has no source: ${loose.join(', ')} ${held}, ${drops}. Add the source and the feeders from it.`;
    return [noted('note', 'supply-source', loose, says)];
  }
  const [they, feeder] = loose.length === 1 ? ['it', 'feeder'] : ['they', 'feeders'];
  const says = `Nothing feeds ${loose.join(', ')}: ${they} ${held}, ${drops}. Add the ${feeder}.`;
  return [noted('warn', 'supply-source', loose, says)];
}
