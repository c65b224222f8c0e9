import type { Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { type CardCircuit, panelCards } from '../../supply/panels/panel-card.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

const HEAD = ['panel', 'spaces', 'lines', 'serves', 'what', 'breaker (A)', 'amps', 'va', 'issued'];

/** Panel schedules under one another: a row for the main and for each breaker, then what is connected by line and the demand. */
export function panelSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const loads = new Map(site.loads.map((load) => [load.id, load]));
  const chargers = new Map(site.chargers.map((charger) => [charger.id, charger]));
  const cards = panelCards(site, plan.devices, designOf(site.rules).tables);
  const row = (panel: string, { id, serves, lines, spaces, breakerAmps, va, issued }: CardCircuit): Cell[] => [
    panel,
    spaces.length > 0 ? spaces.join(', ') : 'no space',
    lines,
    id,
    (serves === 'load' ? loads.get(id)?.name : undefined) ?? serves,
    breakerAmps,
    (serves === 'charger' ? chargers.get(id)?.amps : undefined) ?? null,
    va,
    issued ? 'issued' : null,
  ];
  const totals = cards.flatMap(({ schedule, lineVa, demand, demandVa, demandAmps, spares, blank }): Cell[][] => [
    ...lineVa.map(({ line, va }): Cell[] => [schedule.equipment, `connected on ${line}`, va, null, null, null]),
    ...demand.map(({ what, connectedVa, percent, demandVa: va, basis }): Cell[] => [
      schedule.equipment,
      what,
      connectedVa,
      percent,
      va,
      basis,
    ]),
    [schedule.equipment, 'demand, balanced', null, null, demandVa, `${demandAmps.toFixed(1)} A`],
    [schedule.equipment, 'spare and space', null, null, null, `${spares} spare, ${blank} space`],
  ]);
  return [
    HEAD,
    ...cards.flatMap(({ schedule: { equipment, rows: lines }, main, rows, homeless }) => {
      const placed = rows.flatMap(({ left, right }) => [left.cell, right.cell]);
      const circuits = placed.flatMap((cell) => (cell.kind === 'circuit' && cell.pole === 0 ? [cell.circuit] : []));
      const first: Cell[] = [equipment, 'main', lines, equipment, main.words, main.amps, null, null, null];
      return [first, ...[...circuits, ...homeless].map((circuit) => row(equipment, circuit))];
    }),
    [],
    ['panel', 'load', 'connected va', 'percent', 'demand va', 'basis'],
    ...totals,
    [],
    [CAUTIONS],
  ];
}
