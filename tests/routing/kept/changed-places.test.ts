import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changedPlaces, copied } from '../../../routing/kept/changed-places.ts';

interface Item {
  readonly value: number;
}

const differing = (a: readonly Item[], b: readonly Item[]): number[] =>
  a.flatMap((item, i) => (item === b[i] ? [] : [i]));

test('of any two lists out of a family of copies it says just the places that differ', () => {
  const copy = fc.record({
    of: fc.nat(),
    places: fc.uniqueArray(fc.nat(29), { maxLength: 6 }),
    keeps: fc.boolean(),
    noted: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(copy, { maxLength: 12 }), (steps) => {
      const family: Item[][] = [Array.from({ length: 30 }, (_, value) => ({ value }))];
      for (const { of, places, keeps, noted } of steps) {
        const from = family[of % family.length]!;
        const list = [...from];
        const sorted = places.sort((a, b) => a - b);
        // A noted place may also hold what it held before.
        for (const place of sorted) if (!keeps || place % 2 === 0) list[place] = { value: place };
        family.push(noted ? copied(list, from, sorted) : list);
      }
      for (const a of family) for (const b of family) expect(changedPlaces(a, b)).toEqual(differing(a, b));
    }),
  );
});

test('a list is no copy of one of another length', () => {
  expect(() => copied([1, 2], [1], [0])).toThrow(RangeError);
});

test('a list does not keep those that it was copied from, not even until the work is done that copies them', () => {
  setFlagsFromString('--expose-gc');
  const gc = runInNewContext('gc') as () => void;
  const heap = (): number => {
    gc();
    return process.memoryUsage().heapUsed / 2 ** 20;
  };
  let list: readonly number[] = Array.from({ length: 100_000 }, (_, i) => i);
  const before = heap();
  // 0.8 MB each.
  for (let step = 0; step < 100; step++) {
    const next = list.slice();
    next[7] = -step;
    list = copied(next, list, [7]);
    expect(changedPlaces(list, next)).toEqual([]);
  }
  expect(heap() - before).toBeLessThan(20);
});
