import type { Georef, SiteFile, Underlay } from '../../routing/site/site.ts';
import { fromFeet } from '../../routing/site/units.ts';
import { applyEdit, type Edit, joinEdits } from '../document/edit.ts';
import { setField } from '../document/edits/set.ts';
import { placeInFile, tidy } from '../document/file-lengths.ts';

/** Puts an underlay in, or in place of the one there is, and says where the site lies; lengths in feet. */
export function placeUnderlay(file: SiteFile, underlay: Underlay, georef: Georef | null): Edit {
  const name = `Lay ${underlay.file} under the drawing`;
  const lies = setField(file, name, 'georef', georef ?? file.georef);
  return joinEdits(name, lies, setField(applyEdit(file, lies), name, 'underlay', inFileUnits(file, underlay)));
}

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
