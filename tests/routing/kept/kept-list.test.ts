import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changedPlaces, copied } from '../../../routing/kept/changed-places.ts';
import { keptEach, keptLists } from '../../../routing/kept/kept-list.ts';
import { families, type Item } from './family.ts';

const parity = (list: readonly Item[]): readonly Item[] => list.map(({ key, value }) => ({ key, value: value % 2 }));

describe('an answer for each place of lists', () => {
  test('equals what is worked anew, after any edits of two sites that are asked about in turn', () => {
    fc.assert(
      fc.property(families, fc.array(fc.nat(2)), (asked, factors) => {
        const work = ([a, b]: readonly [Item, number], [factor]: readonly [number]): string => {
          return `${a.key} ${factor * a.value + b}`;
        };
        const each = keptEach((items: readonly [Item, number], shared: readonly [number]) => work(items, shared));
        asked.forEach((list, i) => {
          const shared = [factors[i] ?? 0] as const;
          const numbers = parity(list).map(({ value }) => value);
          const anew = list.map((item, place) => work([item, numbers[place]!], shared));
          expect(each([list, numbers], shared)).toEqual(anew);
        });
      }),
    );
  });

  test('works again just the places where something changed, and hands back the list where nothing comes of it', () => {
    const worked: number[] = [];
    const each = keptEach(([a, b]: readonly [Item, object], [shared]: readonly [string]) => {
      worked.push('abc'.indexOf(a.key));
      return `${a.key} ${shared} ${b === NOTHING}`;
    });
    const NOTHING = {};
    const list = ['a', 'b', 'c'].map((key, value) => ({ key, value }));
    const others = [NOTHING, NOTHING, NOTHING];
    const first = each([list, others], ['x']);
    expect(each([[...list], [...others]], ['x'])).toBe(first);
    expect(worked).toEqual([0, 1, 2]);
    const moved = copied([list[0]!, { key: 'b', value: 9 }, list[2]!], list, [1]);
    expect(each([moved, others], ['x'])).toBe(first);
    expect(worked).toEqual([0, 1, 2, 1]);
    const second = each([moved, [NOTHING, {}, {}]], ['x']);
    expect(second).toEqual(['a x true', 'b x false', 'c x false']);
    expect(worked).toEqual([0, 1, 2, 1, 1, 2]);
    expect(changedPlaces(second, first)).toEqual([1, 2]);
    expect(first).toEqual(['a x true', 'b x true', 'c x true']);
    each([moved, others], ['y']);
    expect(worked).toEqual([0, 1, 2, 1, 1, 2, 0, 1, 2]);
  });

  test('what stood side by side before is not worked again where the lists grow and shrink', () => {
    const worked: string[] = [];
    const each = keptEach(([{ key }, other]: readonly [Item, string]) => {
      worked.push(key + other);
      return key + other;
    });
    const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((key, value): Item => ({ key, value }));
    each(
      [
        [a!, b!, c!],
        ['1', '2', '3'],
      ],
      [],
    );
    worked.length = 0;
    expect(
      each(
        [
          [d!, a!, c!],
          ['1', '1', '9'],
        ],
        [],
      ),
    ).toEqual(['d1', 'a1', 'c9']);
    expect(
      each(
        [
          [d!, a!, c!, b!],
          ['1', '1', '9', '2'],
        ],
        [],
      ),
    ).toEqual(['d1', 'a1', 'c9', 'b2']);
    expect(each([[a!], ['1']], [])).toEqual(['a1']);
    expect(worked).toEqual(['d1', 'c9', 'b2']);
  });

  test('two sites asked about in turn do not put each other out, while one of them is dragged about', () => {
    let worked = 0;
    const each = keptEach(([{ value }]: readonly [Item]) => {
      worked++;
      return value;
    });
    const still = Array.from({ length: 500 }, (_, value) => ({ key: 'a', value }));
    let dragged = Array.from({ length: 500 }, (_, value) => ({ key: 'b', value }));
    each([still], []);
    each([dragged], []);
    for (let step = 0; step < 20; step++) {
      dragged = dragged.with(7, { key: 'b', value: step });
      each([dragged], []);
      each([still], []);
    }
    expect(worked).toBe(1020);
  });
});

describe('an answer about a list brought up from one at hand', () => {
  const counting = (besides: () => void) =>
    keptLists({
      anew: ([list]: readonly [readonly Item[]], _: readonly [number]): number => {
        besides();
        return list.filter(({ value }) => value % 3 === 0).length;
      },
      after: ({ answer, lists: [before] }, places, [list]) =>
        places.reduce(
          (count, i) => count + Number(list[i]!.value % 3 === 0) - Number(before[i]!.value % 3 === 0),
          answer,
        ),
    });

  test('equals what is worked anew, after any edits of two sites that are asked about in turn', () => {
    fc.assert(
      fc.property(families, (asked) => {
        const count = counting(() => {});
        for (const list of asked) expect(count([list], [1])).toBe(list.filter(({ value }) => value % 3 === 0).length);
      }),
    );
  });

  test('what is shared and changes makes all stale, or the places that are told', () => {
    const worked: number[] = [];
    const marked = keptLists({
      anew: ([list]: readonly [readonly Item[]], [least]: readonly [number]): readonly boolean[] =>
        list.map(({ value }) => value >= least),
      after: ({ answer }, places, [list], [least]) => {
        worked.push(...places);
        return answer.map((one, i) => (places.includes(i) ? list[i]!.value >= least : one));
      },
      also: ([least], { lists: [list], shared: [before] }) =>
        before === least
          ? []
          : list.flatMap(({ value }, i) =>
              value >= Math.min(least, before) && value < Math.max(least, before) ? i : [],
            ),
    });
    const list = Array.from({ length: 9 }, (_, value) => ({ key: 'a', value }));
    for (const least of [4, 6, 1]) expect(marked([list], [least])).toEqual(list.map(({ value }) => value >= least));
    expect(worked).toEqual([4, 5, 1, 2, 3, 4, 5]);
  });

  test('what throws is not kept', () => {
    let fails = true;
    const each = keptEach(([{ value }]: readonly [Item]) => {
      if (fails) throw new RangeError('not now');
      return value;
    });
    const list = [{ key: 'a', value: 1 }];
    expect(() => each([list], [])).toThrow(RangeError);
    fails = false;
    expect(each([list], [])).toEqual([1]);
  });
});
