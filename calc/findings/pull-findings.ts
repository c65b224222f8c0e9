import type { Finding } from '../../routing/site/finding.ts';
import type { Metal, Units } from '../../routing/site/vocabulary.ts';
import type { FeederConduit } from '../conduits/feeder-conduit.ts';
import type { PullTension } from '../conduits/pull-tension.ts';
import { isEasyPull, pullTension } from '../conduits/pull-tension.ts';
import { remembered } from '../memo.ts';
import type { Conduit } from '../plan-shape.ts';
import type { CodeTables } from '../tables/code-tables.ts';
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

/** What there is to say of feeders' conduits: over-full ones, and hard pulls where the way is drawn. */
export const feederFindings = remembered(
  (conduit: FeederConduit, tables: CodeTables, units: Units): readonly Finding[] => {
    const { feeder, method, tradeSize, conductors, path, fits, fillPercent, fillLimit } = conduit;
    const findings: Finding[] = [];
    if (!fits && feeder.existing !== true)
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
    if (path === null || tradeSize === null || feeder.existing === true) return findings;
    const pull = pullTension(tables, path, tradeSize, conductors, feeder.conductor.metal);
    const hard = pullFinding(`each set of ${feeder.id}`, [feeder.id], pull);
    const pulled = { what: `Each set of ${feeder.id}`, about: [feeder.id], method, tradeSize, path, conductors };
    const notes = pullingNotes({ ...pulled, metal: feeder.conductor.metal }, tables, units);
    return [...findings, ...(hard === null ? [] : [hard]), ...notes];
  },
);
