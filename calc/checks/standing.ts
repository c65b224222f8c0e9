import { SEVERITIES, type Severity } from '../../routing/site/rules/finding.ts';
import type { Check, PlanFile } from '../plan-file/plan-file.ts';

type Told = Pick<PlanFile, 'findings' | 'withheld'>;

const count = (n: number): string => n.toLocaleString('en-US');

/** How many findings of each severity a plan has; the note that calls it sound is none. */
export function findingCounts({ findings }: Pick<PlanFile, 'findings'>): Readonly<Record<Severity, number>> {
  const counts = { fail: 0, warn: 0, note: 0 };
  for (const { severity, rule } of findings) if (rule !== 'sound') counts[severity]++;
  return counts;
}

/** How a plan stands: how much fails and is to be checked; where nothing fails, whether it is sound or why not. */
export function standingWords(plan: Told): string {
  const { fail, warn, note } = findingCounts(plan);
  const counts = `${count(fail)} fail, ${count(warn)} to check, ${count(note)} ${note === 1 ? 'note' : 'notes'}`;
  if (fail > 0) return counts;
  return plan.withheld.length === 0 ? `${counts}; sound` : `${counts}. ${withheldWords(plan)}`;
}

/** Why a plan in which nothing fails is not called sound; empty where it is, or where something fails. */
export const withheldWords = (plan: Told): string =>
  plan.withheld.length === 0 || findingCounts(plan).fail > 0
    ? ''
    : `Nothing fails, and yet it is not called sound: ${plan.withheld.join('; ')}.`;

/** What came of a check: its worst severity, null where it found nothing. */
export const worstSeverity = (check: Check): Severity | null =>
  SEVERITIES.find((severity) => check[severity] > 0) ?? null;

/** The checks that were applied to something, those that fail first, then those with something to check, then notes. */
export const madeChecks = (checks: readonly Check[]): readonly Check[] => {
  const rank = (check: Check): number => {
    const worst = worstSeverity(check);
    return worst === null ? SEVERITIES.length : SEVERITIES.indexOf(worst);
  };
  return checks.filter(({ lookedAt }) => lookedAt > 0).sort((a, b) => rank(a) - rank(b));
};

/** `41 checks on 1,204 things`. */
export function extentWords(checks: readonly Check[]): string {
  const made = madeChecks(checks);
  const things = made.reduce((sum, { lookedAt }) => sum + lookedAt, 0);
  return `${count(made.length)} ${made.length === 1 ? 'check' : 'checks'} on ${count(things)} ${things === 1 ? 'thing' : 'things'}`;
}

/** `2 fail, 1 to check`; `none` where a check found nothing. */
export function foundWords({ fail, warn, note }: Pick<Check, Severity>): string {
  const parts = [
    fail > 0 && `${count(fail)} ${fail === 1 ? 'fails' : 'fail'}`,
    warn > 0 && `${count(warn)} to check`,
    note > 0 && `${count(note)} ${note === 1 ? 'note' : 'notes'}`,
  ].filter(Boolean);
  return parts.length === 0 ? 'none' : parts.join(', ');
}

/** Titles of the checks that had nothing to be applied to. */
export const idleChecks = (checks: readonly Check[]): readonly string[] =>
  checks.filter(({ lookedAt }) => lookedAt === 0).map(({ title }) => title);
