import { changedPlaces } from '../../kept/changed-places.ts';
import { memberBox, type Steel } from '../../network/support/steel-near.ts';
import { type Box, widened } from '../../plane/box.ts';
import { flattened, keptNearby } from '../../plane/kept-nearby.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Member } from '../../site/site.ts';

/** More members than this moved at once, and everything is looked at again. */
const MOST_MOVED = 64;

/** What the elements of a list are looked at against. `limits` is one object while it is the same. */
export interface Overhead<Limits> {
  readonly steel: Steel;
  readonly limits: Limits;
}

/**
 * The findings of all elements of a list that hang from members, kept for as long as neither the element nor a member
 * near it moves. What has a finding also tells how far the nearest member is, so it is looked at again whenever a member
 * moves.
 */
export function keptNear<T, Limits extends { readonly reach: number }>(
  boxOf: (element: T) => Box,
  check: (element: T, now: Overhead<Limits>) => readonly Finding[],
): (list: readonly T[], now: Overhead<Limits>) => readonly Finding[] {
  const each = keptNearby({
    work: ([element]: readonly [T], [steel, limits]: readonly [Steel, Limits]) => check(element, { steel, limits }),
    near: (_, element) => boxOf(element),
    stale: ([steel, limits], [steelBefore, limitsBefore], found) => {
      const moved = limits === limitsBefore ? movedBoxes(steelBefore.items, steel.items) : null;
      if (moved === null || moved.length === 0) return moved && { boxes: moved, places: [] };
      return {
        boxes: moved.map((box) => widened(box, limits.reach + 1)),
        places: found.flatMap((said, i) => (said.length > 0 ? i : [])),
      };
    },
  });
  return (list, { steel, limits }) => flattened(each([list], [steel, limits]));
}

/** Where members were and are that differ; null where that is much, or their number changed. */
export function movedBoxes(before: readonly Member[], after: readonly Member[]): readonly Box[] | null {
  if (before === after) return [];
  if (before.length !== after.length) return null;
  const places = changedPlaces(after, before);
  if (places.length > MOST_MOVED) return null;
  return places.flatMap((i) => [memberBox(before[i]!), memberBox(after[i]!)]);
}
