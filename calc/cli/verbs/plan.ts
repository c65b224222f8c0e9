import { plan } from '../../plan.ts';
import { writePlan } from '../../write-plan.ts';
import type { Machine } from '../machine.ts';
import { done, type Outcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';
import { summary } from '../summary.ts';

/** `plan FILE...`: a readable summary of each; with `json` each file's plan as one line of JSON, in order. */
export function planVerb(paths: readonly string[], options: { readonly json: boolean }, machine: Machine): Outcome {
  if (paths.length === 0) return wrong('plan: name one site file or more');
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const printed = read.sites.map(({ site }) => {
    const planned = plan(site);
    return options.json ? `${JSON.stringify(writePlan(planned, site))}\n` : summary(site, planned);
  });
  return done(printed.join(options.json ? '' : '\n'));
}
