import { clockOf } from '../../../calc/day/clock.ts';
import type { DayView } from '../../../calc/day/figures/day-view.ts';
import type { PanelLoad } from '../../../calc/day/figures/panel-loads.ts';
import { Scroller } from '../../parts/scroller.tsx';

interface LoadTableProps {
  readonly view: DayView;
  readonly loads: readonly PanelLoad[];
  /** The limit that is looked at, and its unit; null where there is none. */
  readonly limit: string | null;
  readonly unit: string;
}

/** Rows that are read at once: a day in shorter steps is told by the half hour, the hour or two. */
const MOST_ROWS = 100;

/** The figures behind the pictures of the load: a row for each time. */
export function LoadTable({ view, loads, limit, unit }: LoadTableProps) {
  const every = [1, 2, 4, 8, 20, 60].find((one) => view.steps / one <= MOST_ROWS) ?? view.steps;
  const steps = Array.from({ length: Math.ceil(view.steps / every) }, (_, i) => i * every);
  return (
    <details>
      <summary>The load by the clock</summary>
      <Scroller aria-label="Load by the clock" className="day-cars">
        <table>
          <thead>
            <tr>
              <th scope="col">from</th>
              {limit !== null && <th scope="col">{limit}</th>}
              {limit !== null && <th scope="col">left for charging</th>}
              {limit !== null && <th scope="col">without management</th>}
              {loads.map(({ panel }) => (
                <th key={panel} scope="col">
                  {panel}, kW
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {steps.map((step) => (
              <tr key={step}>
                <th scope="row">{clockOf(view.from + step * view.step)}</th>
                {limit !== null &&
                  [view.load, view.room, view.unmanaged].map((values, i) => (
                    // The three columns never change places.
                    <td key={i}>
                      {values[step]!.toFixed(1)} {unit}
                    </td>
                  ))}
                {loads.map(({ panel, kw }) => (
                  <td key={panel}>{kw[step]!.toFixed(1)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
    </details>
  );
}
