import type { Rules } from './site.ts';

/** The rules of a site whose file sets none; lengths in feet. `RULE_NOTES` says where each figure comes from. */
export const DEFAULT_RULES: Rules = {
  code: 'NEC 2023',
  branchLimit: 250,
  cordLimit: 25,
  cordSlack: 2,
  tapLimit: 6,
  joinTolerance: 0.25,
  headClearance: 2,
  coverage: 1,
  allowance: { equipment: 5, box: 1 },
  ambientC: 40,
  terminalC: 75,
  dropLimit: { branch: 3, total: 5 },
  powerFactor: 0.99,
  bendLimit: 360,
  pullLimit: 200,
  waste: { conductor: 0.05, raceway: 0.05 },
  restHeight: { low: 2, high: 4 },
  clearHeight: { aisle: 13.5, stall: 7, van: 8.17, walk: 6.67 },
  circuitsPerConduit: 3,
  pilot: {
    sourcePicofarads: 300,
    cordPicofaradsPerFoot: 50,
    branchPicofaradsPerFoot: 50,
    budgetPicofarads: 3100,
  },
  metal: 'copper',
  insulation: 'THWN-2',
  vehicle: 'sedan',
};
