import type { CodeTables } from '../code-tables.ts';

/** Conductors that leave a feeder or a transformer without an overcurrent device where they start. */
export const UNPROTECTED: CodeTables['unprotected'] = {
  source: 'NEC 2023 240.21(B), (C)',
  verified:
    'Lengths and fractions read in the 2023 text and in the 2017 text, which agree; paraphrased. Of the 25 ft rule for secondaries the protection from damage is from memory.',
  doubts: [
    'The tenth is asked of conductors installed in the field that leave the enclosure they start in, as every feeder here is taken to.',
    'Of high bays and industrial installations what no drawing shows is taken as the file says: building, persons, splices, what they pass through.',
    'Not held: busways, motors, generators, batteries (240.21(D) to (I)).',
  ],
  rows: [
    { of: 'tap', section: '240.21(B)(1)', lengthFt: 10, share: 1 / 10, outdoors: false },
    { of: 'tap', section: '240.21(B)(2)', lengthFt: 25, share: 1 / 3, outdoors: false },
    {
      of: 'tap',
      section: '240.21(B)(4)',
      lengthFt: 100,
      share: 1 / 3,
      outdoors: false,
      condition: 'high-bay',
      levelFt: 25,
      leastSize: { copper: '6', aluminum: '4' },
    },
    { of: 'tap', section: '240.21(B)(5)', lengthFt: null, share: null, outdoors: true },
    { of: 'transformer tap', section: '240.21(B)(3)', lengthFt: 25, share: 1 / 3, outdoors: false },
    { of: 'secondary', section: '240.21(C)(2)', lengthFt: 10, share: 1 / 10, outdoors: false },
    {
      of: 'secondary',
      section: '240.21(C)(3)',
      lengthFt: 25,
      share: null,
      outdoors: false,
      condition: 'industrial',
      ratedCurrent: true,
    },
    { of: 'secondary', section: '240.21(C)(6)', lengthFt: 25, share: 1 / 3, outdoors: false },
    { of: 'secondary', section: '240.21(C)(4)', lengthFt: null, share: null, outdoors: true },
    {
      of: 'tapped secondary',
      section: '240.21(C)(5)',
      lengthFt: 25,
      share: 1 / 3,
      outdoors: false,
      withPrimary: true,
    },
  ],
};
