import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeMarks, missingFrom } from '../../../../routing/site/records/merge.ts';
import { type Author, newMarks, type Saying } from '../../../../routing/site/records/new-mark.ts';
import { addressOf, conflictsOf, registersOf } from '../../../../routing/site/records/registers.ts';
import type { Mark } from '../../../../routing/site/site.ts';

const AUTHORS = ['JB', 'RL', 'TK'] as const;

type Act =
  | { readonly who: number; readonly kind: 'write'; readonly saying: Saying }
  | { readonly who: number; readonly kind: 'hear'; readonly from: number };

const eighths = fc.integer({ min: -40, max: 40 }).map((n) => n / 8);
const saying: fc.Arbitrary<Saying> = fc.oneof(
  fc.record({ of: fc.constantFrom('D1', 'D2'), what: fc.constantFrom('set' as const, 'tested' as const) }),
  fc.record({
    of: fc.constantFrom('D1', 'D2'),
    part: fc.constantFrom('box', 'retractor'),
    what: fc.constant('place' as const),
    place: fc.tuple(eighths, eighths, fc.constant(11)),
  }),
  fc.record({ of: fc.constant('D1'), what: fc.constant('note' as const), text: fc.constantFrom('beam', 'no lift') }),
  fc.record({ of: fc.constant('D1'), what: fc.constant('note' as const), gone: fc.constant(true as const) }),
);
const who = fc.nat(2);
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ who, kind: fc.constant('write' as const), saying }) },
  { weight: 1, arbitrary: fc.record({ who, kind: fc.constant('hear' as const), from: who }) },
);

/** What three people hold after they wrote, and now and then took in what another held; two of them by one name. */
function held(acts: readonly Act[]): readonly (readonly Mark[])[] {
  const lists: (readonly Mark[])[] = [[], [], []];
  let ids = 0;
  for (const each of acts) {
    const mine = lists[each.who]!;
    const author: Author = { by: AUTHORS[each.who]!, on: '2026-05-31' };
    lists[each.who] =
      each.kind === 'hear'
        ? mergeMarks(mine, lists[each.from]!)
        : [...mine, ...newMarks(mine, [each.saying], author, () => `m${++ids}`)];
  }
  return lists;
}

const three = fc.array(act, { maxLength: 40 }).map(held);

describe('records of three people', () => {
  test('merge alike in whatever order, grouping and number of times, and what they say is then the same', () => {
    fc.assert(
      fc.property(three, ([a, b, c]) => {
        const all = mergeMarks(mergeMarks(a!, b!), c!);
        expect(mergeMarks(a!, mergeMarks(b!, c!))).toEqual(all);
        expect(mergeMarks(mergeMarks(c!, a!), b!)).toEqual(all);
        expect(mergeMarks(all, all)).toEqual(all);
        expect(mergeMarks(all, b!)).toEqual(all);
        expect(registersOf([...all].reverse())).toEqual(registersOf(all));
      }),
      { numRuns: 300 },
    );
  });

  test('lose nothing: each mark is there to the letter, and what stands last of each thing is its latest that nobody replaced', () => {
    fc.assert(
      fc.property(three, (lists) => {
        const all = lists.reduce(mergeMarks);
        for (const list of lists) expect(missingFrom(list, all)).toEqual([]);
        const replaced = new Set(all.flatMap(({ after = [] }) => after));
        for (const { heads, of, what, part, conflict } of registersOf(all).values()) {
          const own = all.filter((mark) => addressOf(mark) === addressOf({ of, what, ...(part && { part }) }));
          expect(new Set(heads.map(({ id }) => id))).toEqual(
            new Set(own.filter(({ id }) => !replaced.has(id)).map(({ id }) => id)),
          );
          const says = new Set(heads.map(({ place, text, gone }) => JSON.stringify([place, text, gone])));
          expect(conflict).toBe(says.size > 1);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('who writes with everything known leaves nothing to decide', () => {
    fc.assert(
      fc.property(three, saying, (lists, last) => {
        const all = lists.reduce(mergeMarks);
        const after = [...all, ...newMarks(all, [last], { by: 'JB' }, () => 'last')];
        const register = registersOf(after).get(addressOf(last))!;
        expect(register.heads.map(({ id }) => id)).toEqual(['last']);
        expect(conflictsOf(after).map(addressOf)).not.toContain(addressOf(last));
      }),
      { numRuns: 200 },
    );
  });
});

test('two who measure one box apart are told of, the later holds till then, and both are still there', () => {
  const first = newMarks([], [{ of: 'D1', part: 'box', what: 'place', place: [1, 2, 11] }], { by: 'JB' }, () => 'a');
  const other = newMarks([], [{ of: 'D1', part: 'box', what: 'place', place: [1.5, 2, 11] }], { by: 'RL' }, () => 'b');
  const both = mergeMarks(first, other);
  const [conflict] = conflictsOf(both);
  expect(conflict?.heads.map(({ by, place }) => [by, place?.[0]])).toEqual([
    ['RL', 1.5],
    ['JB', 1],
  ]);
  // The same figure twice is no conflict.
  const alike = newMarks([], [{ of: 'D1', part: 'box', what: 'place', place: [1, 2, 11] }], { by: 'RL' }, () => 'c');
  expect(conflictsOf(mergeMarks(first, alike))).toEqual([]);
});

test('marks of one name that say different things, out of two devices or a file that was meddled with, are both kept', () => {
  const mark: Mark = { id: 'x', of: 'D1', what: 'note', text: 'one', by: 'JB', time: 1 };
  const merged = mergeMarks([mark], [{ ...mark, text: 'two' }]);
  expect(merged).toHaveLength(2);
  expect(conflictsOf(merged)).toHaveLength(1);
  const circle: Mark[] = [
    { ...mark, id: 'p', after: ['q'] },
    { ...mark, id: 'q', text: 'other', after: ['p'] },
  ];
  expect(registersOf(circle).get(addressOf(mark))?.heads).toHaveLength(2);
});
