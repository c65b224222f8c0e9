import type { CodeTables } from '../tables/code-tables.ts';

/** How continuous load counts, in words: `125%`. */
export const continuousPercent = ({ continuous }: Pick<CodeTables, 'continuous'>): string =>
  `${Math.round(100 * continuous.factor)}%`;

/** Amperes that a device, and a conductor before correction, are chosen for: other load plus the continuous with its factor. */
export const designAmps = (tables: CodeTables, load: { readonly continuous: number; readonly other: number }): number =>
  load.other + tables.continuous.factor * load.continuous;
