import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { concatenating, joining, partitionBy, partwise, splitting } from '../../../calc/kept/partition.ts';

/** Lists of objects that differ from one another by some items, all with the same keys. */
const lists = fc
  .array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 20 })
  .chain((keys) =>
    fc.record({
      keys: fc.constant(keys),
      changes: fc.array(fc.array(fc.nat(keys.length - 1), { maxLength: 4 }), { maxLength: 6 }),
    }),
  )
  .map(({ keys, changes }) => {
    const versions = [keys.map((key, i) => ({ key, i, version: 0 }))];
    changes.forEach((places, v) => {
      const next = [...versions.at(-1)!];
      for (const i of places) next[i] = { key: keys[i]!, i, version: v + 1 };
      versions.push(next);
    });
    return versions;
  });

type Item = { readonly key: string; readonly i: number; readonly version: number };

describe('a partition', () => {
  test('splits a list into what has one key, in order, after any changes', () => {
    fc.assert(
      fc.property(lists, (versions) => {
        const { keys, partition } = partitionBy(versions[0]!, ({ key }) => key);
        const split = splitting<Item>();
        for (const list of versions)
          expect(split(list, partition)).toEqual(keys.map((key) => list.filter((item) => item.key === key)));
      }),
    );
  });

  test('keeps the parts that did not change', () => {
    fc.assert(
      fc.property(lists, (versions) => {
        const { partition } = partitionBy(versions[0]!, ({ key }) => key);
        const split = splitting<Item>();
        let before = split(versions[0]!, partition);
        for (const list of versions.slice(1)) {
          const parts = split(list, partition);
          parts.forEach((part, i) => {
            const same = part.every((item, k) => item === before[i]![k]);
            expect(part === before[i]).toBe(same);
          });
          before = parts;
        }
      }),
    );
  });

  test('joins what it split', () => {
    fc.assert(
      fc.property(lists, (versions) => {
        const { partition } = partitionBy(versions[0]!, ({ key }) => key);
        const split = splitting<Item>();
        const join = joining<Item>();
        for (const list of versions) expect(join(split(list, partition), partition)).toEqual(list);
      }),
    );
  });
});

test('lists one after the other stay so as they change, grow and shrink', () => {
  const someLists = fc.array(fc.array(fc.array(fc.nat(9), { maxLength: 4 }), { maxLength: 5 }), { minLength: 1 });
  fc.assert(
    fc.property(someLists, (versions) => {
      const concatenate = concatenating<number>();
      const owner = {};
      for (const own of versions) expect(concatenate(owner, own)).toEqual(own.flat());
    }),
  );
});

test('partwise works again just the parts of which something changed', () => {
  const each = partwise<string>();
  const owner = {};
  const [a, b, c, d] = [{}, {}, {}, {}];
  const worked: number[] = [];
  const ask = (lists: readonly (readonly object[])[], shared: readonly unknown[]): readonly string[] => {
    worked.length = 0;
    return each(owner, lists, shared, (i) => {
      worked.push(i);
      return `part ${i}`;
    });
  };
  const first = ask(
    [
      [a, b, c],
      [d, d, d],
    ],
    ['x'],
  );
  expect(worked).toEqual([0, 1, 2]);
  expect(
    ask(
      [
        [a, b, c],
        [d, d, d],
      ],
      ['x'],
    ),
  ).toBe(first);
  expect(worked).toEqual([]);
  ask(
    [
      [a, d, c],
      [d, d, a],
    ],
    ['x'],
  );
  expect(worked).toEqual([1, 2]);
  ask(
    [
      [a, d, c],
      [d, d, a],
    ],
    ['y'],
  );
  expect(worked).toEqual([0, 1, 2]);
  expect(ask([[a], [d]], ['y'])).toEqual(['part 0']);
});
