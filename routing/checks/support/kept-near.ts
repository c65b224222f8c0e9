import { changedPlaces } from '../../kept/changed-places.ts';
import { memberBox, type Steel } from '../../network/support/steel-near.ts';
import { type Box, widened } from '../../plane/box.ts';
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
 * moves. Bounds lie in a flat list: going through thousands opens none of them.
 */
export function keptNear<T, Limits extends { readonly reach: number }>(
  boxOf: (element: T) => Box,
  check: (element: T, now: Overhead<Limits>) => readonly Finding[],
) {
  let elements: readonly T[] = [];
  let bounds = new Float64Array(0);
  let findings: (readonly Finding[])[] = [];
  let all: readonly Finding[] = [];
  let then: Overhead<Limits> | null = null;

  const stalePlaces = (list: readonly T[], now: Overhead<Limits>): Set<number> | null => {
    if (!then || list.length !== elements.length || then.limits !== now.limits) return null;
    const moved = movedBoxes(then.steel.items, now.steel.items);
    if (moved === null) return null;
    const stale = new Set(changedPlaces(list, elements));
    if (moved.length === 0) return stale;
    for (let i = 0; i < list.length; i++) if (findings[i]!.length > 0) stale.add(i);
    for (const box of moved) {
      const { minX, minY, maxX, maxY } = widened(box, now.limits.reach + 1);
      for (let i = 0, k = 0; i < list.length; i++, k += 4)
        if (bounds[k]! <= maxX && bounds[k + 1]! <= maxY && bounds[k + 2]! >= minX && bounds[k + 3]! >= minY)
          stale.add(i);
    }
    return stale;
  };

  return (list: readonly T[], now: Overhead<Limits>): readonly Finding[] => {
    const stale = stalePlaces(list, now);
    if (stale === null) {
      bounds = new Float64Array(4 * list.length);
      findings = new Array(list.length).fill(NOTHING);
    }
    // Should a check throw, nothing of this call is taken to stand.
    then = null;
    let differs = stale === null;
    for (const i of stale ?? list.keys()) {
      const said = check(list[i]!, now);
      differs ||= said.length > 0 || findings[i]!.length > 0;
      findings[i] = said;
      const { minX, minY, maxX, maxY } = boxOf(list[i]!);
      bounds.set([minX, minY, maxX, maxY], 4 * i);
    }
    if (differs) all = findings.flat();
    then = now;
    elements = list;
    return all;
  };
}

const NOTHING: readonly Finding[] = [];

/** Where members were and are that differ; null where that is much, or their number changed. */
export function movedBoxes(before: readonly Member[], after: readonly Member[]): readonly Box[] | null {
  if (before === after) return [];
  if (before.length !== after.length) return null;
  const places = changedPlaces(after, before);
  if (places.length > MOST_MOVED) return null;
  return places.flatMap((i) => [memberBox(before[i]!), memberBox(after[i]!)]);
}
