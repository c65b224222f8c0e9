import { ELEMENT_LISTS } from '../../routing/site/kinds/kinds.ts';
import { byId } from '../../routing/site/look-up.ts';
import { newId } from '../../routing/site/new-id.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Equipment, SiteFile } from '../../routing/site/site.ts';
import { flatIn, lengthIn, placeIn } from './in-file.ts';

/** Whether no element of a file has an id. */
export const isFreeId = (file: SiteFile, id: string): boolean =>
  ELEMENT_LISTS.every((list) => !byId<{ readonly id: string }>(file[list] ?? []).has(id));

/** `P1`, `P2`, `T1`: the first number under a prefix that no element has. */
export function equipmentId(file: SiteFile, prefix: string): string {
  for (let n = 1; n < 1000; n++) if (isFreeId(file, `${prefix}${n}`)) return `${prefix}${n}`;
  return newId(file, prefix);
}

/** Equipment as it stands in a file of some units. */
export const equipmentInFile = (
  id: string,
  { at, entry, size, workingSpace, ...rest }: Omit<Equipment, 'id'>,
  units: Units,
): Equipment => ({
  id,
  ...rest,
  at: flatIn(units, at),
  entry: placeIn(units, entry),
  size: placeIn(units, size),
  ...(workingSpace !== undefined && { workingSpace: lengthIn(units, workingSpace) }),
});
