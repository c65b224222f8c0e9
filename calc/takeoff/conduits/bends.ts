import type { BentTradeSize, Method } from '../../../routing/site/schema/vocabulary.ts';
import { ELBOWS } from '../../prices/spec.ts';
import { tradeSizeInches } from '../../tables/sizes.ts';

/** Methods that are bent on the job. Common practice, no source. */
const BENT: ReadonlySet<Method> = new Set(['EMT', 'IMC', 'RMC']);

/** Whether a conduit is bent on the job at a corner, where an elbow is bought for others: steel up to the `largest` size. */
export const isBent = (method: Method, tradeSize: string | null, largest: BentTradeSize): boolean =>
  tradeSize !== null &&
  largest !== 'none' &&
  BENT.has(method) &&
  tradeSizeInches(tradeSize) <= tradeSizeInches(largest);

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
