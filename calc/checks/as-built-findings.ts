import { kept, steadyList } from '../../routing/kept/kept.ts';
import { byId } from '../../routing/site/look-up.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { awayFromDrawing } from '../../routing/site/place/as-built.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import { siteRule } from '../../routing/site/rules/rule-notes.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { AsBuilt, Drop, Site } from '../../routing/site/site.ts';

const NONE: readonly Finding[] = [];
const steady = steadyList<Finding>();

/** The drops that were built farther from the drawing than the site's rule takes for the same. */
export function asBuiltFindings({ asBuilt, drops, rules, units }: Site): readonly Finding[] {
  if (asBuilt.size === 0) return NONE;
  const found = [...asBuilt].flatMap(([id, record]) => {
    const drop = byId(drops).get(id);
    return (drop && offDrawing(drop, record, rules.builtTolerance, units)) ?? [];
  });
  return steady(asBuilt, found);
}

const INCH = { inchParts: 1, decimals: 2 } as const;

const offDrawing = kept((drop: Drop, found: AsBuilt, tolerance: number, units: Units): Finding | null => {
  const away = awayFromDrawing(drop, found);
  if (away <= tolerance) return null;
  return {
    severity: 'warn',
    rule: 'as-built',
    about: [drop.id],
    says: `${drop.id} was built ${printLength(away, units, INCH)} from where it is drawn. Its cord, branch and clearances as built stand beside those of the drawing; draw it where it was built, or move it.`,
    value: away,
    limit: tolerance,
    unit: 'ft',
    source: siteRule('builtTolerance'),
  };
});
