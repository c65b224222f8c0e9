import type { DayView } from '../../../calc/day/figures/day-view.ts';
import { lackWords, STRATEGY_WORDS } from '../../../calc/day/figures/day-words.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';
import type { ChargingDay } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { carWords } from './pictures/car-bar.tsx';
import { LoadPicture } from './pictures/load-picture.tsx';

/** What the day came to, in a sentence. */
export function DaySays({
  day,
  view,
  strategy,
}: {
  readonly day: ChargingDay;
  readonly view: DayView;
  readonly strategy: Strategy;
}) {
  return (
    <p className="day-says" aria-live="polite">
      <strong>{sentence(view, strategy)}</strong> {day.from} to {day.to}, {counted(view.cars.length, 'car')}
      {view.turnedAway > 0 && `, ${view.turnedAway} without a free stall`}; {view.energy.toFixed(0)} kWh, peak{' '}
      {view.peakKw.toFixed(1)} kW{view.cost > 0 && `, ${view.cost.toFixed(2)} a billing period`}.
    </p>
  );
}

interface LimitFigureProps {
  readonly wide: number;
  readonly view: DayView;
  readonly limit: string;
  readonly unit: string;
  /** What the best schedule draws in each step; null where none was looked for. */
  readonly best: readonly number[] | null;
  readonly at: number | null;
  readonly onAt: (step: number | null) => void;
  readonly onChoose: (step: number | null) => void;
}

/** The load below a limit through the day, under what is left there for charging. */
export function LimitFigure({ wide, view, limit, unit, best, at, onAt, onChoose }: LimitFigureProps) {
  return (
    <figure className="day-figure">
      <LoadPicture wide={wide} view={view} unit={unit} best={best} at={at} onAt={onAt} onChoose={onChoose} />
      <figcaption className="quiet small">
        {limit}: filled, the fullest line under the rule; stepped edge, what is left for charging; dotted, without
        management{best !== null && '; thin, the best there could be'}.
        {at !== null && ` ${view.load[at]!.toFixed(1)} of ${view.room[at]!.toFixed(1)} ${unit} at the time marked.`}
      </figcaption>
    </figure>
  );
}

/** The day of what is chosen on the board, in words. */
export function ChosenCars({ view, chosen }: { readonly view: DayView; readonly chosen: ReadonlySet<string> }) {
  const cars = view.cars.filter(({ charger }) => chosen.has(charger));
  if (chosen.size === 0 || chosen.size > 8) return null;
  return (
    <ul className="day-chosen" aria-label="Cars at what is chosen">
      {[...chosen]
        .filter((charger) => !cars.some((car) => car.charger === charger))
        .map((charger) => (
          <li key={charger}>{charger}: nobody charges there that day.</li>
        ))}
      {cars.map((car) => (
        <li key={car.car}>
          {car.charger}: {carWords(car, view.from)}
        </li>
      ))}
    </ul>
  );
}

function sentence({ cars, carsShort, worstShort }: DayView, strategy: Strategy): string {
  const rule = `${STRATEGY_WORDS[strategy][0]!.toUpperCase()}${STRATEGY_WORDS[strategy].slice(1)}`;
  if (carsShort === 0) return `${rule}: nobody leaves with less than the cord could have given.`;
  return `${rule}: ${carsShort} of ${counted(cars.length, 'car')} leave short, worst by ${lackWords(worstShort)}.`;
}
