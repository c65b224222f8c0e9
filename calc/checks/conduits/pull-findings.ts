import { kept } from '../../../routing/kept/kept.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Pullpoint } from '../../../routing/site/site.ts';
import type { Design } from '../../branches/design.ts';
import type { PullTension } from '../../branches/pulls/pull-tension.ts';
import { isEasyPull, pullTension } from '../../branches/pulls/pull-tension.ts';
import type { Conduit } from '../../plan-file/branches.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import { pathLength, stretchesOf } from '../../supply/feeders/stretches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { type LimitGround, limitTroubles } from './pull-limits.ts';
import { pullingNotes } from './pulling-notes.ts';

const SOURCE = 'cable pulling practice, from memory: friction 0.5; the limits of the conductors’ maker rule';

/** Finding for a pull that takes more than its conductors should bear; null where it does not. */
export function pullFinding(what: string, about: readonly string[], pull: PullTension): Finding | null {
  const { tension, mostTension, sidewall, mostSidewall } = pull;
  if (tension <= mostTension && sidewall <= mostSidewall) return null;
  const bySide = tension / mostTension < sidewall / mostSidewall;
  const [value, limit, unit] = bySide ? [sidewall, mostSidewall, 'lb/ft'] : [tension, mostTension, 'lb'];
  return {
    severity: 'warn',
    rule: 'pull-tension',
    about,
    says: `Pulling ${what} takes about ${Math.round(value)} ${unit}${bySide ? ' against the inside of a bend' : ''}, where ${Math.round(limit)} is what its conductors should bear. A pull point on the way, wider or fewer bends, or lubricant.`,
    value,
    limit,
    unit,
    source: SOURCE,
  };
}

/** The pull of one branch conduit, where it is hard. */
export function conduitPull(conduit: Conduit, metal: Metal, tables: CodeTables): Finding | null {
  const { id, path, tradeSize, conductors, circuits, raceways } = conduit;
  if (tradeSize === null || isEasyPull(tables, conduit, metal)) return null;
  const pull = pullTension(tables, path, tradeSize, conductors, metal);
  return pullFinding(`the conductors of conduit ${id}`, [id, ...circuits, ...raceways], pull);
}

/**
 * What there is to say of a new feeder's conduits: over-full ones, and where the way is drawn, between each two places
 * where they can be opened, too many degrees of bend, too long and too hard pulls, and what to mind in pulling.
 */
export const feederPullFindings = kept(
  (
    conduit: FeederConduit,
    design: Design,
    pullpoints: readonly Pullpoint[],
    ground: LimitGround,
  ): readonly Finding[] => {
    const { tables, rules } = design;
    const { feeder, method, tradeSize, conductors, path, fits, fillPercent, fillLimit } = conduit;
    if (feeder.existing === true) return [];
    const findings: Finding[] = [];
    if (!fits)
      findings.push({
        severity: 'fail',
        rule: 'conduit-fill',
        about: [feeder.id],
        says: `Each set of ${feeder.id} would be ${fillPercent.toFixed(1)}% full in the largest ${method}, ${tradeSize} in.; the limit is ${fillLimit}%. More sets of smaller conductors.`,
        value: fillPercent,
        limit: fillLimit,
        unit: '%',
        source: tables.fill.source,
      });
    if (path === null || tradeSize === null) return findings;
    const { metal } = feeder.conductor;
    for (const stretch of stretchesOf(path, pullpoints, rules.joinTolerance)) {
      const { from, to } = stretch;
      const about = [feeder.id, ...[from, to].filter((id) => id !== null)];
      const ends = `${from ?? feeder.from} to ${to ?? feeder.to}`;
      const bends = bendsOf(stretch.path);
      const limited = {
        what: `Feeder ${feeder.id}, ${ends},`,
        about,
        from: from ?? feeder.from,
        path: stretch.path,
        length: pathLength(stretch.path),
        bends: bends.length,
        bendDegrees: bends.reduce((sum, { degrees }) => sum + degrees, 0),
      };
      for (const { finding, words } of limitTroubles(limited, design, ground))
        findings.push({ ...finding, says: finding.says + words });
      const pull = pullTension(tables, stretch.path, tradeSize, conductors, metal);
      const hard = pullFinding(`each set of ${feeder.id}, ${ends},`, about, pull);
      if (hard !== null) findings.push(hard);
      const what = (): string => `Each set of ${feeder.id}, ${ends},`;
      const pulled = { what, about: () => about, method, tradeSize, path: stretch.path, conductors, metal };
      findings.push(...pullingNotes(pulled, tables, ground.units));
    }
    return findings;
  },
);
