import { type PointerEvent as HandEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { drawnTimes, freeSpans, nextStay, withDrawnCar, withoutCar } from '../../../../calc/day/cars/drawn-cars.ts';
import { clocksAt, movedTimes, type Times, withCar } from '../../../../calc/day/cars/listed-cars.ts';
import { dayWindow } from '../../../../calc/day/clock.ts';
import type { DayInput } from '../../../../calc/day/day-input.ts';
import type { CarView } from '../../../../calc/day/figures/day-view.ts';
import { type ChargingDay, MAX_CARS } from '../../../../routing/site/schema/day-schema.ts';
import { changeDay } from '../../../document/edits/charging/days.ts';
import { useDocumentStore } from '../../../document/use-document.tsx';
import { type BarItem, type BarItems, type BarRow, keyOfCar } from './bar-items.ts';

type Part = 'stay' | 'arrives' | 'leaves';

/** Pixels: how near an end is taken hold of, and how far a press goes before it drags. */
const END_PX = 9;
const STARTS_PX = 4;
/** Minutes that a car stands that is drawn by keys, where there is room. */
const STAY = 240;

interface Grip {
  readonly x: number;
  readonly minutesPerPixel: number;
  readonly charger: string;
  /** Of the car and its part that is held; null where a new one is drawn from a minute on. */
  readonly moves: { readonly car: CarView; readonly part: Part } | null;
  readonly from: number;
  readonly spans: readonly Times[];
}

/** A car as the hand has it: one of the day's, or a new one. */
export interface HeldBar {
  readonly car: number | null;
  readonly charger: string;
  readonly times: Times;
}

/** What the hand and the keys do with the bars of cars. */
export interface Bars {
  readonly held: HeldBar | null;
  /** What the Tab key comes to, by its key. */
  readonly reached: string | null;
  readonly reach: (key: string) => void;
  /** A press on a bar, or on the ground of a row, at a minute of the day. */
  readonly press: (event: HandEvent<SVGSVGElement>, row: BarRow, car: CarView | null, at: BarPressed) => void;
  readonly key: (event: KeyboardEvent, item: BarItem) => void;
  /** True for the click that ends a drag. */
  readonly hasDragged: () => boolean;
}

export interface BarPressed {
  readonly minute: number;
  readonly minutesPerPixel: number;
}

interface BarsProps {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly bars: BarItems;
  readonly rows: readonly BarRow[];
  /** Where a car is drawn by keys, minutes; null: as the row begins. */
  readonly marked: number | null;
  /** Brings an item into view and the keys to it, once it is drawn. */
  readonly goTo: (key: string) => void;
}

/**
 * Cars moved to other times and drawn anew. By hand an end or the whole stay is dragged, or a stay from the ground of a
 * row; by keys the stay goes by arrows (with Shift when it leaves), Insert or + draws one more in the row, Delete takes
 * one away. One edit each; cars of a population are listed with it.
 */
export function useBars({ day, input, bars, rows, marked, goTo }: BarsProps): Bars {
  const document = useDocumentStore();
  const [held, setHeld] = useState<HeldBar | null>(null);
  const [reached, setReached] = useState<string | null>(null);
  const grip = useRef<Grip | null>(null);
  const dragged = useRef(false);
  const apply = (next: ChargingDay): void => {
    const { file, apply: put } = document.getState();
    put(changeDay(file, next));
  };
  const spansOf = ({ charger, stalls }: BarRow): readonly Times[] => {
    const { steps, step } = dayWindow(input.from, input.to, input.step)!;
    return input.cars.length >= MAX_CARS ? [] : freeSpans(bars.ofCharger.get(charger) ?? [], stalls, steps * step);
  };
  const go = (key: string): void => {
    setReached(key);
    goTo(key);
  };
  const put = ({ car, charger, times }: HeldBar): void => {
    if (car !== null) apply(withCar(day, input, car, clocksAt(input, car, times)));
    else {
      apply(withDrawnCar(day, input, charger, times));
      setReached(keyOfCar(input.cars.length));
    }
  };
  const drawNext = (row: BarRow, after: number): void => {
    const times = nextStay(spansOf(row), after, STAY, input.step);
    if (times === null) return;
    put({ car: null, charger: row.charger, times });
    go(keyOfCar(input.cars.length));
  };
  const acts = useRef({ put, input, held });
  acts.current = { put, input, held };
  useEffect(() => {
    const move = (event: PointerEvent): void => {
      const now = grip.current;
      if (now === null) return;
      const dx = event.clientX - now.x;
      if (!dragged.current && Math.abs(dx) < STARTS_PX) return;
      dragged.current = true;
      event.preventDefault();
      setHeld(heldAt(now, dx * now.minutesPerPixel, acts.current.input));
    };
    const end = (isPut: boolean): void => {
      if (grip.current === null) return;
      const at = acts.current.held;
      grip.current = null;
      setHeld(null);
      if (isPut && at !== null) acts.current.put(at);
    };
    const up = (): void => end(true);
    const cancel = (): void => end(false);
    const key = (event: globalThis.KeyboardEvent): void => {
      if (event.key !== 'Escape' || grip.current === null) return;
      event.preventDefault();
      event.stopPropagation();
      cancel();
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', cancel);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', cancel);
      window.removeEventListener('keydown', key, true);
    };
  }, []);
  return {
    held,
    reached,
    reach: setReached,
    press: (event, row, car, { minute, minutesPerPixel }) => {
      if (event.button !== 0) return;
      dragged.current = false;
      const moves = car === null ? null : { car, part: partAt(car, minute, minutesPerPixel) };
      const spans = car === null ? spansOf(row) : [];
      grip.current = { x: event.clientX, minutesPerPixel, charger: row.charger, moves, from: minute, spans };
    },
    key: (event, item) => {
      const { car } = item;
      const act = (work: () => void): void => {
        event.preventDefault();
        work();
      };
      const to = itemAt(event.key, item, bars.items);
      if (to !== undefined) return act(() => go(to.key));
      const isNew = event.key === 'Insert' || event.key === '+' || (car === null && event.key === 'Enter');
      if (isNew) return act(() => drawNext(rows[item.row]!, car?.leaves ?? marked ?? 0));
      if (car === null) return;
      const by = event.key === 'ArrowRight' ? input.step : event.key === 'ArrowLeft' ? -input.step : 0;
      if (by !== 0)
        act(() => {
          const part = event.shiftKey ? 'leaves' : 'stay';
          put({ car: car.car, charger: car.charger, times: movedTimes(car, part, by, input) });
          // At other times it may stand at another charger: its bar is another element, and the keys stay with it.
          go(item.key);
        });
      if (event.key === 'Delete')
        act(() => {
          const at = bars.items.findIndex(({ key }) => key === item.key);
          const next = bars.items[at + 1] ?? bars.items[at - 1];
          apply(withoutCar(day, input, car.car));
          // Those after it in the list move up by one.
          const place = next?.car?.car ?? null;
          go(place === null ? (next?.key ?? `row ${item.charger}`) : keyOfCar(place - (place > car.car ? 1 : 0)));
        });
    },
    hasDragged: () => dragged.current,
  };
}

