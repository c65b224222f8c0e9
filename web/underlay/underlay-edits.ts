import { tidy } from '../../routing/site/file/tidy.ts';
import { fromFeet } from '../../routing/site/numbers/units.ts';
import type { Georef, Site, SiteFile, Underlay } from '../../routing/site/site.ts';
import { applyEdit, type Edit, joinEdits } from '../document/change/edit.ts';
import { placeInFile } from '../document/change/file-lengths.ts';
import { setField } from '../document/edits/set.ts';
import { underlaysOf } from './underlays.ts';

/**
 * Puts an underlay in over those there are, or in place of one of them, and says where the site lies and
 * what it is called; lengths in feet.
 */
export function placeUnderlay(
  file: SiteFile,
  underlay: Underlay,
  georef: Georef | null,
  inPlaceOf: number | null = null,
  siteName: string | null = null,
): Edit {
  const name = `Lay ${underlay.file} under the drawing`;
  const lies = setField(file, name, 'georef', georef ?? file.georef);
  const now = applyEdit(file, lies);
  const all = [...underlaysOf(now)];
  all.splice(inPlaceOf ?? all.length, inPlaceOf === null ? 0 : 1, inFileUnits(file, underlay));
  const called = setField(now, name, 'name', siteName ?? now.name);
  return joinEdits(name, lies, called, setUnderlays(applyEdit(now, called), name, all));
}

/** Changes how an underlay lies, counted from the lowest, under a name such as "Scale underlay"; lengths in feet. */
export function changeUnderlay(
  file: SiteFile,
  index: number,
  name: string,
  now: Underlay,
  patch: Partial<Underlay>,
): Edit {
  const all = underlaysOf(file).map((each, i) => (i === index ? inFileUnits(file, { ...now, ...patch }) : each));
  return setUnderlays(file, name, all);
}

/**
 * An underlay as it lies by now, where something of its file has been read since it was `was`, counted from the lowest;
 * null where it has gone or another file lies there.
 */
export function underlaysIfSame(
  site: Pick<Site, 'underlay' | 'underlays'>,
  index: number,
  was: Underlay,
): Underlay | null {
  const now = underlaysOf(site)[index];
  return now && now.kind === was.kind && now.file === was.file ? now : null;
}

export const removeUnderlay = (file: SiteFile, index: number): Edit =>
  setUnderlays(
    file,
    'Remove underlay',
    underlaysOf(file).filter((_, i) => i !== index),
  );

/** Lays an underlay over, or under, so many others. */
export function reorderUnderlay(file: SiteFile, from: number, to: number): Edit {
  const all = [...underlaysOf(file)];
  const [moved] = all.splice(from, 1);
  if (moved) all.splice(to, 0, moved);
  return setUnderlays(file, to > from ? 'Raise underlay' : 'Lower underlay', all);
}

/** The lowest stands in the field that every reader of site files knows, the others in a list of their own. */
function setUnderlays(file: SiteFile, name: string, [lowest, ...others]: readonly Underlay[]): Edit {
  const first = setField(file, name, 'underlay', lowest);
  const rest = setField(applyEdit(file, first), name, 'underlays', others.length > 0 ? others : undefined);
  return joinEdits(name, first, rest);
}

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
