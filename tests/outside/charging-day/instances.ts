import { readdirSync, readFileSync } from 'node:fs';
import { POPULATION_TABLES } from '../../../calc/day/cars/population-tables.ts';
import { carsFrom } from '../../../calc/day/cars/seeded-cars.ts';
import type { DayCar, DayInput, DayLimit, Tariff } from '../../../calc/day/day-input.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';

interface Outcome {
  energy: number;
  short: number;
  carsShort: number;
  worstShort: number;
  peakKw: number;
  energyCost: number;
  demandCost: number;
  cost: number;
  got: number[];
  peak: Record<string, Record<string, number>>;
  ceiling?: number | null;
  more?: number | null;
}

export interface Instance {
  id: string;
  input: {
    from: string;
    to: string;
    step: number;
    chargers: { id: string; lines: 'AB'; amps: number; volts: number; stalls?: number; minAmps?: number }[];
    limits: {
      id: string;
      kind: DayLimit['kind'];
      amps?: number;
      kw?: number;
      ratio?: number;
      chargers?: string[];
      other?: DayLimit['other'];
    }[];
    cars?: DayCar[];
    population?: { kind: 'workplace'; cars: number; seed: number };
    hold?: 'stay' | 'done';
    taper?: { above: number; last: number };
    tariff?: Tariff;
    search?: { ceiling?: string; share?: number; more?: boolean };
    optimum?: boolean;
  };
  answer: {
    cars: { arrive: string; leave: string; need: number; most: number; charger: string | null }[];
    strategies: Record<Strategy, Outcome>;
    optimum?: {
      energy: number;
      energyBound: number;
      cost: number;
      costBound: number;
      relaxed: string[];
      ceiling?: number | null;
      ceilingBound?: number;
      more?: number | null;
      carsShort: number;
    };
  };
}

const here = new URL('./instances/', import.meta.url);

export const INSTANCES: readonly Instance[] = readdirSync(here)
  .sort()
  .map((name) => JSON.parse(readFileSync(new URL(name, here), 'utf8')) as Instance);

export const dayOf = ({ input }: Instance): DayInput => ({
  from: input.from,
  to: input.to,
  step: input.step,
  chargers: input.chargers.map((c) => ({ stalls: 1, minAmps: 6, ...c })),
  limits: input.limits.map(({ amps, kw, ...l }) => ({
    ratio: 1,
    chargers: 'all' as const,
    other: [],
    ...l,
    most: (amps ?? kw)!,
  })),
  cars:
    input.cars ?? carsFrom(POPULATION_TABLES[input.population!.kind], input.population!.cars, input.population!.seed),
  hold: input.hold ?? 'stay',
  taper: input.taper ?? null,
  tariff: input.tariff ?? null,
});
