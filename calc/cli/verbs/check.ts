import { CAUTIONS } from '../../cautions.ts';
import { plan } from '../../plan.ts';
import type { Machine } from '../machine.ts';
import { type Outcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';
import { findingLine } from '../summary.ts';

/** `check FILE...`: the findings of each file; status 1 where one of them fails. */
export function checkVerb(paths: readonly string[], machine: Machine): Outcome {
  if (paths.length === 0) return wrong('check: name one site file or more');
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  let fails = 0;
  const lines: string[] = [];
  for (const { path, site } of read.sites) {
    const { findings } = plan(site);
    fails += findings.filter((finding) => finding.severity === 'fail').length;
    for (const finding of findings) lines.push(`${path}: ${findingLine(finding)}`);
  }
  lines.push(CAUTIONS);
  return { status: fails > 0 ? 1 : 0, out: `${lines.join('\n')}\n`, err: '' };
}
