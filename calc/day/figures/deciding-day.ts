import { kept } from '../../../routing/kept/kept.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { type DayGround, groundOf, plannedDay } from '../planned-days.ts';
import { type DayFigures, energyShortfall, figuresOfDay, type LeastCeiling } from './day-figures.ts';

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
  const all = sites.flatMap((site) => hardnessOfDays(site.days, groundOf(site)));
  const of = new Set(all.map(({ id }) => id)).size;
  const [first, ...others] = all;
  if (first === undefined) return null;
  if (wanted !== null && all.some(({ id }) => id === wanted)) return { id: wanted, of, isChosen: true };
  const hardest = others.reduce((hard, one) => (isHarder(one, hard) ? one : hard), first);
  return { id: hardest.id, of, isChosen: false };
}

interface Hardness {
  readonly id: string;
  /** Cars short, energy lacking, peak: compared in this order. */
  readonly by: readonly number[];
}

/** From what the plan holds of each day, without a search. */
const hardnessOfDays = kept((days: readonly ChargingDay[], ground: DayGround): readonly Hardness[] =>
  days.flatMap((day): Hardness[] => {
    const { id, strategy, strategies, cars } = plannedDay(day, ground);
    const outcome = strategies[strategy];
    if (outcome === undefined) return [];
    const { most, carsShort } = energyShortfall(
      cars.map((car) => car.most),
      outcome.got,
    );
    return [{ id, by: [carsShort, steps(most - outcome.energy), steps(outcome.peakKw)] }];
  }),
);

function isHarder({ by: a }: Hardness, { by: b }: Hardness): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at]! > b[at]!;
}

/** In whole millionths: what differs only by rounding is alike. */
const steps = (value: number): number => Math.round(1e6 * value);

/** Which of several days it is, in words; null where there is only one. */
export const decidingWords = ({ id, of, isChosen }: DecidingDay): string | null =>
  of === 1 ? null : isChosen ? `${id}, chosen of ${of} days` : `${id}, the hardest of ${of} days`;

/** The figures of the day that decides on one site. */
export function decidingFigures(site: Site, { id }: DecidingDay): DayFigures | undefined {
  const day = site.days.find((one) => one.id === id);
  return day === undefined ? undefined : (figuresOfDay(day, groundOf(site), site.equipment) ?? undefined);
}

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
