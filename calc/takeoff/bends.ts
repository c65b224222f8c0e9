import type { Method } from '../../routing/site/schema/vocabulary.ts';
import { ELBOWS } from '../prices/spec.ts';
import { tradeSizeInches } from '../tables/lookup.ts';

/** Methods that are bent on the job, and the largest trade size of them that is. Common practice, no source. */
const BENT: ReadonlySet<Method> = new Set(['EMT', 'IMC', 'RMC']);
const LARGEST_BENT = '1-1/4';

/** Whether the trade bends a conduit by hand at a corner, where it buys an elbow for others. */
export const isBentByHand = (method: Method, tradeSize: string | null): boolean =>
  tradeSize !== null && BENT.has(method) && tradeSizeInches(tradeSize) <= tradeSizeInches(LARGEST_BENT);

const WAYS: readonly (readonly number[])[] = [
  ...ELBOWS.map((one) => [one]),
  ...ELBOWS.flatMap((one, i) => ELBOWS.slice(i).map((other) => [one, other])),
];

/** What joints and conduit give without a fitting, degrees. Common practice, no source. */
const SLACK = 4;

/**
 * The elbows that make up a corner, degrees, the larger first: one where one comes within 4 degrees of it, else the one or
 * two that come nearest; none for a corner that joints and conduit give.
 * @example
 * // Hand-worked: no elbow of 75 degrees is made, one of 60 and one of 15 turn as far
 * elbowsFor(75) // [60, 15]
 */
export function elbowsFor(degrees: number): readonly number[] {
  if (degrees < SLACK) return [];
  const off = (way: readonly number[]): number => Math.abs(way.reduce((sum, one) => sum + one, 0) - degrees);
  const near = ELBOWS.filter((one) => off([one]) <= SLACK).sort((a, b) => off([a]) - off([b]));
  if (near.length > 0) return [near[0]!];
  return WAYS.reduce((best, way) => (off(way) < off(best) - 1e-9 ? way : best));
}
