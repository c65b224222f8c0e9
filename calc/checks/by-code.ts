import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { citedShort } from '../tables/sections.ts';

/** What the code says beside a rule of the site that routing went by; null where it says nothing. */
function codeBeside({ rule, severity }: Finding, tables: CodeTables): string | null {
  if (rule === 'cord-limit') return citedShort(tables, 'cordLength');
  if (rule === 'rest-height' && severity === 'fail')
    return `${citedShort(tables, 'couplingHeight')}, ${tables.vehicleSupply.couplingOutdoorsIn} in outdoors`;
  return null;
}

const citing = kept((finding: Finding, tables: CodeTables): Finding => {
  const code = codeBeside(finding, tables);
  return code === null ? finding : { ...finding, source: `${code}; ${finding.source}` };
});

/** Findings of routing, which knows places and the rules of the site, with the section of the code that stands behind. */
export const withCode = kept((findings: readonly Finding[], tables: CodeTables): readonly Finding[] =>
  findings.map((finding) => citing(finding, tables)),
);
