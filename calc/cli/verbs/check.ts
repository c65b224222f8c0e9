import { toSite } from '../../../routing/site/to-site.ts';
import { standingWords } from '../../checks/standing.ts';
import { plan } from '../../plan/plan.ts';
import { publishedPlan } from '../../plan/published-plan.ts';
import { phaseFile } from '../../propose/buildout/phase-file.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { checkLines } from '../check-lines.ts';
import type { Machine } from '../machine.ts';
import { type Outcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';
import { findingLine } from '../summary.ts';

/**
 * `check FILE...`: the findings of each file, then which checks were made on how much and what nobody looked at; with
 * `json` the same as one line of JSON a file, in order. Status 1 where a finding fails.
 */
export function checkVerb(
  paths: readonly string[],
  { json, phase }: { readonly json: boolean; readonly phase?: string },
  machine: Machine,
): Outcome {
  if (paths.length === 0) return wrong('check: name one site file or more');
  const through = phase === undefined ? null : Number(phase);
  if (through !== null && !(Number.isInteger(through) && through >= 1))
    return wrong(`check --phase: expected a whole number from 1, got "${phase}"`);
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  let fails = 0;
  const parts: string[] = [];
  for (const { path, file, site: whole } of read.sites) {
    const site = through === null ? whole : toSite(phaseFile(file, through));
    const planned = plan(site);
    fails += planned.findings.filter(({ severity }) => severity === 'fail').length;
    if (json) {
      const { code, findings, checks, withheld, notChecked } = publishedPlan(planned, site);
      parts.push(JSON.stringify({ file: path, site: site.name, code, findings, checks, withheld, notChecked }));
    } else {
      const lines = planned.findings.map((finding) => `${path}: ${findingLine(finding)}`);
      parts.push([...lines, `${path}: ${standingWords(planned)}`, '', checkLines(planned), ''].join('\n'));
    }
  }
  if (!json) parts.push(CAUTIONS);
  return { status: fails > 0 ? 1 : 0, out: `${parts.join('\n')}\n`, err: '' };
}
