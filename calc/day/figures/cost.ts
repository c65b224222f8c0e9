import { type DayWindow, holds, startOfStep } from '../clock.ts';
import type { Tariff } from '../day-input.ts';

export interface DayCost {
  /** Largest mean of an interval, kilowatts. */
  readonly peakKw: number;
  /** Money for the energy of a billing period. */
  readonly energyCost: number;
  /** Money for its demand. */
  readonly demandCost: number;
  readonly cost: number;
}

/** Steps in an interval of demand: a part of one counts as one. */
export const stepsInInterval = ({ step }: DayWindow, minutes: number): number =>
  Math.max(1, Math.floor(minutes / step));

/** Price of a kilowatt-hour in each step; undefined where no span holds its start. */
export const energyPrices = (window: DayWindow, { energy }: Tariff): readonly (number | undefined)[] =>
  Array.from({ length: window.steps }, (_, k) => energy.find((span) => holds(span, startOfStep(window, k)))?.price);

/** Mean kilowatts of each interval, from the window's start. */
export function intervalMeans(kw: ArrayLike<number>, steps: number): number[] {
  const means: number[] = [];
  for (let from = 0; from < kw.length; from += steps) {
    let sum = 0;
    for (let k = from; k < from + steps; k++) sum += kw[k]!;
    means.push(sum / steps);
  }
  return means;
}

/** What a day's load costs by a tariff; without one nothing, and demand is averaged over quarter hours. */
export function dayCost(kw: ArrayLike<number>, window: DayWindow, tariff: Tariff | null): DayCost {
  const steps = stepsInInterval(window, tariff?.interval ?? QUARTER);
  const means = intervalMeans(kw, steps);
  const peakKw = Math.max(0, ...means);
  if (tariff === null) return { peakKw, energyCost: 0, demandCost: 0, cost: 0 };
  const prices = energyPrices(window, tariff);
  let energy = 0;
  for (let k = 0; k < kw.length; k++) energy += (kw[k]! * window.step * (prices[k] ?? 0)) / 60;
  const demandCost = tariff.demand.reduce((sum, span) => {
    const within = means.filter((_, i) => holds(span, startOfStep(window, i * steps)));
    return sum + span.price * Math.max(0, ...within);
  }, 0);
  const energyCost = tariff.days * energy;
  return { peakKw, energyCost, demandCost, cost: energyCost + demandCost };
}

const QUARTER = 15;
