import { kept } from '../kept/kept.ts';
import type { Box } from '../plane/box.ts';
import type { Site } from '../site/site.ts';
import { changesBetween, type Field, fieldOf } from './field.ts';
import { type Shared, sharedOf } from './shared.ts';

/** A site made ready for its reach to be worked, and for what was worked before to be held against it. */
export interface Now {
  readonly site: Site;
  readonly field: Field;
  readonly shared: Shared;
  /** Where the field differs from an earlier one; null where that is everywhere. */
  readonly changesSince: (before: Field) => readonly Box[] | null;
}

/** Remembered for a site, for its reach and its checks ask for it in turn. */
export const nowOf = kept((site: Site): Now => {
  const field = fieldOf(site);
  const known = new Map<Field, readonly Box[] | null>([[field, []]]);
  const changesSince = (before: Field): readonly Box[] | null => {
    let changes = known.get(before);
    if (changes === undefined) {
      changes = changesBetween(before, field);
      known.set(before, changes);
    }
    return changes;
  };
  return { site, field, shared: sharedOf(site), changesSince };
});
