import type { Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { type DayFigures, meanEnergy } from '../../day/figures/day-figures.ts';
import { type DecidingDay, decidingDay, decidingFigures, decidingWords } from '../../day/figures/deciding-day.ts';
import { yearlyLosses } from '../../supply/transformers/yearly-losses.ts';
import type { CostSheet } from '../../takeoff/bid/cost.ts';
import { sumOf } from '../../takeoff/bid/money.ts';
import { SUMMED_LENGTHS, type SummedLength, summedLength } from '../../takeoff/totals.ts';
import { marginsOf } from '../margins.ts';
import type { Plan } from '../plan-shape.ts';
import { stallsServed, type UnitFigureName, unitFigures } from './unit-figures.ts';

/** One alternative: a site, its plan and its cost. */
export interface Alternative {
  readonly name: string;
  readonly site: Site;
  readonly plan: Plan;
  readonly cost: CostSheet;
}

/** One figure of every alternative, in their order; null where one has no such figure. */
export interface ComparedFact {
  readonly fact: string;
  /** `ft` is rewritten to the first file's units on output. */
  readonly unit: string;
  /** Which way is better, where one is. */
  readonly better: 'less' | 'more' | null;
  /** A length that adds up many, shown whole. */
  readonly isTotal: boolean;
  readonly values: readonly (number | null)[];
  readonly differs: boolean;
}

interface Fact {
  readonly fact: string;
  readonly unit: string;
  readonly better: ComparedFact['better'];
  readonly isTotal?: true;
  readonly of: (alternative: Alternative) => number | null;
}

const least = (values: readonly (number | null | undefined)[]): number | null =>
  values.reduce<number | null>(
    (low, value) => (value == null ? low : low === null ? value : Math.min(low, value)),
    null,
  );
const most = (values: readonly (number | null | undefined)[]): number | null =>
  values.reduce<number | null>(
    (high, value) => (value == null ? high : high === null ? value : Math.max(high, value)),
    null,
  );
const findings =
  (severity: string) =>
  ({ plan }: Alternative): number =>
    plan.findings.filter((finding) => finding.severity === severity).length;

const summed = (length: SummedLength): Fact => ({
  fact: length.name,
  unit: 'ft',
  better: 'less',
  isTotal: true,
  of: ({ plan }) => summedLength(plan.takeoff, length),
});

const FACTS: readonly Fact[] = [
  { fact: 'price', unit: 'dollars', better: 'less', of: ({ cost }) => cost.price },
  { fact: 'price per stall', unit: 'dollars', better: 'less', of: ({ cost }) => cost.pricePerStall },
  { fact: 'price per port', unit: 'dollars', better: 'less', of: (one) => unitFigure(one, 'price per port') },
  { fact: 'price per kW', unit: 'dollars', better: 'less', of: (one) => unitFigure(one, 'price per kW') },
  { fact: 'hours per stall', unit: 'hours', better: 'less', of: (one) => unitFigure(one, 'hours per stall') },
  { fact: 'cost, feeder', unit: 'dollars', better: 'less', of: ({ cost }) => cost.bySystem.feeder },
  { fact: 'cost, equipment', unit: 'dollars', better: 'less', of: ({ cost }) => cost.bySystem.equipment },
  { fact: 'cost, branches', unit: 'dollars', better: 'less', of: ({ cost }) => cost.bySystem.branches },
  { fact: 'cost, drops', unit: 'dollars', better: 'less', of: ({ cost }) => cost.bySystem.drops },
  { fact: 'cost, ground', unit: 'dollars', better: 'less', of: ({ cost }) => cost.bySystem.ground },
  { fact: 'items without a price', unit: 'items', better: 'less', of: ({ cost }) => cost.missing.length },
  { fact: 'items priced by a guess', unit: 'items', better: 'less', of: ({ cost }) => cost.guesses },
  { fact: 'labor', unit: 'hours', better: 'less', of: ({ cost }) => cost.hours },
  { fact: 'labor that height adds', unit: 'hours', better: 'less', of: ({ cost }) => cost.heightHours },
  { fact: 'stalls served', unit: 'stalls', better: 'more', of: ({ site }) => stallsServed(site) },
  { fact: 'chargers', unit: 'chargers', better: 'more', of: ({ site }) => site.chargers.length },
  ...Object.values(SUMMED_LENGTHS).map(summed),
  {
    fact: 'worst cord margin',
    unit: 'ft',
    better: 'more',
    of: (one) => least(marginsIn(one).map(({ cord }) => finite(cord?.left))),
  },
  {
    fact: 'longest branch',
    unit: 'ft',
    better: 'less',
    of: ({ plan }) => most(plan.runs.map(({ conductorLength }) => conductorLength)),
  },
  {
    fact: 'worst branch drop',
    unit: '%',
    better: 'less',
    of: ({ plan }) => most(plan.circuits.map((one) => one.branchDropPercent)),
  },
  {
    fact: 'worst total drop',
    unit: '%',
    better: 'less',
    of: ({ plan }) => most(plan.circuits.map((one) => one.worstDropPercent)),
  },
  {
    fact: 'least spare amps',
    unit: 'A',
    better: 'more',
    of: ({ plan }) => least(plan.supply.equipment.map(({ spareAmps }) => spareAmps)),
  },
  { fact: 'lost a year in the supply under load', unit: 'kWh', better: 'less', of: (one) => lossesOf(one).load },
  { fact: 'lost a year in transformer cores', unit: 'kWh', better: 'less', of: (one) => lossesOf(one).core },
  { fact: 'findings that fail', unit: 'findings', better: 'less', of: findings('fail') },
  { fact: 'findings to check', unit: 'findings', better: 'less', of: findings('warn') },
];

/** Of the charging day that decides, under the rule that the lot is run by. */
function dayFacts(deciding: DecidingDay): readonly Fact[] {
  const which = decidingWords(deciding);
  const of = which === null ? '' : ` (${which})`;
  const figure =
    (value: (figures: DayFigures) => number | null) =>
    ({ site }: Alternative): number | null => {
      const figures = decidingFigures(site, deciding);
      return figures === undefined ? null : value(figures);
    };
  const fact = (name: string, unit: string, better: 'less' | 'more', value: Parameters<typeof figure>[0]): Fact => ({
    fact: `${name}${of}`,
    unit,
    better,
    of: figure(value),
  });
  return [
    fact('energy on the charging day', 'kWh', 'more', ({ energy }) => energy),
    fact('energy a car gets in its stay', 'kWh', 'more', meanEnergy),
    fact('cars short on the charging day', 'cars', 'less', ({ carsShort }) => carsShort),
    fact('peak of the charging day', 'kW', 'less', ({ peakKw }) => peakKw),
    fact('least ceilings that serve that day', 'A', 'less', togetherAt),
    fact('energy and demand a billing period', 'dollars', 'less', ({ cost }) => cost),
  ];
}

/** Together; null where nothing is managed, or a ceiling would not do. */
function togetherAt({ ceilings }: DayFigures): number | null {
  if (ceilings.length === 0 || ceilings.some(({ least }) => least === null)) return null;
  return ceilings.reduce((sum, { least }) => sum + least!, 0);
}

const lossesOf = ({ site, plan }: Alternative) => yearlyLosses(site, plan.supply, designOf(site.rules).tables);
const unitFigure = (one: Alternative, name: UnitFigureName): number | null =>
  unitFigures(one).find((figure) => figure.name === name)?.value ?? null;
const finite = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;
const marginsIn = ({ plan, site }: Alternative) => [...marginsOf(plan, site).values()];

/**
 * Two alternatives or more side by side: what differs first, each part in the order in which one would ask.
 *
 * @param day id of the charging day that decides; without it the hardest
 */
export function comparison(alternatives: readonly Alternative[], day: string | null = null): readonly ComparedFact[] {
  const sites = alternatives.map(({ site }) => site);
  const deciding = decidingDay(sites, day);
  const due = deciding === null ? FACTS : [...FACTS, ...dayFacts(deciding)];
  const facts = due.map(({ fact, unit, better, isTotal = false, of }): ComparedFact => {
    const values = alternatives.map(of);
    return { fact, unit, better, isTotal, values, differs: values.some((value) => !alike(value, values[0] ?? null)) };
  });
  return [...facts.filter(({ differs }) => differs), ...facts.filter(({ differs }) => !differs)];
}

/** What each alternative adds to the price of the first, or deducts from it where it is less than 0. */
export const alternates = ([base, ...others]: readonly Alternative[]): readonly {
  readonly name: string;
  readonly adds: number;
}[] =>
  base === undefined ? [] : others.map(({ name, cost }) => ({ name, adds: sumOf([cost.price, -base.cost.price]) }));

const alike = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
