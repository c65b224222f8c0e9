/** Minutes in a day. */
export const DAY = 1440;

/** A stretch of the clock, "HH:MM" to "HH:MM": the start is in it, the end is not; round midnight where it ends before it starts. */
export interface ClockSpan {
  readonly from: string;
  readonly to: string;
}

/** The stretch of a day that is looked at, in whole steps. */
export interface DayWindow {
  /** Minutes after midnight. */
  readonly from: number;
  readonly minutes: number;
  /** Minutes in a step. */
  readonly step: number;
  readonly steps: number;
}

/** Minutes after midnight of "HH:MM". */
export const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

/** "HH:MM" of minutes after midnight, of this day or a later one. */
export function clockOf(minutes: number): string {
  const ofDay = ((minutes % DAY) + DAY) % DAY;
  return `${String(Math.floor(ofDay / 60)).padStart(2, '0')}:${String(ofDay % 60).padStart(2, '0')}`;
}

/** Minutes from one time to the next time that the clock shows another; a whole day where both are the same. */
export const minutesUntil = (from: number, to: number): number => (to > from ? to - from : to - from + DAY);

/** The window from one time to another, in steps of so many minutes; null where that is not a whole number of steps. */
export function dayWindow(from: string, to: string, step: number): DayWindow | null {
  const minutes = minutesUntil(minutesOf(from), minutesOf(to));
  return minutes % step === 0 ? { from: minutesOf(from), minutes, step, steps: minutes / step } : null;
}

/** The minute after midnight at which a step begins. */
export const startOfStep = ({ from, step }: DayWindow, k: number): number => (from + k * step) % DAY;

/** Whether a span holds a minute after midnight. */
export function holds({ from, to }: ClockSpan, minute: number): boolean {
  const [begin, end] = [minutesOf(from), minutesOf(to)];
  return begin < end ? begin <= minute && minute < end : minute >= begin || minute < end;
}
