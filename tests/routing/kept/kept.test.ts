import fc from 'fast-check';
import { expect, test } from 'vitest';
import { kept, steadyList } from '../../../routing/kept/kept.ts';
import { families, type Item } from './family.ts';

const sum = (list: readonly Item[], factor: number): { readonly sum: number } => ({
  sum: factor * list.reduce((total, { value }) => total + value, 0),
});

test('what is kept equals what is worked anew, after any edits of two sites that are asked about in turn', () => {
  fc.assert(
    fc.property(families, fc.array(fc.nat(2)), (asked, factors) => {
      const owner = {};
      const ofList = kept(sum);
      const ofOwner = kept((_owner: object, list: readonly Item[], factor: number) => sum(list, factor));
      asked.forEach((list, i) => {
        const factor = factors[i] ?? 0;
        expect(ofList(list, factor)).toEqual(sum(list, factor));
        expect(ofOwner(owner, list, factor)).toEqual(sum(list, factor));
      });
    }),
  );
});

test('while nothing changed the answer is the same object, and so it is of a list with the same items', () => {
  let worked = 0;
  const total = kept((_owner: object, list: readonly Item[], factor: number) => {
    worked++;
    return sum(list, factor);
  });
  const [owner, other] = [{}, {}];
  const [a, b] = [
    { key: 'a', value: 1 },
    { key: 'b', value: 2 },
  ];
  const first = total(owner, [a, b], 10);
  expect(total(owner, [a, b], 10)).toBe(first);
  expect(worked).toBe(1);
  expect(total(owner, [b, a], 10)).not.toBe(first);
  expect(total(owner, [a], 10)).not.toBe(first);
  expect(total(owner, [a, b], 11)).not.toBe(first);
  expect(total(other, [a, b], 10)).not.toBe(first);
  expect(worked).toBe(5);
});

test('two sites asked about in turn do not put each other out, while one of them is dragged about', () => {
  let worked = 0;
  const rules = {};
  const stage = kept((_rules: object, list: readonly Item[]) => {
    worked++;
    return sum(list, 1);
  });
  const [still, begun] = [[{ key: 'a', value: 1 }], [{ key: 'b', value: 2 }]];
  stage(rules, still);
  for (let step = 0; step < 20; step++) {
    stage(rules, [...begun, { key: 'c', value: step }]);
    stage(rules, still);
  }
  expect(worked).toBe(21);
});

test('without arguments it is worked when it is first asked for and never again', () => {
  let worked = 0;
  const answer = kept(() => {
    worked++;
    return undefined;
  });
  expect(worked).toBe(0);
  expect([answer(), answer(), answer()]).toEqual([undefined, undefined, undefined]);
  expect(worked).toBe(1);
});

test('what throws is not kept', () => {
  let fails = true;
  const stage = kept((_: object) => {
    if (fails) throw new RangeError('not now');
    return 'done';
  });
  const key = {};
  expect(() => stage(key)).toThrow(RangeError);
  fails = false;
  expect(stage(key)).toBe('done');
});

test('a list by a key is the one before while its items are the same', () => {
  const steady = steadyList<Item>();
  const [key, item] = [{}, { key: 'a', value: 1 }];
  const first = steady(key, [item]);
  expect(steady(key, [item])).toBe(first);
  expect(steady(key, [item, item])).toEqual([item, item]);
});
