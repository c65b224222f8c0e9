import { placeOf } from '../../routing/site/file/place.ts';
import { tellShapeErrors } from '../../routing/site/file/shape-errors.ts';
import { ELEMENT_LISTS } from '../../routing/site/kinds/kinds.ts';
import type { Point2, SiteFile } from '../../routing/site/site.ts';
import { BUILT_IN_VEHICLES } from '../../routing/site/vehicles.ts';
import type { Edit } from './change/edit.ts';
import { elementsOf, type ListName, positionsOf, type Ref } from './change/element-lists.ts';
import { elementFrom, fieldFrom, inFile, placeInFile } from './change/file-lengths.ts';
import { setStep } from './change/set-field.ts';
import { type Gathered, held } from './edits/gather.ts';
import { inWords } from './edits/in-words.ts';
import { centreOf } from './edits/moving/centre.ts';
import { copySteps, withDependents } from './edits/moving/copy.ts';
import { shift } from './edits/moving/motion.ts';

const FORMAT = 'overrow/elements';
const VERSION = 1;
const MAX_CHARACTERS = 20_000_000;

/** Elements out of a site, with the vehicle classes that they name. References may lead out of them. */
export type Clip = Pick<SiteFile, ListName | 'units' | 'vehicles'>;

export type ClipRead = { readonly ok: true; readonly clip: Clip } | { readonly ok: false; readonly says: string };

/** What refs hold, and what is copied along with it, as text for the clipboard. */
export function writeClip(file: SiteFile, refs: readonly Ref[]): string {
  const elements = held(file, withDependents(file, refs));
  const lists = ELEMENT_LISTS.map((list) => [list, elements.filter((one) => one.list === list)] as const)
    .filter(([, ones]) => ones.length > 0)
    .map(([list, ones]) => [list, ones.map(({ element }) => element)] as const);
  const named = new Set(elements.flatMap(({ element }) => ('vehicle' in element ? (element.vehicle ?? []) : [])));
  const vehicles = Object.entries(file.vehicles ?? {}).filter(([name]) => named.has(name));
  return JSON.stringify({
    format: FORMAT,
    version: VERSION,
    units: file.units,
    ...(vehicles.length > 0 && { vehicles: Object.fromEntries(vehicles) }),
    ...Object.fromEntries(lists),
  });
}

/** The elements in a text; null where the text is something else altogether, such as a sentence. */
export function readClip(text: string): ClipRead | null {
  if (text.length > MAX_CHARACTERS || !text.includes(FORMAT)) return null;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null) return null;
  const { format, version, ...clip } = value as Readonly<Record<string, unknown>>;
  if (format !== FORMAT) return null;
  if (version !== VERSION) return { ok: false, says: 'These elements were copied from another version of the page.' };
  const units = clip.units === 'm' ? 'm' : 'ft';
  let says: string | null = null;
  tellShapeErrors({ format: 'overrow/site', version: 1, name: '', ...clip }, units, (path, why) => {
    says ??= `The copied elements are not sound. ${placeOf(path)}: ${why()}.`;
  });
  return says === null ? { ok: true, clip: clip as unknown as Clip } : { ok: false, says };
}

/**
 * Puts copied elements into a file, their middle at a place (site feet), or, given none, a little off where they were.
 * References to elements that were not copied lead to those of the same id here; what cannot stand without one that is
 * not here is left out, and the edit's name says so.
 */
export function paste(file: SiteFile, clip: Clip, atFt?: Point2): Edit {
  const all = ELEMENT_LISTS.flatMap((list): readonly Gathered[] =>
    elementsOf(clip as SiteFile, list).map((element) => ({
      list,
      element: elementFrom(clip.units, file, list, element),
    })),
  );
  const vehicles = newVehicles(file, clip);
  const standing = withFooting(file, all, new Set([...vehicleNames(file), ...Object.keys(vehicles)]));
  const [dx, dy] = offset(file, standing, atFt);
  const left = all.length - standing.length;
  const what = inWords(standing.map(({ list, element }) => ({ list, id: element.id })));
  return {
    name: `Paste ${what}${left > 0 ? `, ${left} left out` : ''}`,
    steps: [
      ...(Object.keys(vehicles).length > 0 ? [setStep(file, 'vehicles', { ...file.vehicles, ...vehicles })] : []),
      ...copySteps(file, standing, shift(dx, dy)),
    ],
  };
}

/** So far off its original a copy lands that is given no place, in feet. */
const NUDGE_FT = 3;

function offset(file: SiteFile, elements: readonly Gathered[], atFt: Point2 | undefined): Point2 {
  const centre = centreOf(elements);
  if (!atFt || !centre) return [inFile(file, NUDGE_FT), inFile(file, -NUDGE_FT)];
  const at = placeInFile(file, atFt);
  return [at[0] - centre[0], at[1] - centre[1]];
}

const vehicleNames = (file: SiteFile): readonly string[] => [
  ...BUILT_IN_VEHICLES.keys(),
  ...Object.keys(file.vehicles ?? {}),
];

/** The clip's own vehicle classes that the file does not know. */
function newVehicles(file: SiteFile, clip: Clip): NonNullable<SiteFile['vehicles']> {
  const known = new Set(vehicleNames(file));
  const fresh = Object.entries(clip.vehicles ?? {}).filter(([name]) => !known.has(name));
  return fieldFrom(clip.units, file, 'vehicles', Object.fromEntries(fresh));
}

/** The elements that find here, or among themselves, what they cannot stand without. */
function withFooting(
  file: SiteFile,
  elements: readonly Gathered[],
  vehicles: ReadonlySet<string>,
): readonly Gathered[] {
  const has = (list: ListName): ((id: string) => boolean) => {
    const here = positionsOf(elementsOf(file, list));
    const copied = new Set(elements.flatMap((one) => (one.list === list ? one.element.id : [])));
    return (id) => here.has(id) || copied.has(id);
  };
  const isEquipment = has('equipment');
  const isDrop = has('drops');
  return elements.flatMap(({ list, element }): readonly Gathered[] => {
    if ('drop' in element && !isDrop(element.drop)) return [];
    if (('drop' in element || 'va' in element) && !isEquipment(element.from)) return [];
    if ('conductor' in element && !(isEquipment(element.from) && isEquipment(element.to))) return [];
    if ('heading' in element && element.vehicle !== undefined && !vehicles.has(element.vehicle)) {
      const { vehicle: _, ...stall } = element;
      return [{ list, element: stall }];
    }
    return [{ list, element }];
  });
}
