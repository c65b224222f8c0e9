import type { CodeTables } from '../code-tables.ts';

/** Voltages that systems are named by. */
export const NOMINAL_VOLTS: CodeTables['nominalVolts'] = {
  source: 'NEC 2023 220.5(A), Table 310.4(1)',
  verified: 'From memory.',
  doubts: ['Only three-phase systems as they are common in one country, and conductors of 600 V.'],
  chargers: [208, 240],
  feeders: [240, 480, 600],
};
