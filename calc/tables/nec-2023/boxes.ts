import type { CodeTables } from '../code-tables.ts';
import type { MetalBoxRow } from '../raceway-rows.ts';
import type { CodeTable } from '../table.ts';

/** Volume that each conductor takes in a box, and the allowances of what else is in it. */
export const BOX_ALLOWANCES: CodeTables['boxAllowances'] = {
  source: 'NEC 2023 Table 314.16(B)(1), 314.16(B)',
  verified: '14, 12 and 10 AWG agree with published examples; the rest from memory.',
  doubts: [
    'Through 2017 all grounding conductors together counted once; since 2020 one allowance for up to four, a quarter for each more.',
  ],
  clamps: 1,
  yoke: 2,
  groundings: 4,
  groundingBeyond: 0.25,
  rows: [
    { size: '18', volume: 1.5 },
    { size: '16', volume: 1.75 },
    { size: '14', volume: 2 },
    { size: '12', volume: 2.25 },
    { size: '10', volume: 2.5 },
    { size: '8', volume: 3 },
    { size: '6', volume: 5 },
  ],
};

/** Volume of standard metal boxes. */
export const METAL_BOXES: CodeTable<MetalBoxRow> = {
  source: 'NEC 2023 Table 314.16(A)',
  verified: 'From memory of the 2023 text, not checked again against it.',
  doubts: [],
  rows: [
    { box: '4 x 1-1/4 square', volume: 18 },
    { box: '4 x 1-1/2 square', volume: 21 },
    { box: '4 x 2-1/8 square', volume: 30.3 },
    { box: '4-11/16 x 1-1/4 square', volume: 25.5 },
    { box: '4-11/16 x 1-1/2 square', volume: 29.5 },
    { box: '4-11/16 x 2-1/8 square', volume: 42 },
    { box: '4 x 1-1/4 octagon', volume: 12.5 },
    { box: '4 x 1-1/2 octagon', volume: 15.5 },
    { box: '4 x 2-1/8 octagon', volume: 21.5 },
    { box: '3 x 2 x 2 device', volume: 10 },
    { box: '3 x 2 x 2-1/2 device', volume: 12.5 },
    { box: '3 x 2 x 2-3/4 device', volume: 14 },
    { box: '3 x 2 x 3-1/2 device', volume: 18 },
  ],
};

/** Times the largest raceway, for conductors of 4 AWG and larger. */
export const PULL_BOXES: CodeTables['pullBoxes'] = {
  source: 'NEC 2023 314.28(A)',
  verified: 'Gives every published answer among the worked examples.',
  doubts: ['Entries opposite a removable cover go by Table 312.6(A), which is not here.'],
  straightTimes: 8,
  angleTimes: 6,
};
