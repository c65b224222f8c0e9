import { expect, test } from 'vitest';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { boardKind, heldBy, MARKED_LISTS } from '../../../web/board/kinds/kinds.ts';
import { BASE_PICTURES } from '../../../web/board/painting/base-pictures.ts';
import { SMALL } from '../document/small-site.ts';

// The browser's Print draws the base pictures on paper, so that what has one is printed.
test('every kind that has marks is drawn on the base, and so printed', () => {
  const names = new Set(BASE_PICTURES.map(({ name }) => name));
  expect(MARKED_LISTS.filter((list) => !names.has(list))).toEqual([]);
});

test('the hand takes every kind that has a place, each before or after every other', () => {
  for (const order of ['rank', 'tour'] as const) {
    const lists = heldBy(order);
    expect(new Set(lists.map((list) => boardKind(list).hold![order])).size).toBe(lists.length);
    expect(MARKED_LISTS.filter((list) => placedKind(list) && !lists.includes(list))).toEqual([]);
  }
});

test('the box of a mark holds every point of its element, so that no search misses it', () => {
  const site = toSite(SMALL);
  for (const list of MARKED_LISTS)
    for (const element of site[list]) {
      const mark = boardKind(list).mark(element, site);
      for (const [x, y] of placedKind(list)?.points(element as never) ?? []) {
        expect(x).toBeGreaterThanOrEqual(mark!.minX);
        expect(x).toBeLessThanOrEqual(mark!.maxX);
        expect(y).toBeGreaterThanOrEqual(mark!.minY);
        expect(y).toBeLessThanOrEqual(mark!.maxY);
      }
    }
});
