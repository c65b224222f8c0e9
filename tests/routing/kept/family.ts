import fc from 'fast-check';
import { copied } from '../../../routing/kept/changed-places.ts';

/** An item of a list, told from others by what it is and not by what it says. */
export interface Item {
  readonly key: string;
  readonly value: number;
}

const edit = fc.record({
  /** The list that is edited, of those made so far: the last one in most cases, as in a drag. */
  of: fc.oneof(fc.constant(-1), fc.nat(40)),
  places: fc.uniqueArray(fc.nat(200), { maxLength: 5 }),
  /** Whether who made the copy noted where it differs. */
  noted: fc.boolean(),
  /** Items put in before the end, and how many are left out of the beginning. */
  grows: fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, fc.integer({ min: -3, max: 3 })),
});

const KEYS = ['a', 'b', 'c', 'd'];

/**
 * Lists in the order in which they are asked about: two that are strangers to each other, and copies of either with some
 * items changed, added and left out, each further back asked about again.
 */
export const families: fc.Arbitrary<readonly (readonly Item[])[]> = fc
  .tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), fc.array(edit, { maxLength: 14 }))
  .map(([one, other, edits]) => {
    let value = 0;
    const item = (i: number): Item => ({ key: KEYS[i % KEYS.length]!, value: value++ });
    const lists: (readonly Item[])[] = [one, other].map((length) => Array.from({ length }, (_, i) => item(i)));
    const asked = [...lists];
    for (const { of, places, noted, grows } of edits) {
      const from = of < 0 ? lists.at(-1)! : lists[of % lists.length]!;
      const list = [...from];
      const changed = [...new Set(places.map((place) => place % Math.max(1, list.length)))].sort((a, b) => a - b);
      for (const place of changed) if (place < list.length) list[place] = { key: list[place]!.key, value: value++ };
      if (grows > 0) list.push(...Array.from({ length: grows }, (_, i) => item(i)));
      if (grows < 0) list.splice(0, -grows);
      lists.push(noted && grows === 0 && list.length > 0 ? copied(list, from, changed) : list);
      asked.push(list, from, lists[0]!);
    }
    return asked;
  });
