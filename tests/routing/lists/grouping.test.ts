import { expect, test } from 'vitest';
import { addTo } from '../../../routing/lists/grouping.ts';

test('items come to the group of their key in the order given, groups in the order of their first', () => {
  const groups = new Map<number | null, string[]>();
  for (const [key, item] of [
    [2, 'a'],
    [null, 'b'],
    [2, 'c'],
    [0, 'd'],
  ] as const)
    addTo(groups, key, item);
  expect([...groups]).toEqual([
    [2, ['a', 'c']],
    [null, ['b']],
    [0, ['d']],
  ]);
});
