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
import { expansionFindings } from './expansion-findings.ts';
import { conduitPull } from './pull-findings.ts';
import { pullingNotes } from './pulling-notes.ts';

/** Something wrong with one conduit. Those that one cure would help share its words. */
interface Trouble {
  readonly finding: Finding;
  readonly cure: string;
}

/**
 * Over-full conduits, too many degrees of bend, too long and too hard pulls, what to mind in pulling, and expansion.
 * Conduits side by side that the same pull points would cure are one finding, the worst of them first.
 */
export function conduitFindings(homeRuns: readonly NamedHomeRun[], design: Design, units: Units): readonly Finding[] {
  const groups = new Map<string, Trouble[]>();
  for (const homeRun of homeRuns) {
    for (const trouble of troubles(homeRun, design, units)) {
      const key = `${trouble.finding.rule}${trouble.cure}`;
      const others = trouble.cure === '' ? undefined : groups.get(key);
      if (others === undefined) groups.set(trouble.cure === '' ? `${key} ${trouble.finding.about[0]}` : key, [trouble]);
      else others.push(trouble);
    }
  }
  return [...[...groups.values()].map(merged), ...expansionFindings(homeRuns, design, units)];
}

function merged(group: readonly Trouble[]): Finding {
  const [first] = [...group].sort((a, b) => (b.finding.value ?? 0) - (a.finding.value ?? 0));
  const { finding, cure } = first!;
  if (group.length === 1) return { ...finding, says: finding.says + cure };
  const others = group.filter((one) => one !== first).map((one) => one.finding);
  return {
    ...finding,
    about: [...new Set([...finding.about, ...others.flatMap(({ about }) => about)])],
    says: `${finding.says} ${others.length === 1 ? 'So is one conduit' : `So are ${others.length} conduits`} beside it.${cure}`,
  };
}

const troubles = remembered((homeRun: NamedHomeRun, { tables, rules }: Design, units: Units): readonly Trouble[] =>
  homeRun.conduits.flatMap((conduit, i) => {
    const found: Trouble[] = [];
    const say = (finding: Finding, cure = ''): void => {
      found.push({ finding, cure });
    };
    if (!homeRun.homeRun.packings[i]!.fits) say(overfull(conduit, tables));
    const bent = conduit.bendDegrees > rules.bendLimit + 1e-6;
    const long = conduit.length > rules.pullLimit + 1e-9;
    const cure = bent || long ? cureOf(conduit, rules, units) : '';
    if (bent) say(tooBent(conduit, tables, rules), cure);
    if (long) say(tooLong(conduit, rules, units), cure);
    const hard = conduitPull(conduit, rules.metal, tables);
    if (hard !== null) say(hard);
    const pulled = { ...conduit, what: `Conduit ${conduit.id}`, about: about(conduit), metal: rules.metal };
    for (const note of pullingNotes(pulled, tables, units)) say(note);
    return found;
  }),
);

const about = (conduit: Conduit): readonly string[] => [conduit.id, ...conduit.circuits, ...conduit.raceways];

const between = (conduit: Conduit): string => `Conduit ${conduit.id}, ${conduit.from} to ${conduit.to},`;

/** Where pull points would cure too many bends or too long a pull. */
function cureOf(conduit: Conduit, rules: Rules, units: Units): string {
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

function tooBent(conduit: Conduit, tables: CodeTables, rules: Rules): Finding {
  return {
    severity: 'fail',
    rule: 'bends',
    about: about(conduit),
    says: `${between(conduit)} bends ${conduit.bends} times, ${Math.round(conduit.bendDegrees)} degrees in all, between two places where it can be opened; the limit is ${rules.bendLimit}.`,
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
    says: `${between(conduit)} is ${printLength(conduit.length, units)} long between two places where it can be opened; the limit is ${printLength(rules.pullLimit, units)}.`,
    value: conduit.length,
    limit: rules.pullLimit,
    unit: 'ft',
    source: 'site rule pullLimit; common practice, no source',
  };
}
