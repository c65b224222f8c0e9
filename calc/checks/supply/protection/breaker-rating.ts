import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { standardRatingAtLeast, standardRatingAtMost } from '../../../tables/protection-of.ts';

/**
 * A device of no standard rating: a slip of typing, or an adjustable trip, which 240.6(B) allows; so it is worth a look and
 * does not fail.
 * @param what "main of P1"
 */
export function ratingFindings(
  what: string,
  amps: number,
  about: readonly string[],
  tables: CodeTables,
): readonly Finding[] {
  const above = standardRatingAtLeast(tables, amps);
  const below = standardRatingAtMost(tables, amps, 'fuse');
  if (above === amps || below === amps) return [];
  const near = [below, above].flatMap((one) => (one === null || one === Infinity ? [] : [`${one} A`]));
  return [
    {
      severity: 'warn',
      rule: 'breaker-rating',
      about,
      says: `The ${amps} A ${what} is no standard rating; ${near.join(' and ')} ${near.length === 1 ? 'is' : 'are'} the nearest. One of them, or an adjustable trip that is set so.`,
      value: amps,
      unit: 'A',
      source: tables.standardRatings.source,
    },
  ];
}
