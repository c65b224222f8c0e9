import type { Site } from '../../routing/site/site.ts';
import { type DayFigures, dayFigures, type LeastCeiling } from './day-figures.ts';

/** The day of charging by which ways are weighed. */
export interface DecidingDay {
  readonly id: string;
  /** Days that there are to choose from. */
  readonly of: number;
  /** Whether a person named it; else it is the hardest. */
  readonly isChosen: boolean;
}

/**
 * The day that decides between some sites: the one that was asked for where any of them has it, else the hardest on any of
 * them, which is the one with most cars short; of those alike the one that lacks most energy, then the one with the
 * highest peak, then the first. Null where there is none.
 */
export function decidingDay(sites: readonly Site[], wanted: string | null): DecidingDay | null {
  const all = sites.flatMap((site) => dayFigures(site));
  const of = new Set(all.map(({ day }) => day)).size;
  const [first, ...others] = all;
  if (first === undefined) return null;
  if (wanted !== null && all.some(({ day }) => day === wanted)) return { id: wanted, of, isChosen: true };
  const hardest = others.reduce((hard, one) => (isHarder(one, hard) ? one : hard), first);
  return { id: hardest.day, of, isChosen: false };
}

const isHarder = (a: DayFigures, b: DayFigures): boolean => {
  const [x, y] = [hardness(a), hardness(b)];
  const at = x.findIndex((value, i) => value !== y[i]);
  return at >= 0 && x[at]! > y[at]!;
};

const hardness = ({ carsShort, most, energy, peakKw }: DayFigures): readonly number[] => [
  carsShort,
  steps(most - energy),
  steps(peakKw),
];

/** In whole millionths: what differs only by rounding is alike. */
const steps = (value: number): number => Math.round(1e6 * value);

/** Which of several days it is, in words; null where there is only one. */
export const decidingWords = ({ id, of, isChosen }: DecidingDay): string | null =>
  of === 1 ? null : isChosen ? `${id}, chosen of ${of} days` : `${id}, the hardest of ${of} days`;

/** The figures of the day that decides on one site. */
export const figuresOf = (site: Site, { id }: DecidingDay): DayFigures | undefined =>
  dayFigures(site).find(({ day }) => day === id);

/**
 * The largest of each limit's least ceilings over all days that have some; null where a day has none that does. A rule may
 * do worse with more room, so that what is held to these is looked at on each day again.
 */
export function ceilingsOfAll(days: readonly DayFigures[]): readonly LeastCeiling[] {
  const most = new Map<string, number | null>();
  for (const { limit, least } of days.flatMap(({ ceilings }) => ceilings)) {
    const known = most.get(limit);
    most.set(limit, least === null || known === null ? null : Math.max(known ?? 0, least));
  }
  return Array.from(most, ([limit, least]) => ({ limit, least }));
}
