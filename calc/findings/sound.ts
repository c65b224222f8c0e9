import type { Finding } from '../../routing/site/finding.ts';
import type { RuleWord } from '../../routing/site/rule-words.ts';
import type { Charger } from '../../routing/site/site.ts';
import { remembered } from '../memo.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { extentOf } from './checks.ts';
import { placeOf } from './in-order.ts';
import type { Looked } from './looked.ts';
import { missedOf, notCheckedOf } from './not-checked.ts';
import { RULES } from './rules.ts';

const soundFinding = remembered(
  (
    { edition }: CodeTables,
    checks: number,
    things: number,
    served: number,
    stalls: number,
    warnings: number,
    notChecked: readonly string[],
  ): Finding => {
    const number = (count: number): string => count.toLocaleString('en-US');
    const toCheck =
      warnings === 0 ? '' : ` ${number(warnings)} ${warnings === 1 ? 'matter is' : 'matters are'} to be checked.`;
    return {
      severity: 'note',
      rule: 'sound',
      about: [],
      says: `Nothing fails in ${number(checks)} checks on ${number(things)} things, by the rules of the site and ${edition}. ${number(served)} of ${number(stalls)} stalls are served.${toCheck} Not looked at: ${notChecked.join('; ')}.`,
      source: `rules of the site, ${edition}`,
    };
  },
);

/**
 * Sorted findings, with the note that calls the plan sound where it is: chargers serve stalls, no check found a failure
 * or what keeps from calling it so, and none had to leave out what it applies to. It names what was looked at and what
 * was not.
 */
export function withSound(at: Looked, sorted: readonly Finding[]): readonly Finding[] {
  if (at.reach.length === 0 || sorted.some(withholds) || missedOf(at).length > 0) return sorted;
  const { checks, things } = extentOf(at);
  const { stalls, chargers } = at.site;
  const served = servedBy(chargers);
  const sound = soundFinding(at.tables, checks, things, served, stalls.length, firstNote(sorted), notCheckedOf(at));
  const place = placeOf(sorted, sound);
  return [...sorted.slice(0, place), sound, ...sorted.slice(place)];
}

const servedBy = remembered(
  (chargers: readonly Charger[]): number => new Set(chargers.flatMap(({ stalls }) => stalls)).size,
);

const withholds = ({ severity, rule }: Finding): boolean =>
  severity === 'fail' || (rule !== 'sound' && RULES[rule].withholds === true);

/** Checks with findings that keep the plan from being called sound although nothing of it fails, in their order. */
export const withheldBy = (findings: readonly Finding[]): readonly RuleWord[] => [
  ...new Set(findings.flatMap((finding) => (finding.rule !== 'sound' && withholds(finding) ? finding.rule : []))),
];

/** How many sorted findings stand before the notes. */
function firstNote(sorted: readonly Finding[]): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]!.severity === 'note') high = middle;
    else low = middle + 1;
  }
  return low;
}
