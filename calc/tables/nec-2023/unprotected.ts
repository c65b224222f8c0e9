import type { CodeTables } from '../code-tables.ts';

/** Conductors that leave a feeder or a transformer without an overcurrent device where they start. */
export const UNPROTECTED: CodeTables['unprotected'] = {
  source: 'NEC 2023 240.21(B), (C)',
  verified:
    'Lengths and fractions read in the 2023 text and in the 2017 text, which agree; paraphrased. Of the 25 ft rule for secondaries the protection from damage is from memory.',
  doubts: [
    'The tenth is asked of conductors installed in the field that leave the enclosure they start in, as every feeder here is taken to.',
    'Not held: taps that feed a transformer, high bays, industrial switchboards, busways, motors (240.21(B)(3), (B)(4), (C)(3), (C)(5), (D) to (H)).',
  ],
  rows: [
    { of: 'tap', section: '240.21(B)(1)', lengthFt: 10, share: 1 / 10, outdoors: false },
    { of: 'tap', section: '240.21(B)(2)', lengthFt: 25, share: 1 / 3, outdoors: false },
    { of: 'tap', section: '240.21(B)(5)', lengthFt: null, share: null, outdoors: true },
    { of: 'secondary', section: '240.21(C)(2)', lengthFt: 10, share: 1 / 10, outdoors: false },
    { of: 'secondary', section: '240.21(C)(6)', lengthFt: 25, share: 1 / 3, outdoors: false },
    { of: 'secondary', section: '240.21(C)(4)', lengthFt: null, share: null, outdoors: true },
  ],
};
