import { useMemo } from 'react';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { type ChargerUse, chargerUse } from '../../../calc/day/figures/charger-use.ts';
import { energyWords } from '../../../calc/day/figures/day-words.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';
import { type ListColumn, WindowedTable } from '../../parts/windowed-table.tsx';
import { useTableFacts } from '../table-facts.ts';

/** What each charger meters in a billing period of such days, and the cost of its energy. */
export function MetersTable({ input, strategy }: { readonly input: DayInput; readonly strategy: Strategy }) {
  const { site } = useTableFacts();
  const uses = useMemo(() => chargerUse(input, strategy), [input, strategy]);
  const stalls = useMemo(() => {
    const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
    return new Map(site.chargers.map((one) => [one.id, one.stalls.map((id) => labels.get(id) ?? id).join(' ')]));
  }, [site.stalls, site.chargers]);
  const { tariff } = input;
  const total = (of: 'periodEnergy' | 'cost'): number => uses.reduce((sum, use) => sum + (use[of] ?? 0), 0);
  const columns: readonly ListColumn<ChargerUse>[] = [
    { head: 'stall', cell: ({ charger }) => stalls.get(charger), sort: ({ charger }) => stalls.get(charger) ?? '' },
    { head: 'charger', cell: ({ charger }) => charger, sort: ({ charger }) => charger },
    { head: 'cars a day', numeric: true, cell: ({ cars }) => cars, sort: ({ cars }) => cars },
    {
      head: 'energy',
      numeric: true,
      cell: ({ periodEnergy }) => energyWords(periodEnergy),
      sort: ({ periodEnergy }) => periodEnergy,
    },
    ...(tariff === null
      ? []
      : [
          {
            head: 'cost',
            numeric: true,
            cell: ({ cost }: ChargerUse) => (cost ?? 0).toFixed(2),
            sort: ({ cost }: ChargerUse) => cost ?? 0,
          },
        ]),
  ];
  return (
    <details>
      <summary>Energy and cost of each stall a billing period</summary>
      <div className="day-table">
        <p className="quiet small">
          {tariff === null
            ? 'Of one such day: no tariff is given.'
            : `Of ${tariff.days} such days, energy at the price of its hour; the demand charge is not shared out.`}{' '}
          All together {energyWords(total('periodEnergy'))}
          {tariff !== null && `, ${total('cost').toFixed(2)}`}.
        </p>
        <WindowedTable name="Meters" rows={uses} columns={columns} keyOf={({ charger }) => charger} />
      </div>
    </details>
  );
}
