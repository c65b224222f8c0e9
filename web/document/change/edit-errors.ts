import { addTo } from '../../../routing/lists/grouping.ts';
import { type Path, placeOf, type SiteError, type TellFault } from '../../../routing/site/file/place.ts';
import { tellReferenceErrors } from '../../../routing/site/file/reference-errors.ts';
import { tellShapeErrors } from '../../../routing/site/file/shape-errors.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from './edit.ts';
import type { Element, ListName } from './element-lists.ts';

/**
 * What would make the file invalid if an edit were done; empty where it stays valid. `after` is the file with the edit
 * in it, the file before it being valid. Only what the edit touches is looked at, and references only where the edit
 * can have broken one.
 */
export function editErrors(after: SiteFile, edit: Edit): readonly SiteError[] {
  const errors: SiteError[] = [];
  const hear =
    (file: SiteFile): TellFault =>
    (path, says) => {
      errors.push({ place: named(file, path), says: says() });
    };
  const touched = touchedPart(after, edit);
  tellShapeErrors(touched, after.units, hear(touched));
  if (edit.steps.some(relinks)) tellReferenceErrors(after, hear(after));
  return errors;
}

/** A file of only what the edit puts in, changes and sets. */
function touchedPart(after: SiteFile, edit: Edit): SiteFile {
  const part: Partial<Record<keyof SiteFile, unknown>> = {
    format: after.format,
    version: after.version,
    units: after.units,
    name: after.name,
  };
  const lists = new Map<ListName, Element[]>();
  for (const step of edit.steps) {
    if (step.kind === 'set' && step.after !== undefined) part[step.field] = step.after;
    if (step.kind === 'marks') part.records = step.added;
    const element = step.kind === 'insert' ? step.element : step.kind === 'change' ? step.after : null;
    if (element === null || step.kind === 'set' || step.kind === 'marks') continue;
    addTo(lists, step.list, element);
  }
  return { ...part, ...Object.fromEntries(lists) } as SiteFile;
}

/** A place by the element's id: `D07.cord`. Its number in the list would say nothing on the board. */
function named(file: SiteFile, path: Path): string {
  const [list, index, ...field] = path;
  const held = file[list as keyof SiteFile];
  const element = Array.isArray(held) && typeof index === 'number' ? (held[index] as Element | undefined) : undefined;
  return element ? placeOf([element.id, ...field]) : placeOf(path);
}

const LINKS = ['id', 'from', 'to', 'drop', 'stalls', 'vehicle'] as const;

function relinks(step: EditStep): boolean {
  if (step.kind === 'marks') return false;
  if (step.kind !== 'change') return true;
  const before = step.before as unknown as Readonly<Record<string, unknown>>;
  const after = step.after as unknown as Readonly<Record<string, unknown>>;
  return LINKS.some((link) => before[link] !== after[link] && typeof (after[link] ?? before[link]) !== 'number');
}
