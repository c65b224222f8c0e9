import type { ChargingDay, Site } from '../../../../routing/site/site.ts';
import { chargerUse } from '../../../day/charger-use.ts';
import type { DayInput } from '../../../day/day-input.ts';
import { STRATEGY_WORDS } from '../../../day/day-words.ts';
import type { Strategy } from '../../../day/rules/rules.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { flowTables, type Table } from '../kit/table.ts';
import { drawTable } from '../kit/table-drawing.ts';

/** Chargers past so many are in the workbook alone: sheets of paper would be many. */
const MOST_ROWS = 400;

/** What each charger meters in a billing period of such days, and the cost of its energy: a table on sheets of its own. */
export function meterSheets(job: Job, day: ChargingDay, input: DayInput, rule: Strategy): readonly Draft[] {
  const table = meterTable(job.site, day, input, rule);
  return flowTables([table], job.shape.field, job.lettering).map((page, i) => ({
    key: `meters ${day.id} ${i + 1}`,
    series: 'E-6',
    title: `Energy by stall, day ${day.id}`,
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
    },
  }));
}

function meterTable({ chargers, stalls }: Site, day: ChargingDay, input: DayInput, rule: Strategy): Table {
  const { tariff } = input;
  const uses = chargerUse(input, rule);
  const labels = new Map(stalls.map(({ id, label }) => [id, label ?? id]));
  const stallsOf = new Map(chargers.map((one) => [one.id, one.stalls.map((id) => labels.get(id) ?? id).join(' ')]));
  const all = (of: 'energy' | 'periodEnergy' | 'cost'): number => uses.reduce((sum, use) => sum + (use[of] ?? 0), 0);
  const figures = (energy: number, period: number, cost: number): readonly string[] => [
    energy.toFixed(1),
    ...(tariff === null ? [] : [period.toFixed(0), cost.toFixed(2)]),
  ];
  const more = uses.length - MOST_ROWS;
  return {
    short: 'energy by stall',
    title: `Energy and cost by stall, charging day ${day.id}`,
    lead: [
      `${day.name ?? day.id}, ${STRATEGY_WORDS[rule]}.`,
      tariff === null
        ? 'No tariff is given.'
        : `A billing period is ${tariff.days} such days, energy at the price of its hour; the demand charge is not shared out.`,
    ],
    columns: [
      { head: 'Stall', most: 14 },
      { head: 'Charger' },
      { head: 'Cars a day', align: 'right' },
      { head: 'kWh a day', align: 'right' },
      ...(tariff === null
        ? []
        : [
            { head: 'kWh a period', align: 'right' as const },
            { head: 'Cost of energy a period', align: 'right' as const },
          ]),
    ],
    rows: [
      ...uses
        .slice(0, MOST_ROWS)
        .map(({ charger, cars, energy, periodEnergy, cost }) => [
          stallsOf.get(charger) ?? '',
          charger,
          String(cars),
          ...figures(energy, periodEnergy, cost ?? 0),
        ]),
      ['All', '', '', ...figures(all('energy'), all('periodEnergy'), all('cost'))],
    ],
    foot: [
      ...(more > 0 ? [`${more} more chargers are in the workbook; all of them are in the last line.`] : []),
      'Planning figures: real cars and drivers differ. Nothing here is a bill.',
    ],
  };
}
