import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlacedKind, samePart } from '../../../routing/site/kinds/kind.ts';
import { KINDS, PLACED_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { noteLines } from '../../../routing/site/kinds/notes.ts';
import { mirrored, shift, turn } from '../../../web/document/edits/moving/motion.ts';
import { SMALL } from '../../web/document/small-site.ts';

type Any = { readonly id: string };
type Places = readonly (readonly number[])[];

const kinds = PLACED_LISTS.map((list) => {
  const kind = KINDS[list] as unknown as Pick<PlacedKind<never>, 'points' | 'moved' | 'parts' | 'anchor'>;
  const elements = (SMALL[list] ?? []) as readonly Any[];
  return [list, kind, elements] as const;
});

/** How far a point of one lies from the nearest of the other, at most. */
const farthest = (a: Places, b: Places): number =>
  Math.max(...a.map(([x, y]) => Math.min(...b.map(([u, v]) => Math.hypot(x! - u!, y! - v!)))));

const coordinate = fc.integer({ min: -400, max: 400 }).map((n) => n / 4);
const motion = fc.oneof(
  fc.tuple(coordinate, coordinate).map(([dx, dy]) => shift(dx, dy)),
  fc.tuple(coordinate, coordinate, fc.integer({ min: 0, max: 359 })).map(([x, y, degrees]) => turn([x, y], degrees)),
  fc
    .tuple(coordinate, coordinate, fc.integer({ min: 0, max: 359 }))
    .map(([x, y, degrees]) => mirrored([x, y], degrees)),
);

describe.each(kinds)('%s', (_, kind, elements) => {
  test('have an example in the small site', () => {
    expect(elements.length).toBeGreaterThan(0);
  });

  // What is drawn goes with what it is drawn about: a line that kept to its side would come to lie on the other.
  test('are moved, turned and mirrored with all their points, in any order of these', () => {
    fc.assert(
      fc.property(fc.constantFrom(...elements), motion, (element, by) => {
        const there = kind.points(element as never).map(by.point);
        const after = kind.points(kind.moved(element as never, by));
        expect(after.length).toBe(there.length);
        // Places in a file are kept to a millionth, directions too.
        expect(Math.max(farthest(after, there), farthest(there, after))).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  test('follow each of their handles', () => {
    for (const element of elements)
      for (const { part, at } of kind.parts?.of(element as never) ?? []) {
        const after = kind.parts!.moved(element as never, part, ([x, y, z]) => [x + 2, y + 2, z]);
        const now = kind.parts!.of(after).find((one) => samePart(one.part, part))!;
        // The line of a dimension goes to and fro alone.
        if (part.kind === 'line') expect(now.at).not.toEqual(at);
        else expect(now.at.slice(0, 2)).toEqual([at[0] + 2, at[1] + 2]);
      }
  });
});

test('a note has lines where its text has, and where it would be long', () => {
  expect(noteLines('one\ntwo\r\nthree')).toEqual(['one', 'two', 'three']);
  const lines = noteLines('as far as the eye of who stands at the panel can see down the lane');
  expect(lines.join(' ')).toBe('as far as the eye of who stands at the panel can see down the lane');
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(36);
});
