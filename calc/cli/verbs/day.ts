import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { bestFindings } from '../../day/figures/best-findings.ts';
import { figuresOfDay } from '../../day/figures/day-figures.ts';
import { energyWords, lackWords, STRATEGY_WORDS } from '../../day/figures/day-words.ts';
import type { NewLinearProgram } from '../../day/optimum/linear-program.ts';
import { groundOf, plannedDay, siteDay } from '../../day/planned-days.ts';
import { STRATEGIES } from '../../day/rules/rules.ts';
import { type Charge, charge, isSolvable } from '../../day/simulated/charge.ts';
import type { PlannedDay } from '../../plan-file/day.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Machine } from '../machine.ts';
import { type VerbOutcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';
import { findingLine } from '../words/summary.ts';
import { textTable } from '../words/text-table.ts';

export interface DayOptions {
  readonly json: boolean;
  readonly day?: string;
}

/**
 * `day FILE`: each day of charging under the rules, beside the best schedule and what the day's search looks for; with
 * `json` a line a day. Status 1 where a finding of a day fails.
 */
export async function dayVerb(paths: readonly string[], options: DayOptions, machine: Machine): Promise<VerbOutcome> {
  if (paths.length !== 1) return wrong('day: name one site file');
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const { site } = read.sites[0]!;
  const days = site.days.filter(({ id }) => options.day === undefined || id === options.day);
  if (days.length === 0) return wrong(none(site, options.day));
  const newProgram = await machine.solver();
  const worked = days.map((day) => workDay(day, site, newProgram, machine));
  machine.progress('');
  const fails = worked.some(({ planned }) => planned.findings.some(({ severity }) => severity === 'fail'));
  const parts = worked.map((one) => (options.json ? JSON.stringify(plain(one)) : told(one)));
  const out = options.json ? parts.join('\n') : [...parts, CAUTIONS].join('\n\n');
  return { status: fails ? 1 : 0, out: `${out}\n`, err: '' };
}

function none(site: Site, id: string | undefined): string {
  if (site.days.length === 0) return `day: ${site.name} has no days of charging`;
  return `day: there is no day "${id}"; there are ${site.days.map((day) => day.id).join(', ')}`;
}

interface WorkedDay {
  readonly day: ChargingDay;
  readonly planned: PlannedDay;
  /** Null where the day could not be worked, or is too large for its best schedule. */
  readonly whole: Charge | null;
}

function workDay(day: ChargingDay, site: Site, newProgram: NewLinearProgram, machine: Machine): WorkedDay {
  const ground = groundOf(site);
  const planned = plannedDay(day, ground);
  const input = siteDay(day, ground);
  if (!input.ok || !isSolvable(input.day)) return { day, planned, whole: null };
  const { ceiling, share = 1, more = false } = day.search ?? {};
  const wish = {
    strategies: STRATEGIES,
    optimum: true,
    amps: false,
    search: { share, more, ...(ceiling !== undefined && { ceiling }) },
  };
  const tell = (what: string, round: number, gap: number): void =>
    machine.progress(`${day.id}: ${what}, round ${round}, within ${(100 * gap).toFixed(4)}%`);
  const whole = charge(input.day, wish, newProgram, tell);
  const limit = planned.limits.find(({ id }) => id === ceiling);
  const known = bestFindings({
    what: day.name ?? day.id,
    cars: whole.cars,
    got: planned.strategies[planned.strategy]!.got,
    best: whole.optimum!,
    limit: limit === undefined ? null : { id: limit.id, unit: limit.kind === 'kw' ? 'kW' : 'A' },
    ceilings: figuresOfDay(day, ground, site.equipment)?.ceilings ?? [],
  });
  return { day, planned: { ...planned, findings: [...planned.findings, ...known] }, whole };
}

function plain({ planned, whole }: WorkedDay): object {
  if (whole === null) return planned;
  const { optimum, strategies } = whole;
  const { amps: _, proof: __, got: ___, ...best } = optimum!;
  return { ...planned, strategies, optimum: best };
}

function told({ day, planned, whole }: WorkedDay): string {
  const outcomes = whole?.strategies ?? planned.strategies;
  const rows = STRATEGIES.flatMap((name) => {
    const one = outcomes[name];
    return one === undefined
      ? []
      : [[`${STRATEGY_WORDS[name]}${name === planned.strategy ? ' *' : ''}`, ...figures(one)]];
  });
  const best = whole?.optimum ?? null;
  if (best !== null) rows.push(['the best there could be', ...figures(best)]);
  return [
    `${day.name ?? day.id}, ${day.from} to ${day.to}: ${counted(planned.cars.length, 'car')}`,
    textTable(rows, COLUMNS),
    '* the rule that the lot is run by',
    ...(best === null ? [] : [`No schedule gives more than ${energyWords(best.energyBound)}.`]),
    ...planned.findings.map(findingLine),
  ].join('\n');
}

const HEADS = ['rule', 'energy', 'cars short', 'worst short', 'peak', 'cost a period', 'least limit', 'more chargers'];

const COLUMNS = HEADS.map((head, i) => ({
  head,
  text: (row: readonly string[]): string => row[i] ?? '',
  ...(i > 0 && { align: 'right' as const }),
}));

interface Figures {
  readonly energy: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly peakKw: number;
  readonly cost: number;
  readonly ceiling?: number | null;
  readonly more?: number | null;
}

const figures = ({ energy, carsShort, worstShort, peakKw, cost, ceiling, more }: Figures): string[] => [
  energyWords(energy),
  String(carsShort),
  lackWords(worstShort),
  `${peakKw.toFixed(1)} kW`,
  cost === 0 ? '' : cost.toFixed(2),
  ceiling === undefined ? '' : ceiling === null ? 'none does' : String(Math.round(1000 * ceiling) / 1000),
  more === undefined ? '' : more === null ? 'none' : String(more),
];
