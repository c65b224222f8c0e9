import { useMemo } from 'react';
import { chargerUse } from '../../../calc/day/charger-use.ts';
import type { DayInput } from '../../../calc/day/day-input.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { useTableFacts } from '../table-facts.ts';

/** Chargers past so many are in the sheet alone. */
const MOST_ROWS = 400;

/** What each charger meters in a billing period of such days, and the cost of its energy. */
export function MetersTable({ input, strategy }: { readonly input: DayInput; readonly strategy: Strategy }) {
  const { site } = useTableFacts();
  const uses = useMemo(() => chargerUse(input, strategy), [input, strategy]);
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const stalls = new Map(site.chargers.map((one) => [one.id, one.stalls.map((id) => labels.get(id) ?? id).join(' ')]));
  const { tariff } = input;
  const total = (of: 'periodEnergy' | 'cost'): number => uses.reduce((sum, use) => sum + (use[of] ?? 0), 0);
  return (
    <details>
      <summary>Energy and cost of each stall a billing period</summary>
      <Scroller aria-label="Meters" className="day-cars">
        <table>
          <caption className="quiet">
            {tariff === null
              ? 'Of one such day: no tariff is given'
              : `Of ${tariff.days} such days, energy at the price of its hour; the demand charge is not shared out`}
          </caption>
          <thead>
            <tr>
              <th scope="col">stall</th>
              <th scope="col">charger</th>
              <th scope="col">cars a day</th>
              <th scope="col">energy</th>
              {tariff !== null && <th scope="col">cost</th>}
            </tr>
          </thead>
          <tbody>
            {uses.slice(0, MOST_ROWS).map((use) => (
              <tr key={use.charger}>
                <th scope="row">{stalls.get(use.charger)}</th>
                <td>{use.charger}</td>
                <td>{use.cars}</td>
                <td>{use.periodEnergy.toFixed(1)} kWh</td>
                {use.cost !== null && <td>{use.cost.toFixed(2)}</td>}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={3}>
                all
              </th>
              <td>{total('periodEnergy').toFixed(1)} kWh</td>
              {tariff !== null && <td>{total('cost').toFixed(2)}</td>}
            </tr>
          </tfoot>
        </table>
      </Scroller>
      {uses.length > MOST_ROWS && <p className="quiet">{uses.length - MOST_ROWS} more are in the sheet.</p>}
    </details>
  );
}
