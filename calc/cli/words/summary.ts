import type { Run } from '../../../routing/network/run.ts';
import type { Reach } from '../../../routing/reach/reach-result.ts';
import { printLength, printTotal } from '../../../routing/site/numbers/feet-inches.ts';
import { type Finding, GRADES } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import { findingsGrouped, likewise } from '../../checks/findings-grouped.ts';
import { standingWords } from '../../checks/standing.ts';
import type { Alternative } from '../../plan/compared/comparison.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Circuit } from '../../plan-file/branches.ts';
import { priceStanding } from '../../sheets/cost/cost-sheet.ts';
import { usedPrice } from '../../takeoff/bid/price-change.ts';
import { buyWords } from '../../takeoff/buying/buy-words.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { checkLines } from './check-lines.ts';
import { type TextColumn, textTable } from './text-table.ts';

interface RunRow {
  readonly run: Run;
  readonly circuit: Circuit | undefined;
  readonly reach: Reach | undefined;
}

/** One finding as a line: its grade, its sentence, and the rule behind it. */
export const findingLine = (finding: Finding): string => lineOf(finding, 1, '');

const lineOf = ({ severity, says, rule, source }: Finding, count: number, more: string): string =>
  `${GRADES[severity].toUpperCase()}  ${count > 1 ? `${count}: ` : ''}${says}${more}  [${rule}; ${source}]`;

/** Places of one matter that are listed by name. */
const MOST_PLACES = 14;

/**
 * Findings as lines, the worst first: grade, how many alike, the sentence of the first with where else it is so, and the
 * rule behind it. Each by itself where `all` asks for it.
 */
export function findingLines(findings: readonly Finding[], all: boolean): readonly string[] {
  if (all) return findings.map(findingLine);
  return findingsGrouped(findings).map(({ first, count, others }) =>
    lineOf(first, count, likewise(others, MOST_PLACES)),
  );
}

/** How a site stands, in a line. */
export const standingLine = (name: string, plan: Plan): string => `${name}: ${standingWords(plan)}`;

function worstReach(plan: Plan): Map<string, Reach> {
  const worst = new Map<string, Reach>();
  for (const reach of plan.reach) {
    const so = worst.get(reach.charger);
    if (!so || marginOf(reach) < marginOf(so)) worst.set(reach.charger, reach);
  }
  return worst;
}

// A cord that cannot get there at all is worse than any that is short.
const marginOf = (reach: Reach): number => reach.worst.margin ?? Number.NEGATIVE_INFINITY;

function runColumns(site: Site): TextColumn<RunRow>[] {
  const length = (feet: number | null | undefined): string =>
    feet === null || feet === undefined ? 'none' : printLength(feet, site.units);
  return [
    { head: 'charger', text: ({ run }) => run.charger },
    { head: 'drop', text: ({ run }) => run.drop },
    { head: 'from', text: ({ run }) => run.from },
    { head: 'run', text: ({ run }) => length(run.length), align: 'right' },
    { head: 'conductor', text: ({ run }) => length(run.conductorLength), align: 'right' },
    { head: 'cord spare', text: ({ reach }) => (reach ? length(reach.worst.margin) : ''), align: 'right' },
    { head: 'drop %', text: ({ circuit }) => circuit?.branchDropPercent.toFixed(2) ?? '', align: 'right' },
    { head: 'breaker', text: ({ circuit }) => (circuit ? `${circuit.breakerAmps} A` : ''), align: 'right' },
    { head: 'phases', text: ({ circuit }) => circuit?.phases ?? '' },
    { head: 'size', text: ({ circuit }) => circuit?.conductor.size ?? '', align: 'right' },
    { head: 'conduits', text: ({ circuit }) => circuit?.conduits.join(' ') ?? '' },
  ];
}

/** The plan as a person reads it at a terminal: findings first, then runs, then quantities, with the cautions. */
export function summary({ site, plan, cost }: Alternative, all = false): string {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const reach = worstReach(plan);
  const rows = plan.runs.map((run) => ({ run, circuit: circuits.get(run.charger), reach: reach.get(run.charger) }));
  const quantity = (value: number, unit: string): string =>
    unit === 'ft' ? printTotal(value, site.units) : `${Number.isInteger(value) ? value : value.toFixed(1)} ${unit}`;
  const parts = [
    `${site.name}: ${site.stalls.length} stalls, ${site.chargers.length} chargers, ${plan.runs.filter((run) => run.ok).length} runs within their limit`,
    `Findings: ${standingWords(plan)}`,
    findingLines(plan.findings, all).join('\n'),
    checkLines(plan),
    rows.length > 0 ? `Runs\n${textTable(rows, runColumns(site))}` : '',
    plan.takeoff.length > 0
      ? `Takeoff\n${textTable(plan.takeoff, [
          { head: 'item', text: (row) => row.item },
          { head: 'spec', text: (row) => row.spec },
          { head: 'quantity', text: (row) => quantity(row.quantity, row.unit), align: 'right' },
          { head: 'to buy', text: (row) => buyWords(row, site.units).buy, align: 'right' },
          { head: 'left over', text: (row) => buyWords(row, site.units).left, align: 'right' },
          { head: 'basis', text: (row) => row.basis },
        ])}`
      : '',
    [
      `Price with overhead and margin: $${cost.price.toFixed(2)} by ${cost.prices}${cost.missing.length > 0 ? `; ${cost.missing.length} items have no price` : ''}`,
      `By lengths alone, without what is left of sticks and reels: $${usedPrice(cost).toFixed(2)}`,
      ...priceStanding(cost).slice(1),
    ].join('\n'),
    CAUTIONS,
    // Findings scroll away above.
    standingLine(site.name, plan),
  ];
  return `${parts.filter(Boolean).join('\n\n')}\n`;
}
