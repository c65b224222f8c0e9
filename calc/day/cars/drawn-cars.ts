import type { ChargingDay } from '../../../routing/site/site.ts';
import { clockOf, minutesOf } from '../clock.ts';
import type { DayInput } from '../day-input.ts';
import { type Times, withCars } from './listed-cars.ts';

/** Kilowatt-hours that a car asks where no other car says what is usual. Common practice, no source. */
const USUAL_KWH = 10;

/** A day with one more car, which insists on its charger and asks what is usual that day; a population is listed with it. */
export function withDrawnCar(day: ChargingDay, input: DayInput, charger: string, times: Times): ChargingDay {
  const from = minutesOf(input.from);
  const car = {
    arrive: clockOf(from + times.arrives),
    leave: clockOf(from + times.leaves),
    kwh: usualNeed(input),
    charger,
  };
  return withCars(day, [...input.cars, car]);
}

/** A day without one of its cars; those of a population are listed first. */
export const withoutCar = (day: ChargingDay, input: DayInput, place: number): ChargingDay =>
  withCars(
    day,
    input.cars.filter((_, i) => i !== place),
  );

/** What the middle car asks, kilowatt-hours to a tenth. */
function usualNeed({ cars }: DayInput): number {
  const needs = cars.map(({ kwh }) => kwh).sort((a, b) => a - b);
  return Math.round(10 * (needs[needs.length >> 1] ?? USUAL_KWH)) / 10;
}

/** Spans of minutes from the window's start in which one more car finds a stall at a charger, in their order. */
export function freeSpans(stays: readonly Times[], stalls: number, end: number): readonly Times[] {
  const turns = stays
    .flatMap(({ arrives, leaves }) => [
      { at: arrives, by: 1 },
      { at: leaves, by: -1 },
    ])
    // A car that leaves makes room for one that comes at the same minute.
    .sort((a, b) => a.at - b.at || a.by - b.by);
  const spans: Times[] = [];
  let [standing, from] = [0, 0];
  for (const { at, by } of turns) {
    const had = standing < stalls;
    standing += by;
    const has = standing < stalls;
    if (had && !has && at > from) spans.push({ arrives: from, leaves: at });
    if (!had && has) from = at;
  }
  if (standing < stalls && end > from) spans.push({ arrives: from, leaves: end });
  return spans;
}

/**
 * The stay that is drawn from one minute to another: whole steps, at least one, within the span in which it was begun.
 * Null where it was begun where no stall is free for a whole step.
 */
export function drawnTimes(spans: readonly Times[], from: number, to: number, step: number): Times | null {
  const span = spans.find(({ arrives, leaves }) => from >= arrives && from < leaves);
  if (span === undefined) return null;
  const first = Math.ceil(span.arrives / step) * step;
  const last = Math.floor(span.leaves / step) * step;
  if (last - first < step) return null;
  const within = (least: number, value: number, most: number): number => Math.min(most, Math.max(least, value));
  const arrives = within(first, Math.floor(Math.min(from, to) / step) * step, last - step);
  return { arrives, leaves: within(arrives + step, Math.ceil(Math.max(from, to) / step) * step, last) };
}

/** The first stay of so many minutes, or as much of it as there is room for, at or after a minute; else the first of all. */
export function nextStay(spans: readonly Times[], after: number, minutes: number, step: number): Times | null {
  const all = spans.flatMap((span) => {
    const own = (from: number): Times | null => drawnTimes([span], from, from + minutes, step);
    const later = span.leaves > after ? own(Math.max(span.arrives, after)) : null;
    return [later ?? own(span.arrives)].filter((times) => times !== null);
  });
  return all.find(({ arrives }) => arrives + step > after) ?? all[0] ?? null;
}
