import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Charger } from '../../routing/site/site.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { checkedExtent } from './checks.ts';
import { placeInOrder } from './in-order.ts';
import type { Looked } from './looked.ts';
import { missedOf, notCheckedOf } from './not-checked.ts';
import { RULES } from './rules.ts';

const soundFinding = kept(
  (
    { edition }: CodeTables,
    checks: number,
    things: number,
    served: number,
    stalls: number,
    warnings: number,
    notChecked: readonly string[],
  ): Finding => {
    const number = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
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
 * Sorted findings, with the note that calls the plan sound where it is: nothing fails and nothing keeps it from being
 * called so. It names what was looked at and what was not.
 */
export function withSound(at: Looked, sorted: readonly Finding[]): readonly Finding[] {
  if (sorted[0]?.severity === 'fail' || withheldOf(at, sorted).length > 0) return sorted;
  const { checks, things } = checkedExtent(at);
  const { stalls, chargers } = at.site;
  const served = servedBy(chargers);
  const sound = soundFinding(at.tables, checks, things, served, stalls.length, firstNote(sorted), notCheckedOf(at));
  const place = placeInOrder(sorted, sound);
  return [...sorted.slice(0, place), sound, ...sorted.slice(place)];
}

const servedBy = kept((chargers: readonly Charger[]): number => {
  const served = new Set<string>();
  for (const { stalls } of chargers) for (const id of stalls) served.add(id);
  return served.size;
});

/**
 * What keeps a plan in which nothing fails from being called sound, in words: that nothing is drawn to look at, checks
 * that say so of what they found, and what they apply to and could not look at.
 */
export function withheldOf(at: Looked, findings: readonly Finding[]): readonly string[] {
  const reasons = new Set<string>();
  for (const { rule } of findings) {
    const reason = rule === 'sound' ? undefined : RULES[rule].withholds;
    if (reason !== undefined) reasons.add(reason);
  }
  if (at.reach.length === 0 && reasons.size === 0) reasons.add('no charger and no stall is drawn');
  return [...reasons, ...missedOf(at).map((missed) => `${missed} is not looked at`)];
}

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
