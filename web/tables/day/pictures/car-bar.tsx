import type { KeyboardEvent } from 'react';
import type { Times } from '../../../../calc/day/cars/listed-cars.ts';
import { clockOf } from '../../../../calc/day/clock.ts';
import type { CarView, DayView } from '../../../../calc/day/figures/day-view.ts';
import { BarWords } from './bar-words.tsx';

export const BAR_ROW = 22;
export const BAR = 15;
const TOP = (BAR_ROW - BAR) / 2;

interface BarProps {
  readonly car: CarView;
  readonly view: DayView;
  readonly x: (minute: number) => number;
  /** Where the hand has it, if it does. */
  readonly held: Times | undefined;
  /** Minutes from the bar before it in its row to the one after, or the ends of the day. */
  readonly room: Times;
  /** By which the keys find it. */
  readonly item: string;
  /** The one bar that the Tab key comes to. */
  readonly isFirst: boolean;
  readonly onKey: (event: KeyboardEvent<SVGGElement>) => void;
  readonly onFocus: () => void;
}

/** What would be cut off at the end of the picture stands before the bar. */
const endsLate = (leaves: number, { steps, step }: DayView): boolean => leaves > 0.8 * steps * step;

/** The part of what its cord could give that a car leaves without. */
const lackShare = ({ most, got }: CarView): number => (most > 0 ? (most - got) / most : 0);

/** When a car stands there, and what it gets, in words. */
export const carWords = ({ arrives, leaves, got, need }: CarView, from: number): string =>
  `${clockOf(from + arrives)} to ${clockOf(from + leaves)}, ${got.toFixed(1)} of ${need.toFixed(1)} kWh`;

/**
 * The bar of a car: outlined while it stands there, dotted while it waits for the cord, filled as high as it charges, with
 * a mark where it was full, and hatched by the part that it lacks.
 */
export function CarBar({ car, view, x, held, room, item, isFirst, onKey, onFocus }: BarProps) {
  const { arrives, leaves } = held ?? car;
  const path: string[] = [];
  let [got, full]: [number, number | null] = [0, null];
  for (let step = 0; step < view.steps; step++) {
    const amps = car.amps[step]!;
    if (amps <= 0) continue;
    got += amps;
    full = step + 1;
    const h = Math.max(1, (BAR * amps) / car.max);
    path.push(`M${x(step * view.step)} ${TOP + BAR} v${-h} H${x((step + 1) * view.step)} v${h} Z`);
  }
  const isFull = got > 0 && car.need - car.got <= 1e-4;
  const cord = car.cord * view.step;
  return (
    <g
      className="day-car"
      data-car={car.car}
      data-item={item}
      data-short={car.isShort}
      data-held={held !== undefined}
      role="slider"
      tabIndex={isFirst ? 0 : -1}
      aria-label={`car ${car.car + 1} at ${car.charger}`}
      aria-valuemin={0}
      aria-valuemax={view.steps * view.step}
      aria-valuenow={arrives}
      aria-valuetext={carWords({ ...car, arrives, leaves }, view.from)}
      onKeyDown={onKey}
      onFocus={onFocus}
    >
      <title>{carWords({ ...car, arrives, leaves }, view.from)}</title>
      <rect className="day-stay" x={x(arrives)} y={TOP} width={Math.max(1, x(leaves - arrives))} height={BAR} />
      {cord - arrives >= view.step && held === undefined && (
        <line
          className="day-waits"
          x1={x(arrives)}
          x2={x(Math.min(cord, leaves))}
          y1={TOP + BAR / 2}
          y2={TOP + BAR / 2}
        />
      )}
      {held === undefined && <path className="day-charging" d={path.join('')} />}
      {isFull && full !== null && held === undefined && (
        <line className="day-full" x1={x(full * view.step)} x2={x(full * view.step)} y1={TOP} y2={TOP + BAR} />
      )}
      {car.isShort && held === undefined && (
        <rect
          className="day-lacks"
          x={x(leaves) - x((leaves - arrives) * lackShare(car))}
          y={TOP}
          width={x((leaves - arrives) * lackShare(car))}
          height={BAR}
        />
      )}
      {held !== undefined ? (
        <HeldTimes times={held} view={view} x={x} />
      ) : (
        <BarWords
          car={car}
          from={x(arrives)}
          to={x(leaves)}
          room={{ from: x(room.arrives), to: x(room.leaves) }}
          y={TOP + BAR - 3}
        />
      )}
    </g>
  );
}

interface HeldProps {
  readonly times: Times;
  readonly view: DayView;
  readonly x: (minute: number) => number;
}

/** A car that is being drawn. */
export const NewBar = ({ times, view, x }: HeldProps) => (
  <g className="day-car" data-held={true}>
    <rect className="day-stay" x={x(times.arrives)} y={TOP} width={x(times.leaves - times.arrives)} height={BAR} />
    <HeldTimes times={times} view={view} x={x} />
  </g>
);

function HeldTimes({ times: { arrives, leaves }, view, x }: HeldProps) {
  const isLate = endsLate(leaves, view);
  return (
    <text
      className="day-mark"
      x={isLate ? x(arrives) - 4 : x(leaves) + 4}
      y={TOP + BAR - 3}
      textAnchor={isLate ? 'end' : 'start'}
    >
      {clockOf(view.from + arrives)} to {clockOf(view.from + leaves)}
    </text>
  );
}
