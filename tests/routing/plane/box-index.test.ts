import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, boxesMeet } from '../../../routing/plane/box.ts';
import { type BoxIndex, boxIndex, finderBy, positionsIn } from '../../../routing/plane/box-index.ts';

const box = fc
  .tuple(fc.nat(50), fc.nat(50), fc.nat(8), fc.nat(8))
  .map(([x, y, w, h]): Box => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));

test('an index finds what a look at every box finds, however many items change from one list to the next', () => {
  fc.assert(
    fc.property(
      fc.array(box, { maxLength: 60 }),
      fc.array(fc.array(fc.tuple(fc.nat(59), box), { maxLength: 50 }), { maxLength: 5 }),
      fc.array(box, { minLength: 1, maxLength: 10 }),
      (first, edits, questions) => {
        let items = first;
        let index: BoxIndex<Box> | undefined;
        for (const edit of [[], ...edits, []]) {
          items = items.slice();
          for (const [at, item] of edit) if (items.length > 0) items[at % items.length] = item;
          index = boxIndex(items, (item) => item, index);
          for (const question of questions) {
            const expected = items.flatMap((item, i) => (boxesMeet(item, question) ? [i] : []));
            expect(positionsIn(index, question)).toEqual(expected);
          }
        }
      },
    ),
  );
});

test('an index is built anew when its list grows or shrinks', () => {
  const at = (x: number): Box => ({ minX: x, minY: 0, maxX: x, maxY: 0 });
  const one = boxIndex([at(1)], (item) => item);
  const two = boxIndex([at(1), at(2)], (item) => item, one);
  const all = { minX: 0, minY: 0, maxX: 9, maxY: 0 };
  expect(positionsIn(two, all)).toEqual([0, 1]);
  expect(
    positionsIn(
      boxIndex<Box>([], (item) => item, two),
      all,
    ),
  ).toEqual([]);
});

test('what lies in a window is found in the order of its list, and each box is measured once for all windows', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 60 }), fc.array(box, { minLength: 1, maxLength: 12 }), (boxes, windows) => {
      const items = boxes.map((one, i) => ({ ...one, i }));
      let measured = 0;
      const find = finderBy((item: Box) => {
        measured++;
        return item;
      });
      for (const window of windows) expect(find(items, window)).toEqual(items.filter((one) => boxesMeet(one, window)));
      expect(measured).toBe(items.length);
    }),
  );
});
