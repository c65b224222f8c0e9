import { kept } from '../../../routing/kept/kept.ts';
import type { ChargingDay, Equipment, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { DayInput } from '../day-input.ts';
import { type DayGround, groundOf, managedLimits, siteDay, strategyOf } from '../planned-days.ts';
import { areMet, ceilingOfRule, targetsOf } from '../rules/rule-search.ts';
import type { Strategy } from '../rules/rules.ts';
import { outcomeOf, SHORT } from '../simulated/outcome.ts';
import { type Course, simulate } from '../simulated/simulate.ts';
import { type World, withMost, worldOf } from '../simulated/world.ts';
import { energyWords, lackWords } from './day-words.ts';

/** The least figure of a limit with which a rule serves the cars under it; null where none does. */
export interface LeastCeiling {
  readonly limit: string;
  readonly least: number | null;
}

/** What decides between ways of feeding the same day. Energy in kilowatt-hours. */
export interface DayFigures {
  readonly day: string;
  readonly strategy: Strategy;
  readonly cars: number;
  readonly energy: number;
  /** What the cords could give without any limit. */
  readonly most: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly peakKw: number;
  /** Of a billing period; null without a tariff. */
  readonly cost: number | null;
  /** Of the limits that management sets. */
  readonly ceilings: readonly LeastCeiling[];
}

/** The figures of each day of a site that can be worked, under the rule that the lot is run by. Kept day by day. */
export const dayFigures = (site: Site): readonly DayFigures[] =>
  site.days.flatMap((day) => figuresOfDay(day, groundOf(site), site.equipment) ?? []);

/** The figures of one day; null where it cannot be worked. */
export const figuresOfDay = kept(
  (day: ChargingDay, ground: DayGround, equipment: readonly Equipment[]): DayFigures | null => {
    const read = siteDay(day, ground);
    if (!read.ok) return null;
    const world = worldOf(read.day);
    const strategy = strategyOf(day, ground);
    const unmanaged = simulate(world, 'unmanaged');
    const course = simulate(world, strategy);
    const { energy, peakKw, cost } = outcomeOf(world, course);
    const limits = day.limits ?? ground.supply.limits;
    const asked = managedLimits(limits, equipment).filter((limit) => isManaged(equipment, limits[limit]!.id));
    return {
      day: day.id,
      strategy,
      cars: read.day.cars.length,
      energy,
      ...energyShortfall(unmanaged.got, course.got),
      peakKw,
      cost: read.day.tariff === null ? null : cost,
      ceilings: strategy === 'unmanaged' ? [] : leastCeilings(world, strategy, asked),
    };
  },
);

/** What cars lack of what their cords could give, and what that is in all: kilowatt-hours. */
export function energyShortfall(
  could: ArrayLike<number>,
  got: ArrayLike<number>,
): Pick<DayFigures, 'most' | 'carsShort' | 'worstShort'> {
  let [most, carsShort, worstShort] = [0, 0, 0];
  for (let car = 0; car < got.length; car++) {
    const lacks = could[car]! - got[car]!;
    most += could[car]!;
    if (lacks > SHORT) carsShort++;
    worstShort = Math.max(worstShort, lacks);
  }
  return { most, carsShort, worstShort };
}

const isManaged = (equipment: readonly Equipment[], limit: string): boolean =>
  equipment.some(({ id, managedAmps }) => id === limit && managedAmps !== undefined);

/**
 * For each of some limits the least whole figure with which a rule gives the cars under it all that their cords could,
 * found by halving, the other limits as they stand; then all of them together, each null where together they do not do.
 */
function leastCeilings(world: World, strategy: Strategy, limits: readonly number[]): readonly LeastCeiling[] {
  const unmanaged = simulate(world, 'unmanaged');
  const found = limits.map((limit): LeastCeiling => {
    const targets = targetsUnder(world, limit, unmanaged);
    const least = ceilingOfRule(world, limit, strategy, targets, { unmanaged, leastOfAny: 0 });
    return { limit: world.input.limits[limit]!.id, least };
  });
  const together = found.reduce(
    (all, { least }, i) => (least === null ? all : withMost(all, limits[i]!, least)),
    world,
  );
  const { got } = simulate(together, strategy);
  return found.map((one, i) =>
    one.least !== null && areMet(got, targetsUnder(world, limits[i]!, unmanaged)) ? one : { ...one, least: null },
  );
}

/** Of the cars at the chargers under a limit all that their cords could give; of the others nothing. */
function targetsUnder({ input, charger }: World, limit: number, unmanaged: Course): Float64Array {
  const own = under(input, limit);
  return targetsOf(unmanaged, 1).map((target, car) => {
    const at = input.chargers[charger[car]!];
    return at !== undefined && own(at.id) ? target : 0;
  });
}

function under({ limits }: DayInput, limit: number): (charger: string) => boolean {
  const { chargers } = limits[limit]!;
  if (chargers === 'all') return () => true;
  const ids = new Set(chargers);
  return (charger) => ids.has(charger);
}

/** What a car gets in its stay, kilowatt-hours, those that find no stall among them. */
export const meanEnergy = ({ cars, energy }: Pick<DayFigures, 'cars' | 'energy'>): number =>
  cars === 0 ? 0 : energy / cars;

/** The figures of a day in a line of words. */
export function dayFigureWords({
  day,
  cars,
  energy,
  most,
  carsShort,
  worstShort,
  peakKw,
  cost,
  ceilings,
}: DayFigures): string {
  const short =
    carsShort === 0 ? 'nobody short' : `${counted(carsShort, 'car')} short, worst by ${lackWords(worstShort)}`;
  const least = ceilings.map(({ limit, least: amps }) => `${limit} ${amps === null ? 'with no ceiling' : `${amps} A`}`);
  return (
    `day ${day}: ${energy.toFixed(0)} of ${most.toFixed(0)} kWh, ${energyWords(meanEnergy({ cars, energy }))} a car in its stay, ${short}, peak ${peakKw.toFixed(1)} kW` +
    (least.length > 0 ? `, serves all at ${least.join(', ')}` : '') +
    (cost === null ? '' : `, energy and demand ${cost.toFixed(2)} a billing period`)
  );
}
