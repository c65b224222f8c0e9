import { expect, test } from 'vitest';
import { listMemo } from '../../../routing/lists/list-memo.ts';

test('a list is worked once an item, and again only where a record no longer holds', () => {
  let worked = 0;
  const memo = listMemo(
    (item: { n: number }, factor: number) => {
      worked++;
      return { factor, product: item.n * factor };
    },
    (record, factor) => record.factor === factor,
  );
  const [a, b, c] = [{ n: 1 }, { n: 2 }, { n: 3 }];
  expect(memo.all([a, b], 10).map(({ product }) => product)).toEqual([10, 20]);
  const kept = memo.all([c, a, b], 10);
  expect(kept.map(({ product }) => product)).toEqual([30, 10, 20]);
  expect(worked).toBe(3);
  expect(memo.one(a, 10)).toBe(kept[1]);
  expect(memo.all([c, a, b], 7).map(({ product }) => product)).toEqual([21, 7, 14]);
  expect(worked).toBe(6);
});
