import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Site } from '../../routing/site/site.ts';
import { plan } from '../plan/plan.ts';
import type { Forced } from './shape.ts';

/** What the lot brings: a way can change none of it. */
const LOT = ['stalls', 'columns', 'members', 'keepouts', 'aisles'] as const;

const keyOf = ({ rule, about }: Finding): string => `${rule}\n${[...about].sort().join('\n')}`;

/**
 * Tells what forces a failing finding: that the lot has it as it stands, before any way, or that it is of nothing but
 * what the lot brings. A function for one lot; null of a finding that nothing forces, which is the way's own.
 */
export function forcing(base: Site): (finding: Finding) => Forced | null {
  const before = new Set(plan(base).findings.flatMap((one) => (one.severity === 'fail' ? [keyOf(one)] : [])));
  const given = new Set(LOT.flatMap((list) => base[list].map(({ id }) => id)));
  return (finding) => {
    if (before.has(keyOf(finding))) return { finding, by: 'the lot has it as it stands, before any way is drawn' };
    if (finding.about.every((id) => given.has(id)))
      return { finding, by: 'it is of the lot’s own stalls, columns, steel, aisles or keep-outs alone' };
    return null;
  };
}
