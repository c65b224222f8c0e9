import type { DayFields, DayLimitFields } from '../../routing/site/schema/day-schema.ts';
import { POPULATION_TABLES, type Tables } from './cars/population-tables.ts';
import { carsFrom } from './cars/seeded-cars.ts';
import { clockOf, dayWindow, startOfStep } from './clock.ts';
import type { DayCar, DayCharger, DayInput, DayLimit, Tariff } from './day-input.ts';
import { energyPrices, stepsInInterval } from './figures/cost.ts';

/** What is wrong with a day, and at which of its fields. */
export interface DayError {
  readonly place: string;
  readonly says: string;
}

export type ReadDay =
  | { readonly ok: true; readonly day: DayInput }
  | { readonly ok: false; readonly errors: readonly DayError[] };

/** Most unknowns, cars times steps, of one day: what a machine keeps at hand. */
const MAX_CAR_STEPS = 4_000_000;

/** Defaults, all of them common practice without a source: quarter hours, 21 such days in a billing period. */
const STEP = 15;
const INTERVAL = 15;
const DAYS = 21;

/** A day made whole: defaults in place, cars made, and what the schema cannot see told with its place. */
export function readDay(
  fields: DayFields,
  chargers: readonly DayCharger[],
  limits: readonly DayLimitFields[],
): ReadDay {
  const errors: DayError[] = [];
  const wrong = (place: string, says: string): void => void errors.push({ place, says });
  const step = fields.step ?? STEP;
  const window = dayWindow(fields.from, fields.to, step);
  if (window === null) wrong('to', `the window is no whole number of steps of ${step} minutes`);
  if ((fields.cars === undefined) === (fields.population === undefined))
    wrong('cars', 'give `cars` or `population`, one of the two');
  const ids = new Set(chargers.map(({ id }) => id));
  fields.cars?.forEach(({ charger }, i) => {
    if (charger !== undefined && !ids.has(charger)) wrong(`cars[${i}].charger`, `there is no charger "${charger}"`);
  });
  for (const [name, says] of tableTroubles(fields.population)) wrong(`population.${name}`, says);
  const cars = fields.cars ?? (fields.population === undefined ? [] : populationCars(fields.population));
  if (window !== null && cars.length * window.steps > MAX_CAR_STEPS)
    wrong('step', `${cars.length} cars in ${window.steps} steps are too many together; a longer step has fewer`);
  const seen = new Set<string>();
  limits.forEach((limit, i) => {
    for (const [field, says] of troublesOf(limit, ids)) wrong(`limits[${i}].${field}`, says);
    if (seen.has(limit.id)) wrong(`limits[${i}].id`, `"${limit.id}" is there twice`);
    seen.add(limit.id);
  });
  const tariff = fields.tariff === undefined ? null : tariffOf(fields.tariff);
  if (tariff !== null && window !== null) {
    const k = energyPrices(window, tariff).indexOf(undefined);
    if (k >= 0) {
      const at = startOfStep(window, k);
      wrong('tariff.energy', `no price at ${clockOf(at)}`);
    }
    if (window.steps % stepsInInterval(window, tariff.interval) !== 0)
      wrong('tariff.interval', `the window is no whole number of intervals of ${tariff.interval} minutes`);
  }
  if (errors.length > 0) return { ok: false, errors };
  return {
    ok: true,
    day: {
      from: fields.from,
      to: fields.to,
      step,
      chargers,
      limits: limits.map(limitOf),
      cars,
      hold: fields.hold ?? 'stay',
      taper: fields.taper ?? null,
      tariff,
    },
  };
}

const TABLE_NAMES = ['arrive', 'stay', 'lateStay', 'kwh', 'maxKw'] as const;

function* tableTroubles(population: DayFields['population']): Generator<[name: string, says: string]> {
  for (const name of TABLE_NAMES) {
    const points = population?.[name];
    if (points === undefined) continue;
    if (points[0]![0] !== 0) yield [`${name}[0]`, 'the first part is 0'];
    const at = points.findIndex(([part], i) => i > 0 && part <= points[i - 1]![0]);
    if (at >= 0) yield [`${name}[${at}]`, 'each part is larger than the one before'];
  }
}

const tariffOf = ({
  energy,
  demand = [],
  interval = INTERVAL,
  days = DAYS,
}: NonNullable<DayFields['tariff']>): Tariff => ({
  energy,
  demand,
  interval,
  days,
});

const limitOf = ({ id, kind, amps, kw, ratio = 1, chargers = 'all', other = [] }: DayLimitFields): DayLimit => ({
  id,
  kind,
  most: (kind === 'kw' ? kw : amps) ?? 0,
  ratio,
  chargers,
  other,
});

function* troublesOf(limit: DayLimitFields, ids: ReadonlySet<string>): Generator<[field: string, says: string]> {
  const { kind, amps, kw, ratio, chargers = 'all', other = [] } = limit;
  const [given, unwanted, field] = kind === 'kw' ? [kw, amps, 'kw'] : [amps, kw, 'amps'];
  if (given === undefined) yield [field, 'missing'];
  if (unwanted !== undefined) yield [kind === 'kw' ? 'amps' : 'kw', `a limit of kind ${kind} has ${field}`];
  if (kind === 'delta' && ratio === undefined) yield ['ratio', 'missing: primary volts to secondary volts to ground'];
  if (kind !== 'delta' && ratio !== undefined) yield ['ratio', `a limit of kind ${kind} has none`];
  if (chargers !== 'all')
    for (const [i, id] of chargers.entries()) if (!ids.has(id)) yield [`chargers[${i}]`, `there is no charger "${id}"`];
  for (const [i, load] of other.entries()) {
    const has = (name: 'amps' | 'kw' | 'A' | 'B' | 'C'): boolean => load[name] !== undefined;
    const byLine = has('A') || has('B') || has('C');
    if (kind === 'kw' ? has('amps') || byLine : has('kw'))
      yield [`other[${i}]`, `a limit of kind ${kind} has ${field}`];
    else if (kind === 'sum' && byLine) yield [`other[${i}]`, 'a sum has no lines'];
    else if (!byLine && !has('amps') && !has('kw')) yield [`other[${i}]`, `missing: ${field}`];
  }
}

/** Cars of a population: its own tables where it gives them; a stay of its own without a split drops the late stay. */
export function populationCars({ kind, cars, seed, ...own }: NonNullable<DayFields['population']>): DayCar[] {
  const { split, lateStay, ...preset } = POPULATION_TABLES[kind];
  const late = own.stay !== undefined && own.split === undefined ? {} : { split, lateStay };
  return carsFrom({ ...preset, ...late, ...own } as Tables, cars, seed);
}
