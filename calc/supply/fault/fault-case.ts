import type { Rules } from '../../../routing/site/site.ts';
import { TABLE_C } from '../../tables/conductor-of.ts';

/** What of conductors and transformers a fault current is worked with. */
export interface FaultCase {
  /** Of conductors, °C. */
  readonly conductorC: number;
  /** Of the nameplate impedance of a transformer. */
  readonly impedanceShare: number;
}

/**
 * The most that ratings are held against, with cold conductors and transformers of less than their nameplate impedance;
 * and the least that has to trip a breaker, with conductors as hot as the tables have them and transformers of more.
 */
export const faultCases = ({
  coldC,
  impedanceTolerance,
}: Rules['fault']): Readonly<Record<'most' | 'least', FaultCase>> => ({
  most: { conductorC: Math.min(coldC, TABLE_C), impedanceShare: 1 - impedanceTolerance },
  least: { conductorC: TABLE_C, impedanceShare: 1 + impedanceTolerance },
});

/** The same in words: `conductors at 25 °C, transformers at 90% of their nameplate impedance`. */
export const caseWords = ({ conductorC, impedanceShare }: FaultCase): string =>
  `conductors at ${conductorC} °C, transformers at ${Number((100 * impedanceShare).toFixed(1))}% of their nameplate impedance`;
