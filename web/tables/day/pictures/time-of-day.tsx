import { useEffect, useMemo } from 'react';
import { clockOf } from '../../../../calc/day/clock.ts';
import type { DayView } from '../../../../calc/day/figures/day-view.ts';
import { supplyAtTime } from '../../../../calc/day/figures/supply-at-time.ts';
import { tablesOf } from '../../../../calc/tables/editions.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { DropCharging } from '../../../board/charging.ts';
import { useViewStore } from '../../../board/view-store.ts';
import { useTableFacts } from '../../table-facts.ts';

interface TimeProps {
  readonly view: DayView;
  /** The step that is chosen; null where none is. */
  readonly step: number | null;
  readonly onStep: (step: number | null) => void;
}

/** A time of the day: the board shows who charges at what current, and the volts of the supply are told. */
export function TimeOfDay({ view, step, onStep }: TimeProps) {
  const board = useViewStore();
  const { site, plan } = useTableFacts();
  const at = step === null ? null : Math.min(step, view.steps - 1);
  const amps = useMemo(() => (at === null ? null : ampsAt(view, at)), [view, at]);
  useEffect(() => {
    if (amps === null) return;
    const drops = new Map<string, DropCharging>();
    for (const { id, drop, amps: most } of site.chargers) {
      const own = drops.get(drop) ?? { amps: 0, most: 0 };
      drops.set(drop, { amps: own.amps + (amps.get(id) ?? 0), most: own.most + most });
    }
    board.setState({ charging: drops });
    return () => board.setState({ charging: null });
  }, [amps, site.chargers, board]);
  const supply = useMemo(
    () => (amps === null ? null : supplyAtTime(site, plan.runs, tablesOf(site.rules), amps)),
    [amps, site, plan.runs],
  );
  return (
    <section className="day-time" aria-label="A time of the day">
      <label className="day-ceiling">
        {at === null ? 'a time, for the board' : `at ${clockOf(view.from + at * view.step)}`}
        <input
          type="range"
          min={0}
          max={view.steps - 1}
          step={1}
          value={at ?? 0}
          aria-valuetext={at === null ? 'none chosen' : clockOf(view.from + at * view.step)}
          onChange={(event) => onStep(event.target.valueAsNumber)}
        />
      </label>
      {at !== null && (
        <button type="button" onClick={() => onStep(null)}>
          No time
        </button>
      )}
      {amps !== null && supply !== null && (
        <p className="day-supply" aria-live="polite">
          {counted(amps.size, 'charger')} on, {view.kw[at!]!.toFixed(1)} kW.{' '}
          {supply
            .filter(({ nominal }) => nominal > 0)
            .map(
              ({ id, nominal, lowest, amps: line }) =>
                `${id} ${lowest.toFixed(1)} V (${(100 * (1 - lowest / nominal)).toFixed(1)}% under ${nominal} V), ${line.toFixed(0)} A`,
            )
            .join('; ')}
          .
        </p>
      )}
    </section>
  );
}

/** Amperes of the chargers that are on in a step. */
function ampsAt({ cars }: DayView, step: number): ReadonlyMap<string, number> {
  const amps = new Map<string, number>();
  for (const car of cars)
    if (car.amps[step]! > 0) amps.set(car.charger, (amps.get(car.charger) ?? 0) + car.amps[step]!);
  return amps;
}
