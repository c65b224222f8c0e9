import { type PointerEvent as HandEvent, useEffect, useMemo, useRef } from 'react';
import type { DayInput } from '../../../../calc/day/day-input.ts';
import type { CarView, DayView } from '../../../../calc/day/figures/day-view.ts';
import type { ChargingDay } from '../../../../routing/site/site.ts';
import { Scroller } from '../../../parts/scroller.tsx';
import { type BarRow, barItems, keyOfCar } from './bar-items.ts';
import { BAR_ROW, CarBar, NewBar } from './car-bar.tsx';
import { Hours, stepUnder } from './load-picture.tsx';
import { MOST_WHOLE, useRowWindow } from './row-window.ts';
import { useBars } from './use-bars.ts';

/** Left of the hours for names, right of them for what juts out. */
const BESIDE = { left: 52, both: 78 };
/** As wide as pictures of a day get, pixels. */
const MOST_PX = 1200;

interface CarRowsProps {
  readonly wide: number;
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly view: DayView;
  /** Chargers in the order of their stalls, with what stands before each row. */
  readonly rows: readonly BarRow[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (charger: string) => void;
  readonly at: number | null;
  /** The time that is chosen for the board, a step. */
  readonly time: number | null;
  readonly onAt: (step: number | null) => void;
}

/** A row for each charger, a bar for each car, which the hand and the keys move to other times and draw anew. */
export function CarRows({ wide, day, input, view, rows, chosen, choose, at, time, onAt }: CarRowsProps) {
  const frame = useRef<HTMLElement>(null);
  const pending = useRef<string | null>(null);
  const all = useMemo(() => barItems(rows, view.cars), [rows, view.cars]);
  const units = wide + BESIDE.both;
  const seen = useRowWindow(frame, rows.length, { units, rowUnits: BAR_ROW, mostPx: MOST_PX });
  const bars = useBars({
    day,
    input,
    bars: all,
    rows,
    marked: time === null ? null : time * view.step,
    goTo: (key) => {
      pending.current = key;
      const item = all.items.find((one) => one.key === key);
      if (item !== undefined) seen.bring(item.row);
    },
  });
  // What the keys were sent to may come with a later drawing: a car at another charger, a row that scrolls into view.
  useEffect(() => {
    const key = pending.current;
    if (key === null) return;
    const element = frame.current?.querySelector<SVGGElement>(`[data-item="${CSS.escape(key)}"]`);
    if (element) {
      pending.current = null;
      element.focus();
      return;
    }
    const item = all.items.find((one) => one.key === key);
    if (item !== undefined) seen.bring(item.row);
  });
  const chosenRow = chosen.size === 0 ? -1 : rows.findIndex(({ charger }) => chosen.has(charger));
  useEffect(() => {
    if (chosenRow >= 0) seen.bring(chosenRow);
  }, [chosenRow]);
  const reached = all.items.some(({ key }) => key === bars.reached) ? bars.reached : all.items[0]?.key;
  const end = view.steps * view.step;
  const x = (minute: number): number => (wide * minute) / end;
  const { first, last, rowPx } = seen;
  const [top, high] = [first * BAR_ROW, (last - first) * BAR_ROW];
  const press = (event: HandEvent<SVGSVGElement>): void => {
    const target = event.target as Element;
    const row = rows[Number(target.closest<SVGGElement>('[data-place]')?.dataset.place)];
    if (row === undefined) return;
    const own = target.closest<SVGGElement>('[data-car]')?.dataset.car;
    const car: CarView | null = view.cars.find((one) => String(one.car) === own) ?? null;
    const box = event.currentTarget.getBoundingClientRect();
    const minutesPerPixel = units / box.width / x(1);
    const minute = (event.clientX - box.left) * minutesPerPixel - BESIDE.left / x(1);
    if (car !== null || minute >= 0) bars.press(event, row, car, { minute, minutesPerPixel });
  };
  return (
    <>
      <Scroller
        aria-label="Cars by charger"
        className="day-rows"
        data-scrolls={rows.length > MOST_WHOLE}
        ref={frame}
        onScroll={seen.onScroll}
      >
        <div className="day-rows-all" style={{ height: rows.length > MOST_WHOLE ? rows.length * rowPx : undefined }}>
          {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
          <svg
            className="day-picture day-bars"
            style={{ marginTop: first * rowPx }}
            viewBox={`${-BESIDE.left} ${top} ${units} ${high}`}
            role="group"
            aria-label={`${view.cars.length} cars at ${rows.length} chargers, ${view.carsShort} leave short. The table of cars has the figures.`}
            onPointerMove={(event) => onAt(stepUnder(event, wide, view.steps))}
            onPointerLeave={() => onAt(null)}
            onPointerDown={press}
          >
            <defs>
              <pattern id="day-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <line className="day-hatch" y2="5" />
              </pattern>
            </defs>
            <Hours wide={wide} view={view} y={null} top={top} high={top + high} />
            {rows.slice(first, last).map((row, i) => (
              <CarRow
                key={row.charger}
                row={row}
                place={first + i}
                cars={all.ofCharger.get(row.charger) ?? []}
                isChosen={chosen.has(row.charger)}
                choose={choose}
                reached={reached}
                bars={bars}
                view={view}
                wide={wide}
              />
            ))}
            {at !== null && (
              <line
                className="day-at"
                x1={(wide * at) / view.steps}
                x2={(wide * at) / view.steps}
                y1={top}
                y2={top + high}
              />
            )}
          </svg>
        </div>
      </Scroller>
      <svg className="day-picture" viewBox={`${-BESIDE.left} 0 ${units} 18`} aria-hidden="true">
        <Hours wide={wide} view={view} y={13} high={0} />
      </svg>
      <p className="quiet small">
        A row for each charger in the order of its stalls, a bar for each car. Drag a bar, or one of its ends, to
        another time; drag over an empty part of a row and a car is drawn there. By keys: up and down go from bar to bar
        and to empty rows, left and right move a bar, with Shift when it leaves, + draws a car in the row, Delete takes
        one away, Enter chooses its charger.
      </p>
    </>
  );
}

interface CarRowProps {
  readonly row: BarRow;
  /** Its number among all rows. */
  readonly place: number;
  /** The cars that charge there, in the order in which they come. */
  readonly cars: readonly CarView[];
  readonly isChosen: boolean;
  readonly choose: (charger: string) => void;
  /** The key of the bar that the keys go to first. */
  readonly reached: string | null | undefined;
  readonly bars: ReturnType<typeof useBars>;
  readonly view: DayView;
  readonly wide: number;
}

/** The row of one charger: its name, a bar for each of its cars, and the one that is being drawn in it. */
function CarRow({ row: { charger, label }, place, cars, isChosen, choose, reached, bars, view, wide }: CarRowProps) {
  const { held } = bars;
  const end = view.steps * view.step;
  const x = (minute: number): number => (wide * minute) / end;
  return (
    // By keys a row is chosen from its bars, or in the table of cars.
    // biome-ignore lint/a11y/noStaticElementInteractions: the bars within take the keys
    <g
      data-place={place}
      transform={`translate(0 ${place * BAR_ROW})`}
      onClick={() => {
        if (!bars.hasDragged()) choose(charger);
      }}
      className="day-row"
    >
      <rect
        className="day-row-ground"
        data-chosen={isChosen}
        x={-BESIDE.left}
        y={0}
        width={wide + BESIDE.both}
        height={BAR_ROW}
      />
      <text className="day-mark" x={-6} y={15} textAnchor="end">
        {label}
      </text>
      {cars.length === 0 && (
        // biome-ignore lint/a11y/useSemanticElements: there are no buttons in a drawing
        <g
          className="day-empty"
          data-item={`row ${charger}`}
          role="button"
          tabIndex={reached === `row ${charger}` ? 0 : -1}
          aria-label={`${charger}: no car that day; Enter draws one`}
          onFocus={() => bars.reach(`row ${charger}`)}
          onKeyDown={(event) => bars.key(event, { key: `row ${charger}`, row: place, charger, car: null })}
        >
          <rect x={1} y={2} width={wide - 2} height={BAR_ROW - 4} />
        </g>
      )}
      {cars.map((car, j) => (
        <CarBar
          key={car.car}
          car={car}
          view={view}
          x={x}
          held={held?.car === car.car ? held.times : undefined}
          room={{ arrives: cars[j - 1]?.leaves ?? 0, leaves: cars[j + 1]?.arrives ?? end }}
          item={keyOfCar(car.car)}
          isFirst={keyOfCar(car.car) === reached}
          onFocus={() => bars.reach(keyOfCar(car.car))}
          onKey={(event) => {
            if (event.key === 'Enter') choose(charger);
            else bars.key(event, { key: keyOfCar(car.car), row: place, charger, car });
          }}
        />
      ))}
      {held?.car === null && held.charger === charger && <NewBar times={held.times} view={view} x={x} />}
    </g>
  );
}
