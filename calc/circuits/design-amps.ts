import type { CodeTables } from '../tables/code-tables.ts';

/** Amperes that a device, and a conductor before correction, are chosen for: other load plus 125% of the continuous. */
export const designAmps = (tables: CodeTables, load: { readonly continuous: number; readonly other: number }): number =>
  load.other + tables.continuous.factor * load.continuous;
