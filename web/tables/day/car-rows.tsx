import { useRef } from 'react';
import type { DayInput } from '../../../calc/day/day-input.ts';
import type { CarView, DayView } from '../../../calc/day/day-view.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { ChargingDay } from '../../../routing/site/site.ts';
import { CarBar, ROW } from './car-bar.tsx';
import { Hours, stepUnder } from './load-picture.tsx';
import { useBars } from './use-bars.ts';

interface CarRowsProps {
  readonly wide: number;
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly view: DayView;
  /** Chargers in the order of their stalls, with what stands before each row. */
  readonly rows: readonly { readonly charger: string; readonly label: string }[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (charger: string) => void;
  readonly at: number | null;
  readonly onAt: (step: number | null) => void;
}

/** A row for each charger, a bar for each car, which the hand and the keys move to other times. */
export function CarRows({ wide, day, input, view, rows, chosen, choose, at, onAt }: CarRowsProps) {
  const frame = useRef<SVGSVGElement>(null);
  const bars = useBars(day, input, frame);
  const carsOf = new Map<string, CarView[]>();
  for (const car of view.cars.toSorted((a, b) => a.arrives - b.arrives)) addTo(carsOf, car.charger, car);
  const first = rows.flatMap(({ charger }) => carsOf.get(charger) ?? [])[0]?.car;
  const reached = view.cars.some(({ car }) => car === bars.reached) ? bars.reached : first;
  const high = rows.length * ROW;
  const x = (minute: number): number => (wide * minute) / (view.steps * view.step);
  const carUnder = (target: EventTarget): CarView | undefined => {
    const own = (target as Element).closest<SVGGElement>('[data-car]')?.dataset.car;
    return view.cars.find(({ car }) => String(car) === own);
  };
  return (
    <>
      <p className="quiet small">
        A row for each charger in the order of its stalls, a bar for each car. Drag a bar, or one of its ends, to
        another time; by keys: up and down go from car to car, left and right move it, with Shift when it leaves, Enter
        chooses its charger.
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
      <svg
        ref={frame}
        className="day-picture day-bars"
        viewBox={`-52 0 ${wide + 78} ${high + 22}`}
        role="group"
        aria-label={`Cars by charger: ${view.cars.length} stand there, ${view.carsShort} leave short. The table of cars has the figures.`}
        onPointerMove={(event) => onAt(stepUnder(event, wide, view.steps))}
        onPointerLeave={() => onAt(null)}
        onPointerDown={(event) => {
          const car = carUnder(event.target);
          if (car !== undefined) bars.press(event, car, x);
        }}
      >
        <Hours wide={wide} view={view} y={high + 16} high={high} />
        {rows.map(({ charger, label }, row) => (
          // By keys a row is chosen from its bars, or in the table of cars.
          // biome-ignore lint/a11y/noStaticElementInteractions: the bars within take the keys
          <g
            key={charger}
            transform={`translate(0 ${row * ROW})`}
            onClick={() => {
              if (!bars.hasDragged()) choose(charger);
            }}
            className="day-row"
          >
            <rect
              className="day-row-ground"
              data-chosen={chosen.has(charger)}
              x={-52}
              y={0}
              width={wide + 78}
              height={ROW}
            />
            <text className="day-mark" x={-6} y={15} textAnchor="end">
              {label}
            </text>
            {(carsOf.get(charger) ?? []).map((car) => (
              <CarBar
                key={car.car}
                car={car}
                view={view}
                x={x}
                held={bars.held?.car === car.car ? bars.held.times : undefined}
                isFirst={car.car === reached}
                onFocus={() => bars.reach(car.car)}
                onKey={(event) => (event.key === 'Enter' ? choose(charger) : bars.key(event, car))}
              />
            ))}
          </g>
        ))}
        {at !== null && (
          <line className="day-at" x1={(wide * at) / view.steps} x2={(wide * at) / view.steps} y1={0} y2={high} />
        )}
      </svg>
    </>
  );
}
