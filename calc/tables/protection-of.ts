import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from './code-tables.ts';

/** Currents that differ by this share are one: a computed 40.000000001 A is 40 A. */
const SAME = 1e-9;

/** Smallest standard rating of at least `amps`; Infinity past the largest, 6000 A. */
export function standardRatingAtLeast(tables: CodeTables, amps: number): number {
  return tables.standardRatings.rows.find((rating) => amps <= rating * (1 + SAME)) ?? Infinity;
}

/** Largest standard rating of at most `amps`, the small fuses among them where asked for; null where there is none. */
export function standardRatingAtMost(tables: CodeTables, amps: number, device: 'breaker' | 'fuse'): number | null {
  const ratings =
    device === 'breaker'
      ? tables.standardRatings.rows
      : [...tables.standardRatings.rows, ...tables.standardRatings.fuses].sort((a, b) => a - b);
  return ratings.findLast((rating) => rating <= amps * (1 + SAME)) ?? null;
}

/** Largest device that may protect a conductor of this ampacity: 240.4(B) to 800 A, 240.4(C) above. */
export function largestDeviceFor(tables: CodeTables, ampacity: number): number {
  const next = standardRatingAtLeast(tables, ampacity);
  return next <= tables.nextRating.upToAmps ? next : (standardRatingAtMost(tables, ampacity, 'breaker') ?? 0);
}

/** Largest device for a small conductor, 240.4(D); null for sizes without such a limit. */
export function smallConductorLimit(tables: CodeTables, size: string, metal: Metal): number | null {
  return tables.smallConductors.rows.find((row) => row.size === size && row.metal === metal)?.maxAmps ?? null;
}

/** Smallest equipment grounding conductor for a device. The table ends at 6000 A; past it its last row is given. */
export function groundingSize(tables: CodeTables, breakerAmps: number, metal: Metal): string {
  const rows = tables.grounding.rows;
  const row = rows.find((candidate) => breakerAmps <= candidate.breakerAmps) ?? rows.at(-1);
  if (row === undefined) throw new RangeError(`${tables.edition} tables hold no grounding conductors`);
  return row[metal];
}
