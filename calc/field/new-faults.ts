import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Site } from '../../routing/site/site.ts';
import { plan } from '../plan/plan.ts';

/** What is told, of each thing that it is about: a fault with other figures, or of fewer things, is no new one. */
const keysOf = ({ severity, rule, about }: Finding): readonly string[] =>
  (about.length > 0 ? about : ['']).map((id) => `${severity} ${rule} ${id}`);

const allKeys = kept((findings: readonly Finding[]): ReadonlySet<string> => new Set(findings.flatMap(keysOf)));

/** How far what was built may be from the drawing is another question than whether it passes. */
const ASIDE: ReadonlySet<string> = new Set(['as-built', 'sound']);

/**
 * What fails, or is to be checked, in one site and not in another: both planned. None where all that passes in `as` passes
 * in `site` too.
 */
export function newFaults(site: Site, as: Site): readonly Finding[] {
  if (site === as) return [];
  const known = allKeys(plan(as).findings);
  return plan(site).findings.filter(
    (finding) =>
      finding.severity !== 'note' && !ASIDE.has(finding.rule) && keysOf(finding).some((key) => !known.has(key)),
  );
}
