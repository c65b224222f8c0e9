import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findById } from '../../../web/document/find/find-by.ts';

const ids = fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'));

test('of lists that come, go and change places the same element is found as by going through each', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(ids, fc.constantFrom('a', 'b', 'c', 'z')), { maxLength: 20 }), (asked) => {
      const find = findById<{ readonly id: string }>();
      for (const [names, id] of asked) {
        const list = names.map((name) => ({ id: name }));
        expect(find(list, id)).toBe(list.find((each) => each.id === id));
      }
    }),
    { numRuns: 500 },
  );
});
