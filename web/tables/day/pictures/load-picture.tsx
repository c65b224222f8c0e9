import { clockOf } from '../../../../calc/day/clock.ts';
import type { DayView } from '../../../../calc/day/figures/day-view.ts';
import { marksUpTo } from '../../../../calc/words/axis-marks.ts';

const HIGH = 150;
const TOP = 10;

interface LoadProps {
  /** Width of the picture in its own units: fewer on a phone, so that its lettering can be read. */
  readonly wide: number;
  readonly view: DayView;
  readonly unit: string;
  /** The same of the best schedule that was found, where one was. */
  readonly best: readonly number[] | null;
  readonly at: number | null;
  readonly onAt: (step: number | null) => void;
  /** A step is chosen, for the board. */
  readonly onChoose: (step: number) => void;
}

/** The current on a limit through the day, against what is left for charging: under the rule, and without management. */
export function LoadPicture({ wide, view, unit, best, at, onAt, onChoose }: LoadProps) {
  const { steps, load, unmanaged, room } = view;
  const most = Math.max(1, ...load, ...unmanaged, ...(best ?? []), ...room.filter(Number.isFinite)) * 1.05;
  const y = (amps: number): number => TOP + (HIGH - TOP) * (1 - Math.min(amps, most) / most);
  const x = (step: number): number => (wide * step) / steps;
  const stairs = (values: readonly number[]): string => stairsOf(values, x, y);
  const marks = marksUpTo(most);
  return (
    <svg
      className="day-picture"
      viewBox={`-52 0 ${wide + 78} ${HIGH + 26}`}
      role="img"
      aria-label={`Load through the day: at most ${Math.max(...load).toFixed(1)} ${unit}; without management ${Math.max(...unmanaged).toFixed(1)} ${unit}. The table of cars has the figures.`}
      onPointerMove={(event) => onAt(stepUnder(event, wide, steps))}
      onPointerLeave={() => onAt(null)}
      onPointerUp={(event) => {
        const step = stepUnder(event, wide, steps);
        if (step !== null) onChoose(step);
      }}
    >
      {marks.map((value) => (
        <g key={value}>
          <line className="day-rule" x1={0} x2={wide} y1={y(value)} y2={y(value)} />
          <text className="day-mark" x={-6} y={y(value) + 4} textAnchor="end">
            {value}
          </text>
        </g>
      ))}
      <path className="day-load" d={`${stairs(load)} V${y(0)} H0 Z`} />
      <path className="day-unmanaged" d={stairs(unmanaged)} />
      {best !== null && <path className="day-best-line" d={stairs(best)} />}
      <path className="day-room" d={stairs(room.map((one) => (Number.isFinite(one) ? one : most)))} />
      <Hours wide={wide} view={view} y={HIGH + 18} high={HIGH} />
      {at !== null && <line className="day-at" x1={x(at)} x2={x(at)} y1={0} y2={HIGH} />}
    </svg>
  );
}

/** A line that keeps each value for its step. */
export const stairsOf = (
  values: readonly number[],
  x: (step: number) => number,
  y: (value: number) => number,
): string => values.map((value, k) => `${k === 0 ? 'M' : 'L'}${x(k)} ${y(value)} H${x(k + 1)}`).join(' ');

interface HoursProps {
  readonly wide: number;
  readonly view: DayView;
  /** Where the times stand; null where there are only the lines. */
  readonly y: number | null;
  readonly top?: number;
  readonly high: number;
}

/** Times under a picture, and faint lines up from them. */
export function Hours({ wide, view, y, top = 0, high }: HoursProps) {
  const minutes = view.steps * view.step;
  const apart = [60, 120, 240].find((one) => (minutes / one) * 60 <= wide) ?? 480;
  const first = (apart - (view.from % apart)) % apart;
  const times = Array.from({ length: Math.floor((minutes - first) / apart) + 1 }, (_, i) => first + i * apart);
  return (
    <>
      {times.map((minute) => {
        const x = (wide * minute) / minutes;
        return (
          <g key={minute}>
            {high > top && <line className="day-hour" x1={x} x2={x} y1={top} y2={high} />}
            {y !== null && (
              <text className="day-mark" x={x} y={y} textAnchor="middle">
                {clockOf(view.from + minute)}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

/** The step under the pointer, as far along the picture as it is. */
export function stepUnder(event: React.PointerEvent<SVGSVGElement>, wide: number, steps: number): number | null {
  const { left, width } = event.currentTarget.getBoundingClientRect();
  const { x, width: units } = event.currentTarget.viewBox.baseVal;
  const step = Math.floor(((((event.clientX - left) / width) * units + x) / wide) * steps);
  return step >= 0 && step < steps ? step : null;
}
