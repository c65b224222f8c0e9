import { kept } from '../../routing/kept/kept.ts';
import type { WorkingSpace } from '../../routing/site/place/working-space.ts';
import type { CodeTables } from './code-tables.ts';
import type { TransformerProtectionRow, WorkingSpaceRow } from './equipment-rows.ts';
import { standardRatingAtLeast } from './protection-of.ts';

/**
 * Greatest overcurrent protection of a transformer to 1000 V, percent of the rated amperes of each side (Table 450.3(B)).
 * `secondary` is null where none is required.
 */
export function transformerProtection(
  tables: CodeTables,
  protection: TransformerProtectionRow['protection'],
  amps: { readonly primary: number; readonly secondary: number },
): { readonly primary: number; readonly secondary: number | null } {
  const row = tables.transformerProtection.rows.find((other) => other.protection === protection);
  if (row === undefined) throw new RangeError(`no transformer protection by ${protection}`);
  const { primary, secondary } = row;
  return {
    primary: amps.primary >= 9 ? primary.from9 : amps.primary >= 2 ? primary.under9 : primary.under2,
    secondary: secondary === null ? null : amps.secondary >= 9 ? secondary.from9 : secondary.under9,
  };
}

/** The greatest rating of a device by such a percentage: the next standard one where the code allows that. */
export function transformerDeviceLimit(tables: CodeTables, percent: number, ratedAmps: number): number {
  const amps = (percent / 100) * ratedAmps;
  return percent === tables.transformerProtection.nextRatingPercent ? standardRatingAtLeast(tables, amps) : amps;
}

/** Depth of the working space in front of equipment, ft, by what is opposite; null past 1000 V to ground. */
export function workingSpaceDepth(
  tables: CodeTables,
  voltsToGround: number,
  opposite: 'clear' | 'grounded' | 'live',
): number | null {
  const row: WorkingSpaceRow | undefined = tables.workingSpace.rows.find(({ toVolts }) => voltsToGround <= toVolts);
  return row?.[opposite] ?? null;
}

/** The least of any working space, feet: its depth that of the lowest volts with nothing opposite. */
export const leastWorkingSpace = kept(({ workingSpace }: CodeTables): WorkingSpace => {
  const { widthIn, heightFt, rows } = workingSpace;
  return { width: widthIn / 12, depth: Math.min(...rows.map(({ clear }) => clear)), height: heightFt };
});
