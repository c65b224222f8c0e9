import type { ChargingDay, Site } from '../../routing/site/site.ts';
import { chargerUse } from '../day/charger-use.ts';
import { clockOf, startOfStep } from '../day/clock.ts';
import { energyPrices } from '../day/cost.ts';
import type { DayInput } from '../day/day-input.ts';
import { NO_STALL, NO_STEP, STRATEGY_WORDS } from '../day/day-words.ts';
import { dayGround, plannedDay, siteDay } from '../day/planned-days.ts';
import { STRATEGIES } from '../day/rules/rules.ts';
import { simulate } from '../day/simulate.ts';
import { worldOf } from '../day/world.ts';
import type { PlannedDay } from '../plan-file.ts';
import { linesOf, treeOf } from '../supply/tree/supply-lines.ts';
import { CAUTIONS } from '../words/cautions.ts';
import type { Cell } from './csv.ts';

type Rows = readonly (readonly Cell[])[];

const FIGURES =
  'Planning figures: real cars and drivers differ, volts are nominal, and the listing and settings of the load management govern.';

interface WorkedDay {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly planned: PlannedDay;
}

/** Days of a site that can be worked. */
function workedDays(site: Site): readonly WorkedDay[] {
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  return site.days.flatMap((day) => {
    const read = siteDay(day, ground);
    return read.ok ? [{ day, input: read.day, planned: plannedDay(day, ground) }] : [];
  });
}

const rounded = (value: number, decimals = 3): number => Number(value.toFixed(decimals));
const under = (rows: readonly (readonly Cell[])[]): Rows => [...rows, [], [FIGURES], [CAUTIONS]];

/**
 * The load of each day, step by step, under the rule that the lot is run by: price, kilowatts, and for each limit the
 * amperes of each row beside what is left for charging.
 */
export function dayLoadSheet(site: Site): Rows | null {
  const days = workedDays(site);
  if (days.length === 0) return null;
  const head: Cell[] = [
    'day',
    'time',
    'price of energy',
    'rule',
    'charging (kW)',
    'limit',
    'line',
    'amperes or kW',
    'left for charging',
  ];
  return under([
    head,
    ...days.flatMap(({ day, input, planned }) => {
      const world = worldOf(input);
      const course = simulate(world, planned.strategy);
      const prices = input.tariff === null ? null : energyPrices(world.window, input.tariff);
      return Array.from({ length: world.window.steps }, (_, step) => {
        const first: Cell[] = [
          day.id,
          clockOf(startOfStep(world.window, step)),
          prices?.[step] ?? null,
          STRATEGY_WORDS[planned.strategy],
          rounded(course.kw[step]!),
        ];
        if (world.rows.length === 0) return [first];
        return world.rows.map((row, r): Cell[] => [
          ...first,
          input.limits[row.limit]!.id,
          row.name,
          rounded(course.rows[r]![step]!),
          rounded(row.room[step]!),
        ]);
      }).flat();
    }),
  ]);
}

/** What each car of each day gets under each rule, kilowatt-hours, and what it lacks under the one of the lot. */
export function dayCarsSheet(site: Site): Rows | null {
  const days = workedDays(site);
  if (days.length === 0) return null;
  const head: Cell[] = [
    'day',
    'car',
    'charger',
    'arrives',
    'leaves',
    'asks (kWh)',
    'could get (kWh)',
    ...STRATEGIES.map((one) => `${STRATEGY_WORDS[one]} (kWh)`),
    'lacks under the rule of the lot (kWh)',
  ];
  return under([
    head,
    ...days.flatMap(({ day, input, planned }) => {
      const { stays } = worldOf(input);
      return planned.cars.map((car, i): Cell[] => [
        day.id,
        i + 1,
        car.charger ?? (stays[i]!.first < stays[i]!.end ? NO_STALL : NO_STEP),
        car.arrive,
        car.leave,
        rounded(car.need),
        rounded(car.most),
        ...STRATEGIES.map((one) => rounded(planned.strategies[one]!.got[i]!)),
        rounded(Math.max(0, car.need - planned.strategies[planned.strategy]!.got[i]!)),
      ]);
    }),
  ]);
}

/** What each charger meters on such a day and over a billing period, under the rule of the lot. */
export function dayMetersSheet(site: Site): Rows | null {
  const days = workedDays(site);
  if (days.length === 0) return null;
  const stallsOf = new Map(site.chargers.map(({ id, stalls }) => [id, stalls]));
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const head: Cell[] = [
    'day',
    'charger',
    'stalls',
    'cars',
    'energy a day (kWh)',
    'days',
    'energy a period (kWh)',
    'cost of energy a period',
  ];
  return under([
    head,
    ...days.flatMap(({ day, input, planned }) =>
      chargerUse(input, planned.strategy).map((use): Cell[] => [
        day.id,
        use.charger,
        (stallsOf.get(use.charger) ?? []).map((id) => labels.get(id) ?? id).join(' '),
        use.cars,
        rounded(use.energy),
        input.tariff?.days ?? null,
        input.tariff === null ? null : rounded(use.periodEnergy),
        use.cost === null ? null : rounded(use.cost, 2),
      ]),
    ),
  ]);
}