/** Where the hand has what it holds, so many minutes from where it took it. */
function heldAt({ charger, moves, from, spans }: Grip, by: number, input: DayInput): HeldBar | null {
  if (moves === null) {
    const times = drawnTimes(spans, from, from + by, input.step);
    return times === null ? null : { car: null, charger, times };
  }
  const whole = Math.round(by / input.step) * input.step;
  return { car: moves.car.car, charger, times: movedTimes(moves.car, moves.part, whole, input) };
}

function partAt({ arrives, leaves }: CarView, minute: number, minutesPerPixel: number): Part {
  const end = Math.min(END_PX * minutesPerPixel, (leaves - arrives) / 3);
  return minute < arrives + end ? 'arrives' : minute > leaves - end ? 'leaves' : 'stay';
}

/** What a key that goes from one to the other comes to; undefined where it is another key, or there is none. */
function itemAt(key: string, item: BarItem, items: readonly BarItem[]): BarItem | undefined {
  const at = items.findIndex((one) => one.key === item.key);
  if (key === 'ArrowDown') return items[at + 1] ?? item;
  if (key === 'ArrowUp') return items[at - 1] ?? item;
  if (key === 'PageDown') return items[Math.min(items.length - 1, at + 10)];
  if (key === 'PageUp') return items[Math.max(0, at - 10)];
  if (key === 'Home') return items[0];
  if (key === 'End') return items.at(-1);
  return undefined;
}
