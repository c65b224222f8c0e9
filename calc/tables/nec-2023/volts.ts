import type { CodeTables } from '../code-tables.ts';

/** Where the tables of low voltage end. */
export const LOW_VOLTAGE: CodeTables['lowVoltage'] = {
  source: 'NEC 2023 Articles 235, 245, 315, 495; 250.190; 450.3(A)',
  verified:
    'From memory: the 2023 edition moved what is over 1000 V into articles of its own. 450.3(B) and 110.26 say 1000 V in a copy of the 2023 tables.',
  doubts: [
    'Table 310.16 itself goes to 2000 V; conductors of 1001 to 2000 V are refused with the rest.',
    'Impedances over the limit are those of Chapter 9 Table 9, which are of 600 V cables: a shielded cable has a little more reactance.',
  ],
  upToVolts: 1000,
};

/** Voltages that systems are named by. */
export const NOMINAL_VOLTS: CodeTables['nominalVolts'] = {
  source: 'NEC 2023 220.5(A), Table 310.4(1)',
  verified: 'From memory.',
  doubts: ['Only three-phase systems as they are common in one country, and conductors of 600 V.'],
  chargers: [208, 240],
  feeders: [240, 480, 600],
};
