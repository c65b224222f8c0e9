import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { clockOf, startOfStep } from '../../day/clock.ts';
import type { DayInput } from '../../day/day-input.ts';
import { chargerUse } from '../../day/figures/charger-use.ts';
import { energyPrices } from '../../day/figures/cost.ts';
import { NO_STALL, NO_STEP, STRATEGY_WORDS } from '../../day/figures/day-words.ts';
import { panelLoads } from '../../day/figures/panel-loads.ts';
import { groundOf, plannedDay, siteDay } from '../../day/planned-days.ts';
import { STRATEGIES } from '../../day/rules/rules.ts';
import { type Course, simulate } from '../../day/simulated/simulate.ts';
import { type World, worldOf } from '../../day/simulated/world.ts';
import type { PlannedDay } from '../../plan-file/day.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

type Rows = readonly (readonly Cell[])[];

const FIGURES =
  'Planning figures: real cars and drivers differ, volts are nominal, and the listing and settings of the load management govern.';

interface WorkedDay {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly planned: PlannedDay;
}

/** Days of a site that can be worked. */
export function workedDays(site: Site): readonly WorkedDay[] {
  const ground = groundOf(site);
  return site.days.flatMap((day) => {
    const read = siteDay(day, ground);
    return read.ok ? [{ day, input: read.day, planned: plannedDay(day, ground) }] : [];
  });
}

export const rounded = (value: number, decimals = 3): number => Number(value.toFixed(decimals));
export const withCautions = (rows: readonly (readonly Cell[])[]): Rows => [...rows, [], [FIGURES], [CAUTIONS]];

/**
 * The load of each day, step by step, under the rule that the lot is run by: price, kilowatts, for each limit the amperes
 * of each row beside what is left for charging, kilowatts of each panel, and what each rule would give in that step.
 */
export function dayLoadSheet(site: Site): Rows | null {
  const days = workedDays(site);
  if (days.length === 0) return null;
  const panelOf = new Map(site.chargers.map(({ id, from }) => [id, from]));
  const head: Cell[] = [
    'day',
    'time',
    'price of energy',
    'rule',
    'charging (kW)',
    'limit or panel',
    'line',
    'amperes or kW',
    'left for charging',
    ...STRATEGIES.map((one) => `charging ${STRATEGY_WORDS[one]} (kW)`),
  ];
  return withCautions([
    head,
    ...days.flatMap(({ day, input, planned }) => {
      const world = worldOf(input);
      const course = simulate(world, planned.strategy, { keepAmps: true });
      const byRule = STRATEGIES.map((one) => simulate(world, one).kw);
      const panels = panelLoads({ cars: served(world, course), steps: world.window.steps }, input, panelOf);
      const prices = input.tariff === null ? null : energyPrices(world.window, input.tariff);
      return Array.from({ length: world.window.steps }, (_, step) => {
        const first: Cell[] = [
          day.id,
          clockOf(startOfStep(world.window, step)),
          prices?.[step] ?? null,
          STRATEGY_WORDS[planned.strategy],
          rounded(course.kw[step]!),
        ];
        const rules = byRule.map((kw) => rounded(kw[step]!));
        const limits = world.rows.map((row, r): Cell[] => [
          ...first,
          input.limits[row.limit]!.id,
          row.name,
          rounded(course.rows[r]![step]!),
          rounded(row.room[step]!),
          ...rules,
        ]);
        const own = panels.map(({ panel, kw }): Cell[] => [...first, panel, 'kW', rounded(kw[step]!), null, ...rules]);
        return limits.length + own.length === 0 ? [[...first, null, null, null, null, ...rules]] : [...limits, ...own];
      }).flat();
    }),
  ]);
}

/** Cars with their chargers and the amperes that they drew; those that found no stall left out. */
const served = ({ charger, input }: World, { amps }: Course) =>
  amps!.flatMap((own, car) => {
    const at = input.chargers[charger[car]!];
    return at === undefined ? [] : [{ charger: at.id, amps: own }];
  });

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
  return withCautions([
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
  return withCautions([
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
