import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { library, savedByRuin } from '../../../bench/ruin.ts';
import { HANDS } from '../hand/hands.ts';

/** The benchmarks tell those of more lots. */
test.each([
  ['8 stalls', HANDS['8']().ground],
  ['the library lot', library()],
])(
  'a search of its own on the price of the whole plan finds less than half a percent of the branches: %s',
  (_, ground) => {
    const { file } = propose(ground, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
    const { saved, branches } = savedByRuin(file, 40, 2026);
    expect(branches).toBeGreaterThan(1000);
    expect(saved / branches).toBeLessThan(0.005);
  },
);
