import { kept } from '../../../routing/kept/kept.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import { type Demand, deviceOf, ratingOf } from '../../supply/panels/demand.ts';
import type { PanelSchedule } from '../../supply/panels/panel-schedule.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import { busIsOver } from '../../supply/tree/over-limit.ts';
import type { SupplyNode } from '../../supply/tree/supply-tree.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { backFeedFindings } from './back-feed.ts';
import { ratingFindings } from './protection/breaker-rating.ts';

/** Panels and other equipment: load over the main, busbar, back-feed, unit loads, spaces. */
export const equipmentLoadFindings = (facts: SupplyFacts): readonly Finding[] =>
  facts.tree.nodes.flatMap((node, place) => {
    const demand = facts.demands[place]!;
    if (busIsOver(facts.tables, node)) return spaces(node, facts);
    return [
      ...mainOverload(node, demand, facts),
      ...mainRating(node, facts),
      ...busOverload(node, place, demand, facts),
      ...unitLoad(node, place, demand, facts),
      ...backFeedFindings(node, place, facts),
      ...spaces(node, facts),
    ];
  });

const mainRating = ({ equipment: { id, mainAmps } }: SupplyNode, { tables }: SupplyFacts): readonly Finding[] =>
  mainAmps === undefined ? [] : ratingFindings(`main of ${id}`, mainAmps, [id], tables);

function mainOverload(node: SupplyNode, demand: Demand, { tables }: SupplyFacts): Finding[] {
  const { id, mainAmps } = node.equipment;
  if (mainAmps === undefined || demand.amps <= mainAmps * (1 + 1e-9)) return [];
  // The finding of a feeder with the same rating says it already.
  if (node.primary === null && node.feeder?.breakerAmps === mainAmps) return [];
  return [
    {
      severity: 'fail',
      rule: 'main-overload',
      about: [id],
      says: `${id} is asked for ${ampsText(demand.amps)}, continuous load counted ${continuousPercent(tables)}, and its main is ${mainAmps} A. Load management there, fewer chargers on it, or a larger main where its busbar and feeder allow.`,
      value: demand.amps,
      limit: mainAmps,
      unit: 'A',
      source: cited(tables, 'feederDevice', 'loadManagement'),
    },
  ];
}

function busOverload(
  { equipment }: SupplyNode,
  place: number,
  demand: Demand,
  { tree, tables }: SupplyFacts,
): Finding[] {
  const { id, busAmps } = equipment;
  if (busAmps === undefined) return [];
  const device = deviceOf(tree, place);
  const value = device ?? demand.amps;
  if (value <= busAmps * (1 + 1e-9)) return [];
  const says =
    device === undefined
      ? `${id} is asked for ${ampsText(value)} and its busbar is rated ${busAmps} A. Load management there, or a larger panel.`
      : `The ${device} A device ahead of ${id} is over the ${busAmps} A of its busbar. A smaller device, or a larger panel.`;
  const source = `${cited(tables, 'panelRating', 'panelDevice')}, from memory`;
  return [{ severity: 'fail', rule: 'bus-overload', about: [id], says, value, limit: busAmps, unit: 'A', source }];
}

function unitLoad(node: SupplyNode, place: number, demand: Demand, facts: SupplyFacts): Finding[] {
  const { equipment, primary, feeder } = node;
  const { tree, tables } = facts;
  // A transformer is held by the breaker of its feeder, on its other side.
  if (primary !== null)
    return feeder === null
      ? []
      : underUnitLoad(
          `Feeder ${feeder.id}`,
          [feeder.id, equipment.id],
          feeder.breakerAmps,
          demand.feederAmps,
          demand.unitFeederAmps,
          tables,
        );
  const rating = ratingOf(tree, place);
  return rating === undefined
    ? []
    : underUnitLoad(equipment.id, [equipment.id], rating, demand.amps, demand.unitAmps, tables);
}

function underUnitLoad(
  what: string,
  about: readonly string[],
  rating: number,
  amps: number,
  unitAmps: number,
  tables: CodeTables,
): Finding[] {
  if (amps > rating || unitAmps <= rating * (1 + 1e-9)) return [];
  const { unitLoadVa } = tables.vehicleSupply;
  return [
    {
      severity: 'fail',
      rule: 'unit-load',
      about,
      says: `${what} carries its chargers at their rating, ${ampsText(amps)} of ${rating} A, but not with ${unitLoadVa} VA counted for each smaller one, ${ampsText(unitAmps)}: a calculated load counts each charger so unless load management holds them lower. A ceiling there, fewer chargers, or a larger ${about.length > 1 ? 'breaker where the transformer allows' : 'main'}.`,
      value: unitAmps,
      limit: rating,
      unit: 'A',
      source: cited(tables, 'chargerLoad', 'managedLoad'),
    },
  ];
}

function spaces({ equipment: { id } }: SupplyNode, { schedules }: SupplyFacts): readonly Finding[] {
  const schedule = schedules.get(id);
  return schedule === undefined ? [] : spacesShort(schedule, id);
}

const spacesShort = kept((schedule: PanelSchedule, id: string): readonly Finding[] => {
  if (schedule.spaces === undefined) return [];
  const { poles, spaces: limit } = schedule;
  const source = 'ratings as entered, one space a pole';
  if (poles > limit) {
    const says = `The breakers of ${id} need ${poles} spaces and it has ${limit}. A panel with more, or a second one.`;
    return [{ severity: 'fail', rule: 'spaces-short', about: [id], says, value: poles, limit, unit: 'spaces', source }];
  }
  const homeless = schedule.circuits.filter((circuit) => circuit.spaces.length === 0);
  if (homeless.length === 0) return [];
  const names = homeless.map((circuit) => circuit.id);
  const says = `${names.join(', ')} ${names.length === 1 ? 'finds' : 'find'} no spaces in ${id} on the lines that balance it: ${limit - poles} are left, not side by side on those lines. A panel with more spaces, or ${names.length === 1 ? 'it' : 'them'} on the lines that are left at some cost in balance.`;
  return [
    {
      severity: 'warn',
      rule: 'spaces-order',
      about: [id, ...names],
      says,
      source: 'lines in turn down each side of a panel; common practice, no source',
    },
  ];
});
