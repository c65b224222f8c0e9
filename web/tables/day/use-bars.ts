import { type PointerEvent as HandEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { DayInput } from '../../../calc/day/day-input.ts';
import type { CarView } from '../../../calc/day/day-view.ts';
import { clocksAt, movedTimes, type Times, withCar } from '../../../calc/day/listed-cars.ts';
import type { ChargingDay } from '../../../routing/site/site.ts';
import { changeDay } from '../../document/edits/days.ts';
import { useDocumentStore } from '../../document/use-document.tsx';

type Part = 'stay' | 'arrives' | 'leaves';

/** Pixels: how near an end is taken hold of, and how far a press goes before it drags. */
const END_PX = 9;
const STARTS_PX = 4;

interface Held {
  readonly car: CarView;
  readonly part: Part;
  readonly x: number;
  readonly minutesPerPixel: number;
}

/** What the hand and the keys do with the bars of cars. */
export interface Bars {
  /** Where the hand has a car; null where it has none. */
  readonly held: { readonly car: number; readonly times: Times } | null;
  /** The car whose bar the Tab key comes to. */
  readonly reached: number | null;
  readonly reach: (car: number) => void;
  readonly press: (event: HandEvent<SVGSVGElement>, car: CarView, x: (minute: number) => number) => void;
  readonly key: (event: KeyboardEvent, car: CarView) => void;
  /** True for the click that ends a drag. */
  readonly hasDragged: () => boolean;
}

/**
 * Cars moved to other times: by hand an end or the whole stay, by keys the stay (arrows) or when it leaves (with Shift), a
 * step at a time. One edit each; cars of a population are listed with it.
 */
export function useBars(day: ChargingDay, input: DayInput, frame: React.RefObject<SVGSVGElement | null>): Bars {
  const document = useDocumentStore();
  const [held, setHeld] = useState<Bars['held']>(null);
  const [reached, setReached] = useState<number | null>(null);
  const grip = useRef<Held | null>(null);
  const dragged = useRef(false);
  const refocus = useRef(false);
  const put = (car: number, times: Times): void => {
    const { file, apply } = document.getState();
    apply(changeDay(file, withCar(day, input, car, clocksAt(input, car, times))));
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
      const { step } = acts.current.input;
      const by = Math.round((dx * now.minutesPerPixel) / step) * step;
      setHeld({ car: now.car.car, times: movedTimes(now.car, now.part, by, acts.current.input) });
    };
    const end = (isPut: boolean): void => {
      if (grip.current === null) return;
      const at = acts.current.held;
      grip.current = null;
      setHeld(null);
      if (isPut && at !== null) acts.current.put(at.car, at.times);
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
  // A car at other times may stand at another charger: its bar is another element, and the keys stay with it.
  useEffect(() => {
    if (!refocus.current) return;
    refocus.current = false;
    frame.current?.querySelector<SVGGElement>(`[data-car="${reached}"]`)?.focus();
  });
  return {
    held,
    reached,
    reach: setReached,
    press: (event, car, x) => {
      if (event.button !== 0) return;
      const box = event.currentTarget.getBoundingClientRect();
      const units = event.currentTarget.viewBox.baseVal.width / box.width;
      const at = (event.clientX - box.left) * units + event.currentTarget.viewBox.baseVal.x;
      const end = Math.min(END_PX * units, (x(car.leaves) - x(car.arrives)) / 3);
      const part: Part = at < x(car.arrives) + end ? 'arrives' : at > x(car.leaves) - end ? 'leaves' : 'stay';
      dragged.current = false;
      grip.current = { car, part, x: event.clientX, minutesPerPixel: units / (x(1) - x(0)) };
    },
    key: (event, car) => {
      const by = event.key === 'ArrowRight' ? input.step : event.key === 'ArrowLeft' ? -input.step : 0;
      if (by !== 0) {
        event.preventDefault();
        refocus.current = true;
        put(car.car, movedTimes(car, event.shiftKey ? 'leaves' : 'stay', by, input));
        return;
      }
      const to = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
      if (to === 0) return;
      event.preventDefault();
      const all = [...(frame.current?.querySelectorAll<SVGGElement>('[data-car]') ?? [])];
      all[all.findIndex((one) => one.dataset.car === String(car.car)) + to]?.focus();
    },
    hasDragged: () => dragged.current,
  };
}
