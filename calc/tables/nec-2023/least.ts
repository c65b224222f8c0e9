import type { CodeTables } from '../code-tables.ts';

/** The smallest conductors that may be used. */
export const LEAST: CodeTables['least'] = {
  source: 'NEC 2023 310.3(A), 310.10(G)',
  verified: 'From memory of the 2023 text, not checked again against it.',
  doubts: [],
  circuit: { copper: '14', aluminum: '12' },
  parallel: '1/0',
};
