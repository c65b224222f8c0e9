import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chunking, concatenating, joining, partitionBy, splitting } from '../../../routing/kept/parts.ts';
import { families, type Item } from './family.ts';

/** The partition of a list by the keys of its items: one for lists with the same keys, as chargers have one feeder each. */
function partitions() {
  const known = new Map<string, ReturnType<typeof partitionBy>>();
  return (list: readonly Item[]): ReturnType<typeof partitionBy> => {
    const word = list.map(({ key }) => key).join('');
    const before = known.get(word) ?? partitionBy(list, ({ key }) => key);
    known.set(word, before);
    return before;
  };
}

describe('a partition', () => {
  test('splits a list into what has one key, in order, and joins it again, after any edits of two sites in turn', () => {
    fc.assert(
      fc.property(families, (asked) => {
        const partitionOf = partitions();
        const [split, join] = [splitting<Item>(), joining<Item>()];
        for (const list of asked) {
          const { keys, partition } = partitionOf(list);
          const parts = split(list, partition);
          expect(parts).toEqual(keys.map((key) => list.filter((item) => item.key === key)));
          expect(join(parts, partition)).toEqual(list);
        }
      }),
    );
  });

  test('keeps the parts that did not change', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(11)), (places) => {
        const list = Array.from({ length: 12 }, (_, value) => ({ key: 'abcd'[value % 4]!, value }));
        const { partition } = partitionBy(list, ({ key }) => key);
        const split = splitting<Item>();
        const before = split(list, partition);
        const moved = list.map((item, i) => (places.includes(i) ? { ...item } : item));
        split(moved, partition).forEach((part, i) => {
          expect(part === before[i]).toBe(!places.some((place) => place % 4 === i));
        });
      }),
    );
  });
});

describe('lists', () => {
  test('one after the other stay so as they change, grow and shrink', () => {
    fc.assert(
      fc.property(families, fc.array(fc.nat(9), { minLength: 1, maxLength: 3 }), (asked, cuts) => {
        const concatenate = concatenating<Item>();
        for (const list of asked) {
          const parts = [...cuts, list.length].map((_, i) => list.slice(cuts[i - 1] ?? 0, cuts[i] ?? list.length));
          expect(concatenate(parts)).toEqual(parts.flat());
        }
      }),
    );
  });

  test('are cut in chunks, and a chunk that did not change is the same list', () => {
    fc.assert(
      fc.property(families, (asked) => {
        const chunk = chunking<Item>(4);
        for (const list of asked) {
          const chunks = chunk(list);
          expect(chunks.flat()).toEqual(list);
          expect(chunks.every(({ length }, i) => length === 4 || i === chunks.length - 1)).toBe(true);
        }
        const [list] = asked;
        const longer = [...list!, { key: 'a', value: -1 }];
        chunk(list!).forEach((own, i) => {
          if (own.length === 4) expect(chunk(longer)[i]).toBe(own);
        });
      }),
    );
  });
});
