import { printLength } from '../../routing/site/feet-inches.ts';
import type { Finding } from '../../routing/site/finding.ts';
import type { Rules } from '../../routing/site/site.ts';
import type { Units } from '../../routing/site/vocabulary.ts';
import type { Design } from '../conduits/design.ts';
import type { NamedHomeRun } from '../conduits/named.ts';
import { pullPlaces } from '../conduits/pull-places.ts';
import { remembered } from '../memo.ts';
import type { Conduit } from '../plan-shape.ts';
import type { CodeTables } from '../tables/code-tables.ts';

/** Over-full conduits, too many degrees of bend and too long a pull between two openings, in one home run. */
export const conduitFindings = remembered(
  (homeRun: NamedHomeRun, { tables, rules }: Design, units: Units): readonly Finding[] =>
    homeRun.conduits.flatMap((conduit, i) => {
      const findings: Finding[] = [];
      if (!homeRun.homeRun.packings[i]!.fits) findings.push(overfull(conduit, tables));
      if (conduit.bendDegrees > rules.bendLimit + 1e-6) findings.push(tooBent(conduit, tables, rules, units));
      if (conduit.length > rules.pullLimit + 1e-9) findings.push(tooLong(conduit, rules, units));
      return findings;
    }),
);

const about = (conduit: Conduit): readonly string[] => [conduit.id, ...conduit.circuits, ...conduit.raceways];

const between = (conduit: Conduit): string => `Conduit ${conduit.id}, ${conduit.from} to ${conduit.to},`;

/** Where pull points would cure too many bends or too long a pull. */
function cure(conduit: Conduit, rules: Rules, units: Units): string {
  const places = pullPlaces(conduit.path, rules).map(
    (at) => `(${at.map((feet) => printLength(feet, units)).join(', ')})`,
  );
  if (places.length === 0) return '';
  return ` ${places.length === 1 ? 'A pull point' : `${places.length} pull points`} at ${places.join(' and ')} would do.`;
}

function overfull(conduit: Conduit, tables: CodeTables): Finding {
  const { method, tradeSize, fillPercent, fillLimit } = conduit;
  return {
    severity: 'fail',
    rule: 'conduit-fill',
    about: about(conduit),
    says: `${between(conduit)} would be ${fillPercent.toFixed(1)}% full in the largest ${method}, ${tradeSize} in.; the limit is ${fillLimit}%. Put its circuits in more conduits, or shorten the branch so that smaller conductors do.`,
    value: fillPercent,
    limit: fillLimit,
    unit: '%',
    source: tables.fill.source,
  };
}

function tooBent(conduit: Conduit, tables: CodeTables, rules: Rules, units: Units): Finding {
  return {
    severity: 'fail',
    rule: 'bends',
    about: about(conduit),
    says: `${between(conduit)} bends ${conduit.bends} times, ${Math.round(conduit.bendDegrees)} degrees in all, between two places where it can be opened; the limit is ${rules.bendLimit}.${cure(conduit, rules, units)}`,
    value: conduit.bendDegrees,
    limit: rules.bendLimit,
    unit: 'degrees',
    source: `${tables.bendLimit.source}; site rule bendLimit`,
  };
}

function tooLong(conduit: Conduit, rules: Rules, units: Units): Finding {
  return {
    severity: 'warn',
    rule: 'pull-length',
    about: about(conduit),
    says: `${between(conduit)} is ${printLength(conduit.length, units)} long between two places where it can be opened; the limit is ${printLength(rules.pullLimit, units)}.${cure(conduit, rules, units)}`,
    value: conduit.length,
    limit: rules.pullLimit,
    unit: 'ft',
    source: 'site rule pullLimit; common practice, no source',
  };
}
