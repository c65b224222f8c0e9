import { addTo } from '../../../../routing/lists/grouping.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Solved } from '../../../supply/load-flow/sweep.ts';
import type { SupplyFacts } from '../../../supply/supply-facts.ts';
import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { VOLTAGE_RANGE, voltageRange } from '../../../tables/voltage-range.ts';

/** Volts of equipment past what a system has in ordinary service: too high by generation, too low at other loads. */
export const voltageFindings = (facts: SupplyFacts): readonly Finding[] => [...rise(facts), ...lowAtLoads(facts)];

/** Line-to-line volts of the pairs that a node has. */
function pairsOf({ volts }: Solved, bus: number, { system }: SupplyNode, lines: string): readonly number[] {
  const at = (line: number, part: number): number => volts[6 * bus + 2 * line + part]!;
  const pairs =
    system.phases === 3
      ? [
          [0, 1],
          [1, 2],
          [2, 0],
        ]
      : [['ABC'.indexOf(lines[0]!), 'ABC'.indexOf(lines[1]!)]];
  return pairs.map(([a, b]) => Math.hypot(at(a!, 0) - at(b!, 0), at(a!, 1) - at(b!, 1)));
}

/** Where generation, with nothing drawn, brings volts over the range: one finding a derived system, at its highest. */
function rise({ tree, model, state, lines }: SupplyFacts): Finding[] {
  const { idle } = state;
  if (idle === null) return [];
  const over = new Map<number, { readonly id: string; readonly volts: number; readonly most: number }[]>();
  tree.nodes.forEach((node, place) => {
    const { id } = node.equipment;
    const volts = Math.max(...pairsOf(idle, model.loadBus[place]!, node, lines.equipment.get(id) ?? 'AB'));
    const { most } = voltageRange(node.system.volts);
    if (volts <= most * (1 + 1e-9)) return;
    const system = tree.derivedFrom[place]!;
    addTo(over, system, { id, volts, most });
  });
  return [...over.values()].map((list): Finding => {
    const worst = list.reduce((high, one) => (one.volts > high.volts ? one : high));
    const others = list.filter((one) => one !== worst).map(({ id }) => id);
    const more = others.length === 0 ? '' : ` ${others.join(', ')} ${others.length === 1 ? 'is' : 'are'} over it too.`;
    return {
      severity: 'fail',
      rule: 'voltage-rise',
      about: [worst.id, ...others],
      says: `With its generation on and nothing drawn ${worst.id} has ${worst.volts.toFixed(1)} V, over ${worst.most} V, the highest in ordinary service, and the source at its nominal voltage: inverters trip there, and what is on sees it.${more} Larger conductors or a shorter way to the source, generation nearer by, or less of it.`,
      value: worst.volts,
      limit: worst.most,
      unit: 'V',
      source: VOLTAGE_RANGE.source,
    };
  });
}

/** Equipment with other loads whose volts are under the range with everything on. */
function lowAtLoads({ tree, model, state, lines, loads }: SupplyFacts): Finding[] {
  const drawing = new Set(loads.flatMap(({ from, generation }) => (generation === true ? [] : [from])));
  const solved = state.withoutGeneration ?? state.full;
  return tree.nodes.flatMap((node, place): Finding[] => {
    const { id } = node.equipment;
    if (!drawing.has(id)) return [];
    const volts = Math.min(...pairsOf(solved, model.loadBus[place]!, node, lines.equipment.get(id) ?? 'AB'));
    const { least } = voltageRange(node.system.volts);
    if (volts >= least * (1 - 1e-9)) return [];
    return [
      {
        severity: 'fail',
        rule: 'voltage-window',
        about: [id],
        says: `${id} has ${volts.toFixed(1)} V with everything on, under ${least} V, the lowest that equipment has in ordinary service: its other loads are not made for it. Larger feeder conductors, a higher feeder voltage, or load management.`,
        value: volts,
        limit: least,
        unit: 'V',
        source: VOLTAGE_RANGE.source,
      },
    ];
  });
}
