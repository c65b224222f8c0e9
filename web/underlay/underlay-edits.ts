import type { SiteFile, Underlay } from '../../routing/site/site.ts';
import { fromFeet } from '../../routing/site/units.ts';
import type { Edit } from '../document/edit.ts';
import { setField } from '../document/edits/set.ts';
import { placeInFile, tidy } from '../document/file-lengths.ts';

/** Puts an underlay in, or in place of the one there is; lengths in feet. */
export const placeUnderlay = (file: SiteFile, underlay: Underlay): Edit =>
  setField(file, `Lay ${underlay.file} under the drawing`, 'underlay', inFileUnits(file, underlay));

/** Changes how the underlay lies, under a name such as "Scale underlay"; lengths in feet. */
export function changeUnderlay(file: SiteFile, name: string, now: Underlay, patch: Partial<Underlay>): Edit {
  return setField(file, name, 'underlay', inFileUnits(file, { ...now, ...patch }));
}

export const removeUnderlay = (file: SiteFile): Edit => setField(file, 'Remove underlay', 'underlay', undefined);

/** A scale keeps its figures: to a millionth of a foot a millimetre would be off by a foot in six thousand. */
const figures = (value: number): number => Number(value.toPrecision(12));

function inFileUnits(file: SiteFile, underlay: Underlay): Underlay {
  const { rotation, ...rest } = underlay;
  return {
    ...rest,
    at: placeInFile(file, underlay.at),
    scale: figures(fromFeet(underlay.scale, file.units)),
    ...(rotation === undefined ? {} : { rotation: tidy(rotation) }),
  };
}
