import type { CodeTables } from '../code-tables.ts';
import type { RuleBasis } from '../table.ts';

const byPlace: RuleBasis = {
  source:
    'the ambient temperature of the site where it is not given; a raceway may have one of its own, and one in the sun closer to a roof than 7/8 in is taken 33 °C (60 °F) warmer: NEC 310.15(B)(2) (from memory). Cooler ground is for the engineer to show',
  basis: 'NEC 310.15(B)(1), (2)',
};

/** Where the code sets the usual value of a rule of the site, and how far that was read. */
export const RULE_BASES: CodeTables['ruleBases'] = {
  cordLimit: {
    source:
      'NEC 625.17(C), as summarised in trade teaching; measured from the cable exit to the face of the connector (from memory)',
    basis: 'NEC 625.17(C)',
  },
  'restHeight.low': { source: 'NEC 625.50, outdoors: 24 in', basis: 'NEC 625.50' },
  'allowance.box': {
    source: 'common practice, no source: 1 to 2 ft a side; free length of 6 in is NEC 300.14 (from memory)',
    basis: 'common practice; NEC 300.14',
  },
  'placeAmbientC.overhead': byPlace,
  'placeAmbientC.surface': byPlace,
  'placeAmbientC.underground': byPlace,
  terminalC: {
    source:
      'NEC 110.14(C) (from memory): 75 °C where the equipment is marked for it; 60 °C where it is not and the circuit is 100 A or less',
    basis: 'NEC 110.14(C)',
  },
  'dropLimit.branch': {
    source: 'NEC 210.19 informational note (from memory): a recommendation, not a requirement',
    basis: 'NEC 210.19 informational note',
  },
  'dropLimit.total': {
    source: 'NEC 210.19 and 215.2 informational notes (from memory): a recommendation, not a requirement',
    basis: 'NEC 210.19 and 215.2 informational notes',
  },
  bendLimit: {
    source: 'NEC 358.26 EMT, 344.26 RMC, 352.26 PVC (from memory)',
    basis: 'NEC 358.26, 344.26, 352.26',
  },
  circuitsPerConduit: {
    source:
      'three two-wire circuits are 6 current-carrying conductors at 80%, four would be 8 at 70%: NEC Table 310.15(C)(1); the choice is common practice',
    basis: 'NEC Table 310.15(C)(1)',
  },
};
