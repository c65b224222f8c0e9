import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Device } from '../../plan-file/supply.ts';
import { chargerDevices, loadDevices } from '../../supply/devices/branch-devices.ts';
import { deviceOf, greatestLine } from '../../supply/panels/demand.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import type { SupplyNode } from '../../supply/tree/supply-tree.ts';

/**
 * A busbar that generation feeds beside its main, by every way that the code gives: the device and 125% of the generation
 * within its rating; within 120% of it from opposite ends; the breakers on it together, the main left out, within its
 * rating. A center-fed panel of a dwelling, a busbar of several ratings and a power control system are not drawn.
 */
export function backFeedFindings({ equipment }: SupplyNode, place: number, facts: SupplyFacts): Finding[] {
  const { tree, model, state, tables } = facts;
  const { id, busAmps } = equipment;
  if (state.backFeed === null || busAmps === undefined) return [];
  const back = greatestLine(state.backFeed.out, model.loadBus[place]!);
  if (back === 0) return [];
  const known = deviceOf(tree, place);
  // A busbar is protected at its rating (408.36), so that a device which is not given is counted as that.
  const device = known ?? busAmps;
  const value = device + back;
  if (value <= busAmps * (1 + 1e-9)) return [];
  const { share, factor, source } = tables.busSources;
  const limit = share * busAmps;
  const sum = `${ampsText(back)}, ${100 * factor}% of the generation behind ${id}, and ${known === undefined ? `its main, which is not given and is counted as its ${busAmps} A busbar,` : `its ${device} A device`} come to ${ampsText(value)}`;
  const finding = { rule: 'back-feed', about: [id], value, unit: 'A', source: `${source}, from memory` } as const;
  const breakers = breakersOn(id, facts);
  const total = breakers.reduce<number | null>(
    (all, { amps }) => (all === null || amps === null ? null : all + amps),
    0,
  );
  // Only where what protects the busbar is known.
  const bySum = known !== undefined && total !== null && total <= busAmps * (1 + 1e-9);
  const sumWords =
    total === null
      ? 'what its breakers come to is not known'
      : `its breakers but for the main come to ${ampsText(total)}`;
  if (value <= limit * (1 + 1e-9)) {
    const end = endOf(id, place, breakers, facts);
    const says = `${sum}, over the ${busAmps} A of the busbar and within ${100 * share}%: the generation's breaker stands at the far end of the busbar from the main, and is marked so. ${end.says}${bySum ? ` Or by the sum of the breakers: ${sumWords}, with a label that says so.` : ''}`;
    return [{ ...finding, severity: end.isFar ? 'note' : 'warn', says, limit: busAmps }];
  }
  if (bySum) {
    const says = `${sum}, over ${ampsText(limit)}, ${100 * share}% of the ${busAmps} A busbar; ${sumWords}, within it, which allows it all the same: a label at the board says that they may never come to more than the busbar.`;
    return [{ ...finding, severity: 'warn', says, limit }];
  }
  const says = `${sum}; a ${busAmps} A busbar may have ${ampsText(limit)} from its two ends, and ${sumWords}. A larger busbar, a smaller device, less generation, or a connection ahead of the main.`;
  return [{ ...finding, severity: 'fail', says, limit }];
}

/** Breakers that stand on the busbar of a piece of equipment: its main is none of them. */
const breakersOn = (id: string, { devices, chargers, loads, tree, lines, tables }: SupplyFacts): readonly Device[] =>
  [...devices, ...chargerDevices(chargers, tree, lines, tables), ...loadDevices(loads, tree, lines, tables)].filter(
    ({ at, use, protects }) => at === id && use !== 'main' && !protects.includes(id),
  );

/** Whether the breakers that feed back end the busbar, with no other beyond the first of them, as the schedule has it. */
function endOf(
  id: string,
  place: number,
  breakers: readonly Device[],
  { schedules, loads, tree, state, model }: SupplyFacts,
): { readonly isFar: boolean; readonly says: string } {
  const generates = new Set(loads.flatMap(({ id: load, generation }) => (generation === true ? [load] : [])));
  const feedsBack = new Set(
    tree.nodes.flatMap(({ parent, feeder }, at) =>
      parent === place && feeder !== null && greatestLine(state.backFeed!.into, model.feedBus[at]!) > 0
        ? [feeder.id]
        : [],
    ),
  );
  const back = new Set(breakers.map(({ of }) => of).filter((of) => generates.has(of) || feedsBack.has(of)));
  const schedule = schedules.get(id);
  const circuits = schedule?.circuits.filter(({ spaces }) => spaces.length > 0) ?? [];
  const rowOf = (spaces: readonly number[]): number => Math.ceil(Math.max(...spaces) / 2);
  const sources = circuits.filter((circuit) => back.has(circuit.id));
  if (schedule?.spaces === undefined || sources.length === 0 || sources.length < back.size)
    return { isFar: false, says: 'Where it stands is not known here.' };
  const others = circuits.filter((circuit) => !back.has(circuit.id)).map(({ spaces }) => rowOf(spaces));
  const rows = sources.map(({ spaces }) => rowOf(spaces));
  const last = Math.ceil(schedule.spaces / 2);
  const isFar = Math.min(...rows) > Math.max(0, ...others) && Math.max(...rows) === last;
  const spaces = sources.map((one) => `${one.id} in ${one.spaces.join(', ')}`).join('; ');
  return {
    isFar,
    says: isFar
      ? `The schedule has it there (${spaces}).`
      : `The schedule has it elsewhere (${spaces}): it is to be moved there.`,
  };
}
