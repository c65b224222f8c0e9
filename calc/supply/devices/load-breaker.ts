import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Load } from '../../../routing/site/site.ts';
import { designAmps } from '../../circuits/design-amps.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { standardRatingAtLeast } from '../../tables/protection-of.ts';
import { loadAmps } from '../tree/load-lines.ts';
import type { System } from '../tree/system.ts';

/** Smallest breaker that the branch of a load is given, A; common practice, no source. */
const LEAST = 15;

/**
 * Breaker of the branch of a load, A: of a motor 250% of its current (an inverse-time breaker); of any other its current, continuous load and generation counted 125%, at the next standard
 * rating; null past the largest.
 * @param system that it hangs on; its amperes are those at nominal voltage
 */
export function loadBreaker(tables: CodeTables, load: Load, system: System, lines: Lines): number | null {
  const amps = loadAmps(load, system, lines);
  if (load.motor === true) {
    const most = standardRatingAtLeast(tables, Math.max(LEAST, tables.motors.breakerShare * amps));
    return Number.isFinite(most) ? most : null;
  }
  const counted = load.continuous || load.generation === true;
  const needed = designAmps(tables, counted ? { continuous: amps, other: 0 } : { continuous: 0, other: amps });
  const rating = standardRatingAtLeast(tables, Math.max(LEAST, needed));
  return Number.isFinite(rating) ? rating : null;
}
