import { clockOf } from '../../../calc/day/clock.ts';
import type { CarView, DayView } from '../../../calc/day/day-view.ts';
import { Hours, stepUnder } from './load-picture.tsx';

const ROW = 22;
const BAR = 15;

interface CarRowsProps {
  readonly wide: number;
  readonly view: DayView;
  /** Chargers in the order of their stalls, with what stands before each row. */
  readonly rows: readonly { readonly charger: string; readonly label: string }[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (charger: string) => void;
  readonly at: number | null;
  readonly onAt: (step: number | null) => void;
}

/** A row for each charger, a bar for each car: outlined while it stands there, filled as high as it charges. */
export function CarRows({ wide, view, rows, chosen, choose, at, onAt }: CarRowsProps) {
  const carsOf = new Map<string, CarView[]>();
  for (const car of view.cars) {
    const cars = carsOf.get(car.charger);
    if (cars === undefined) carsOf.set(car.charger, [car]);
    else cars.push(car);
  }
  const high = rows.length * ROW;
  const minutes = view.steps * view.step;
  return (
    <svg
      className="day-picture"
      viewBox={`-52 0 ${wide + 78} ${high + 22}`}
      role="img"
      aria-label={`Cars by charger: ${view.cars.length} stand there, ${view.carsShort} leave short. The table of cars has the figures.`}
      onPointerMove={(event) => onAt(stepUnder(event, wide, view.steps))}
      onPointerLeave={() => onAt(null)}
    >
      <Hours wide={wide} view={view} y={high + 16} high={high} />
      {rows.map(({ charger, label }, row) => (
        // The row is chosen by keys in the table of cars.
        // biome-ignore lint/a11y/noStaticElementInteractions: the picture has the table behind it
        <g key={charger} transform={`translate(0 ${row * ROW})`} onClick={() => choose(charger)} className="day-row">
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
            <CarBar key={car.car} car={car} view={view} x={(minute) => (wide * minute) / minutes} />
          ))}
        </g>
      ))}
      {at !== null && (
        <line className="day-at" x1={(wide * at) / view.steps} x2={(wide * at) / view.steps} y1={0} y2={high} />
      )}
    </svg>
  );
}

function CarBar({
  car,
  view,
  x,
}: {
  readonly car: CarView;
  readonly view: DayView;
  readonly x: (minute: number) => number;
}) {
  const top = (ROW - BAR) / 2;
  // What would be cut off at the end of the picture stands before the bar.
  const isLate = car.leaves > 0.8 * view.steps * view.step;
  const path: string[] = [];
  for (let step = 0; step < view.steps; step++) {
    const amps = car.amps[step]!;
    if (amps <= 0) continue;
    const h = Math.max(1, (BAR * amps) / car.max);
    path.push(`M${x(step * view.step)} ${top + BAR} v${-h} H${x((step + 1) * view.step)} v${h} Z`);
  }
  return (
    <g data-short={car.isShort}>
      <title>
        {`${clockOf(view.from + car.arrives)} to ${clockOf(view.from + car.leaves)}, ${car.got.toFixed(1)} of ${car.need.toFixed(1)} kWh`}
      </title>
      <rect
        className="day-stay"
        x={x(car.arrives)}
        y={top}
        width={Math.max(1, x(car.leaves - car.arrives))}
        height={BAR}
      />
      <path className="day-charging" d={path.join('')} />
      {car.isShort && (
        <text
          className="day-short"
          x={isLate ? x(car.arrives) - 4 : x(car.leaves) + 4}
          y={top + BAR - 3}
          textAnchor={isLate ? 'end' : 'start'}
        >
          −{(car.most - car.got).toFixed(1)} kWh
        </text>
      )}
    </g>
  );
}
