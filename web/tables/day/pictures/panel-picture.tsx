import type { Tariff } from '../../../../calc/day/day-input.ts';
import { energyPrices } from '../../../../calc/day/figures/cost.ts';
import type { DayView } from '../../../../calc/day/figures/day-view.ts';
import type { PanelLoad } from '../../../../calc/day/figures/panel-loads.ts';
import { marksUpTo } from '../../../../calc/words/axis-marks.ts';
import { Hours, stairsOf, stepUnder } from './load-picture.tsx';

const HIGH = 130;
const TOP = 8;
const BAND = 14;
/** Tints of the panels, from the axis up, in turn. */
const TINTS = 4;

interface PanelProps {
  readonly wide: number;
  readonly view: DayView;
  readonly loads: readonly PanelLoad[];
  /** Kilowatts of the best schedule that was found, where one was. */
  readonly best: readonly number[] | null;
  readonly tariff: Tariff | null;
  readonly at: number | null;
  readonly onAt: (step: number | null) => void;
  readonly onChoose: (step: number) => void;
}

/** Kilowatts through the day, panel upon panel, with the price of energy as a band under the axis. */
export function PanelPicture({ wide, view, loads, best, tariff, at, onAt, onChoose }: PanelProps) {
  const { steps, kw } = view;
  const most = Math.max(1, ...kw, ...(best ?? [])) * 1.05;
  const y = (value: number): number => TOP + (HIGH - TOP) * (1 - value / most);
  const x = (step: number): number => (wide * step) / steps;
  let below = new Array<number>(steps).fill(0);
  const layers = loads.map(({ panel, kw: own }, i) => {
    const above = own.map((value, step) => value + below[step]!);
    const shape = { panel, tint: i % TINTS, top: above, floor: below };
    below = above;
    return shape;
  });
  const prices = tariff === null ? [] : bandsOf(energyPrices({ ...windowOf(view), steps }, tariff));
  const dearest = Math.max(...prices.map(({ price }) => price), 0);
  return (
    <figure className="day-figure">
      <figcaption className="quiet small">
        Kilowatts by panel:{' '}
        {loads.map(({ panel, kw: own }, i) => (
          <span key={panel} className="day-key">
            <svg width="12" height="12" aria-hidden="true">
              <rect className="day-panel" data-tint={i % TINTS} width="12" height="12" />
            </svg>{' '}
            {panel}
            {at === null ? `, at most ${Math.max(...own).toFixed(1)} kW` : ` ${own[at]!.toFixed(1)} kW`}
          </span>
        ))}
      </figcaption>
      <svg
        className="day-picture"
        viewBox={`-52 0 ${wide + 78} ${HIGH + BAND + 26}`}
        role="img"
        aria-label={`Kilowatts through the day by panel: ${loads.map(({ panel, kw: own }) => `${panel} at most ${Math.max(...own).toFixed(1)}`).join(', ')}.`}
        onPointerMove={(event) => onAt(stepUnder(event, wide, steps))}
        onPointerLeave={() => onAt(null)}
        onPointerUp={(event) => {
          const step = stepUnder(event, wide, steps);
          if (step !== null) onChoose(step);
        }}
      >
        {marksUpTo(most).map((value) => (
          <g key={value}>
            <line className="day-rule" x1={0} x2={wide} y1={y(value)} y2={y(value)} />
            <text className="day-mark" x={-6} y={y(value) + 4} textAnchor="end">
              {value}
            </text>
          </g>
        ))}
        {layers.map(({ panel, tint, top, floor }) => (
          <path key={panel} className="day-panel" data-tint={tint} d={between(top, floor, x, y)} />
        ))}
        {best !== null && <path className="day-best-line" d={stairsOf(best, x, y)} />}
        {prices.map(({ from, to, price }) => (
          <g key={from}>
            <rect
              className="day-price"
              x={x(from)}
              y={HIGH + 2}
              width={x(to) - x(from)}
              height={BAND - 2}
              fillOpacity={dearest === 0 ? 0 : 0.05 + (0.35 * price) / dearest}
            />
            {x(to) - x(from) > 34 && (
              <text className="day-mark" x={(x(from) + x(to)) / 2} y={HIGH + BAND - 1} textAnchor="middle">
                {price}
              </text>
            )}
          </g>
        ))}
        <Hours wide={wide} view={view} y={HIGH + BAND + 16} high={HIGH} />
        {at !== null && <line className="day-at" x1={x(at)} x2={x(at)} y1={0} y2={HIGH} />}
      </svg>
    </figure>
  );
}

const windowOf = ({ from, step, steps }: DayView) => ({ from, step, minutes: step * steps });

/** The area between two lines of steps. */
function between(
  top: readonly number[],
  floor: readonly number[],
  x: (step: number) => number,
  y: (value: number) => number,
): string {
  const back = floor.map((value, k) => `L${x(k + 1)} ${y(value)} H${x(k)}`).reverse();
  return `${stairsOf(top, x, y)} ${back.join(' ')} Z`;
}

/** Steps of one price after another, put together. */
function bandsOf(prices: readonly (number | undefined)[]): { from: number; to: number; price: number }[] {
  const bands: { from: number; to: number; price: number }[] = [];
  prices.forEach((price, step) => {
    const last = bands.at(-1);
    if (last !== undefined && last.price === price) last.to = step + 1;
    else if (price !== undefined) bands.push({ from: step, to: step + 1, price });
  });
  return bands;
}
