import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { savedByRuin } from '../../../bench/ruin.ts';
import { HANDS } from '../hand/hands.ts';

test('a search of its own on the price of the whole plan finds little: two percent of the branches at most', () => {
  const { file } = propose(HANDS['8']().ground, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
  const { saved, branches } = savedByRuin(file, 40, 2026);
  expect(branches).toBeGreaterThan(1000);
  expect(saved / branches).toBeLessThan(0.02);
});
