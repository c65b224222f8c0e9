import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import { publishedPlan } from '../../plan/write-plan.ts';
import { phaseFile } from '../../propose/buildout/phase-file.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Machine } from '../machine.ts';
import { partly, type VerbOutcome, wrong } from '../outcome.ts';
import { readNamedSite, reasonsOf, unreadLine } from '../sites.ts';
import { checkLines } from '../words/check-lines.ts';
import { findingLines, standingLine } from '../words/summary.ts';

interface CheckOptions {
  readonly json: boolean;
  /** Findings one by one, and not those alike in one line. */
  readonly all: boolean;
  /** Only how each file stands. */
  readonly quiet: boolean;
  /** Of each lot as it stands when this phase of its build-out is done. */
  readonly phase?: string;
}

/**
 * `check FILE...`: the findings of each file, those alike together and the worst first, then which checks were made on how
 * much and what nobody looked at; with `json` the same as one line of JSON a file, in order. Status 1 where a finding fails.
 * A file that cannot be read is told, and the others are checked; the status is 2.
 */
export function checkVerb(
  paths: readonly string[],
  { json, all, quiet, phase }: CheckOptions,
  machine: Machine,
): VerbOutcome {
  if (paths.length === 0) return wrong('check: name one site file or more');
  const through = phase === undefined ? null : Number(phase);
  if (through !== null && !(Number.isInteger(through) && through >= 1))
    return wrong(`check --phase: expected a whole number from 1, got "${phase}"`);
  const reads = paths.map((path) => readNamedSite(path, machine));
  if (!reads.some(({ ok }) => ok)) return wrong(reasonsOf(reads));
  let fails = 0;
  const parts: string[] = [];
  for (const read of reads) {
    if (!read.ok) {
      if (json) parts.push(unreadLine(read));
      continue;
    }
    const { path, file } = read;
    const site = through === null ? read.site : toSite(phaseFile(file, through));
    const planned = plan(site);
    fails += planned.findings.filter(({ severity }) => severity === 'fail').length;
    const standing = standingLine(path, planned);
    if (json) {
      const { code, findings, checks, withheld, notChecked } = publishedPlan(planned, site);
      parts.push(JSON.stringify({ file: path, site: site.name, code, findings, checks, withheld, notChecked }));
    } else if (quiet) parts.push(standing);
    else {
      const lines = findingLines(planned.findings, all).map((line) => `${path}: ${line}`);
      // How it stands comes last, for what is above scrolls away.
      parts.push([...lines, '', checkLines(planned), '', standing, ''].join('\n'));
    }
  }
  if (!json && !quiet) parts.push(CAUTIONS);
  const out = `${parts.join('\n')}\n`;
  return reads.every(({ ok }) => ok) ? { status: fails > 0 ? 1 : 0, out, err: '' } : partly(out, reasonsOf(reads));
}
