import type { ChargingDay, Site } from '../../../../routing/site/site.ts';
import type { DayInput } from '../../../day/day-input.ts';
import { chargerUse } from '../../../day/figures/charger-use.ts';
import { STRATEGY_WORDS } from '../../../day/figures/day-words.ts';
import type { Strategy } from '../../../day/rules/rules.ts';
import type { Job } from '../kit/draft.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import type { Table } from '../kit/tables/table.ts';
import type { TableGroup } from '../schedules/schedule-sheets.ts';

/** Chargers past so many are in the workbook alone: sheets of paper would be many. */
const MOST_ROWS = 400;

/** A day that could be worked, and the rule of its lot. */
export interface MeteredDay {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly rule: Strategy;
}

/** What each charger meters in a billing period of such days, and the cost of its energy: a table a day. */
export function meterGroup(job: Job, daysOf: (job: Job) => readonly MeteredDay[]): TableGroup {
  const tablesOf = (one: Job): readonly Table[] => daysOf(one).map((day) => meterTable(one.site, day));
  return { key: 'meters', tables: revisedTables(job, tablesOf), titled: () => 'Energy and cost by stall' };
}

function meterTable({ chargers, stalls }: Site, { day, input, rule }: MeteredDay): Table {
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
    title: `By stall, day ${day.id}`,
    lead: [
      `Rule: ${STRATEGY_WORDS[rule]}.`,
      tariff === null ? 'No tariff is given.' : `A period is ${tariff.days} such days.`,
      ...(tariff === null ? [] : ['Demand is not shared out.']),
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
            { head: 'Cost a period', align: 'right' as const },
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
      ...(more > 0 ? [`${more} more chargers are in the workbook.`] : []),
      'Planning figures, no bill: real cars and drivers differ.',
    ],
  };
}
