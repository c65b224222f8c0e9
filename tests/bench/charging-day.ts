import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadSolver } from '../../calc/cli/solver.ts';
import type { DayCharger, DayInput, DayLimit } from '../../calc/day/day-input.ts';
import type { NewLinearProgram } from '../../calc/day/optimum/linear-program.ts';
import { populationCars, readDay } from '../../calc/day/read-day.ts';
import { STRATEGIES } from '../../calc/day/rules/rules.ts';
import { charge } from '../../calc/day/simulated/charge.ts';
import { simulate } from '../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../calc/day/simulated/world.ts';
import type { DayFields, DayLimitFields } from '../../routing/site/schema/day-schema.ts';
import { type BestTimes, bestInBrowser } from './best/in-browser.ts';

export interface DayRow {
  readonly cars: number;
  readonly limit: DayLimit['kind'];
  readonly what: string;
  readonly ms: number;
  /** What all get, kilowatt-hours, and the bound of a best schedule over what it gives, percent. */
  readonly kwh: number;
  readonly gap?: number;
}

const PAIRS = ['AB', 'BC', 'CA'] as const;
/** Amperes a car of the limit: an eighth of what all cords could draw at once, so that not everybody can be served. */
const SHARE = 4;

/** A workplace's cars, a charger each, through a whole day in quarter hours under one limit. */
function dayOf(cars: number, kind: 'lines' | 'sum'): DayInput {
  return {
    from: '00:00',
    to: '00:00',
    step: 15,
    chargers: Array.from({ length: cars }, (_, i): DayCharger => {
      const lines = kind === 'sum' ? 'AB' : PAIRS[i % 3]!;
      return { id: `C${i}`, lines, amps: 32, volts: 208, stalls: 1, minAmps: 6 };
    }),
    limits: [
      {
        id: 'L',
        kind,
        most: (kind === 'sum' ? 1 : 1 / Math.sqrt(3)) * SHARE * cars,
        ratio: 1,
        chargers: 'all',
        other: [],
      },
    ],
    cars: populationCars({ kind: 'workplace', cars, seed: 7 }),
    hold: 'stay',
    taper: null,
    tariff: null,
  };
}

/** The least of some tries: what the machine can, not what else it did. */
function timed<T>(tries: number, work: () => T): { readonly ms: number; readonly answer: T } {
  let [ms, answer] = [Infinity, work()];
  for (let i = 0; i < tries; i++) {
    const from = performance.now();
    answer = work();
    ms = Math.min(ms, performance.now() - from);
  }
  return { ms, answer };
}

/**
 * The rules at two sizes, the best schedule, and beside that a general library for flows on the sum limit.
 *
 * @param worker folder of the built page that asks the page's own worker, where the browser is to be timed
 */
export async function chargingDayBench(worker?: string): Promise<readonly DayRow[]> {
  const newProgram = await loadSolver();
  return [
    ...[300, 20_000].flatMap((cars) => rulesOn(dayOf(cars, 'lines'))),
    ...rulesOn(dayOf(300, 'sum')),
    bestOf(dayOf(300, 'lines'), newProgram),
    bestOf(dayOf(300, 'sum'), newProgram),
    ...flowOf(dayOf(300, 'sum')),
    ...(worker === undefined ? [] : await browserRows(publishedDay(), worker)),
  ];
}

const rulesOn = (day: DayInput): DayRow[] =>
  STRATEGIES.map((strategy) => {
    const { ms, answer } = timed(day.cars.length > 1000 ? 2 : 8, () => simulate(worldOf(day), strategy));
    return { ...about(day), what: strategy, ms, kwh: sum(answer.got) };
  });

function bestOf(day: DayInput, newProgram: NewLinearProgram): DayRow {
  const wish = { strategies: [], optimum: true, search: { share: 1, more: false }, amps: false };
  const { ms, answer } = timed(1, () => charge(day, wish, newProgram).optimum!);
  const gap = (100 * (answer.energyBound - answer.energy)) / answer.energy;
  return { ...about(day), what: 'best, certified', ms, kwh: answer.energy, gap };
}

interface PublishedDay {
  readonly input: DayFields & { readonly chargers: readonly DayCharger[]; readonly limits: readonly DayLimitFields[] };
}

/** The published day of 300 cars: its lines are loaded unevenly, so that the bound takes rounds. */
function publishedDay(): DayInput {
  const path = join('tests', 'outside', 'charging-day', 'instances', 'cd-lines-300.json');
  const { input } = JSON.parse(readFileSync(path, 'utf8')) as PublishedDay;
  const read = readDay(
    input,
    input.chargers.map((one) => ({ ...one, stalls: 1, minAmps: 6 })),
    input.limits,
  );
  if (!read.ok) throw new Error(`${path}: ${read.errors[0]!.says}`);
  return read.day;
}

/** The page's worker in a browser, its solver loaded anew each time: energy alone, then with the least cost after it. */
async function browserRows(day: DayInput, folder: string): Promise<DayRow[]> {
  const row = (what: string, ms: number, { energy, energyBound }: BestTimes): DayRow => ({
    ...about(day),
    what,
    ms,
    kwh: energy,
    gap: (100 * (energyBound - energy)) / energy,
  });
  const energy = await bestInBrowser(folder, { ...day, tariff: null }, 5);
  const priced = await bestInBrowser(folder, day, 3);
  console.log(
    `The browser's rows: the least of some tries, on a machine with a load of ${energy.load.toFixed(1)} before.`,
  );
  return [
    row('in the browser, certified to 0.01%', energy.certified, energy),
    row('in the browser, best energy', energy.whole, energy),
    row('in the browser, and its least cost', priced.whole, priced),
  ];
}

/** networkx, where the machine has it: preflow push on the graph of cars, steps and the limit. */
function flowOf(day: DayInput): DayRow[] {
  const { stays, charger, need, max, kwh, rows } = worldOf(day);
  const cars = stays.flatMap(({ first, end }, i) =>
    charger[i]! < 0 ? [] : [{ first, end, need: need[i]!, most: max[i]! * kwh[i]! }],
  );
  const room = Array.from(rows[0]!.room, (amps) => amps * kwh[0]!);
  try {
    const out = execFileSync('python3', [join('tests', 'bench', 'max-flow.py')], {
      input: JSON.stringify({ cars, room }),
      encoding: 'utf8',
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    const { ms, kwh: most } = JSON.parse(out) as { readonly ms: number; readonly kwh: number };
    return [{ ...about(day), what: 'networkx, maximum flow', ms, kwh: most }];
  } catch {
    console.log('No python3 with networkx: the maximum flow is not timed.');
    return [];
  }
}

const about = ({ cars, limits }: DayInput) => ({ cars: cars.length, limit: limits[0]!.kind });
const sum = (values: Float64Array): number => values.reduce((all, one) => all + one, 0);
