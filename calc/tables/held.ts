import type { CodeTables } from './code-tables.ts';
import { NEC_2023 } from './nec-2023/nec-2023.ts';

/** The editions whose tables are held, the newest first. */
export const HELD: readonly [CodeTables, ...CodeTables[]] = [NEC_2023];
