import { copied } from '../../../routing/kept/changed-places.ts';
import { markText } from '../../../routing/site/records/merge.ts';
import type { Mark, SiteFile } from '../../../routing/site/site.ts';
import { type Element, elementsOf, type ListName, positionsOf, samePositions } from './element-lists.ts';

/** A top-level field of the site file that an edit may set as a whole. A list is one too: it can be given or taken away. */
export type FileField = Exclude<keyof SiteFile, 'format' | 'version'>;

/**
 * The smallest change of a site file, as data. Everything is in the file's units, and everything needed to take the
 * step back is in the step.
 */
export type EditStep =
  | { readonly kind: 'insert'; readonly list: ListName; readonly index: number; readonly element: Element }
  | { readonly kind: 'remove'; readonly list: ListName; readonly index: number; readonly element: Element }
  | {
      readonly kind: 'change';
      readonly list: ListName;
      readonly id: string;
      readonly before: Element;
      readonly after: Element;
    }
  | {
      readonly kind: 'set';
      readonly field: FileField;
      /** Absent where the file has no such field before (after) the step. */
      readonly before?: SiteFile[FileField];
      readonly after?: SiteFile[FileField];
      /** Where a field that comes or goes stands among the file's fields, so that it comes back to its own place. */
      readonly at?: number;
    }
  /** Marks that come to the end of the file's records, and such as go from it: what was written stays as it was. */
  | { readonly kind: 'marks'; readonly added: readonly Mark[]; readonly taken: readonly Mark[] };

/**
 * What one gesture does to the site: steps in order, under a name such as "Move 12 drops". It is not carried over another
 * edit, nor joined with one: one tab writes a document, and what a gesture previews becomes one edit when it ends.
 */
export interface Edit {
  readonly name: string;
  readonly steps: readonly EditStep[];
}

interface Draft {
  readonly was: readonly Element[];
  readonly now: Element[];
  /** Places of the elements that were changed. */
  readonly changed: Set<number>;
  /** An element came or went, so that places in `was` no longer hold. */
  moved: boolean;
  renamed: boolean;
}
type Drafts = Map<ListName, Draft>;

/**
 * The file after an edit. What the edit does not touch is shared with the file before it.
 * Throws RangeError where a step does not fit the file: an index or id that is not there, a list the file lacks.
 */
export function applyEdit(file: SiteFile, edit: Edit): SiteFile {
  let fields = file;
  const lists: Drafts = new Map();
  for (const step of edit.steps) {
    if (step.kind === 'set') {
      fields = setField(merged(fields, lists), step);
      lists.clear();
    } else if (step.kind === 'marks') fields = withMarks(fields, step);
    else applyToList(fields, lists, step);
  }
  return merged(fields, lists);
}

/** The edit that takes an edit back, under the same name. */
export function invertEdit(edit: Edit): Edit {
  return { name: edit.name, steps: edit.steps.map(invertStep).reverse() };
}

/** Whether an edit leaves every file as it is. */
export const isIdle = (edit: Edit): boolean => edit.steps.length === 0;

/** Two edits made one after the other, as one under a name of its own. */
export const joinEdits = (name: string, ...edits: readonly Edit[]): Edit => ({
  name,
  steps: edits.flatMap((edit) => edit.steps),
});

function invertStep(step: EditStep): EditStep {
  switch (step.kind) {
    case 'insert':
      return { ...step, kind: 'remove' };
    case 'remove':
      return { ...step, kind: 'insert' };
    case 'change':
      return { ...step, id: step.after.id, before: step.after, after: step.before };
    case 'marks':
      return { ...step, added: step.taken, taken: step.added };
    case 'set': {
      const { before, after, ...rest } = step;
      return { ...rest, ...(after !== undefined && { before: after }), ...(before !== undefined && { after: before }) };
    }
  }
}

function applyToList(file: SiteFile, lists: Drafts, step: Exclude<EditStep, { kind: 'set' | 'marks' }>): void {
  let list = lists.get(step.list);
  if (!list) {
    if (file[step.list] === undefined) throw new RangeError(`the file has no ${step.list}`);
    const was = elementsOf(file, step.list);
    list = { was, now: [...was], changed: new Set(), moved: false, renamed: false };
    lists.set(step.list, list);
  }
  const { now } = list;
  if (step.kind === 'change') {
    const index = placeIn(list, step.id);
    if (index < 0) throw new RangeError(`${step.list} holds no ${step.id}`);
    now[index] = step.after;
    list.changed.add(index);
    if (step.after.id !== step.id) list.renamed = true;
  } else if (step.kind === 'insert') {
    if (!(step.index >= 0 && step.index <= now.length))
      throw new RangeError(`${step.list}[${step.index}] is past the end`);
    if (step.index === now.length) now.push(step.element);
    else now.splice(step.index, 0, step.element);
    list.moved = true;
  } else {
    if (now[step.index]?.id !== step.element.id) {
      throw new RangeError(`${step.list}[${step.index}] is not ${step.element.id}`);
    }
    if (step.index === now.length - 1) now.pop();
    else now.splice(step.index, 1);
    list.moved = true;
  }
}

function placeIn({ was, now, moved }: Draft, id: string): number {
  const place = moved ? undefined : positionsOf(was).get(id);
  if (place !== undefined && now[place]?.id === id) return place;
  return now.findIndex((element) => element.id === id);
}

function merged(file: SiteFile, lists: Drafts): SiteFile {
  if (lists.size === 0) return file;
  const changed: Partial<Record<ListName, readonly Element[]>> = {};
  for (const [name, list] of lists) {
    if (!list.moved && !list.renamed) samePositions(list.now, list.was);
    if (!list.moved)
      copied(
        list.now,
        list.was,
        [...list.changed].sort((a, b) => a - b),
      );
    changed[name] = list.now;
  }
  return { ...file, ...changed } as SiteFile;
}

function withMarks(file: SiteFile, { added, taken }: Extract<EditStep, { kind: 'marks' }>): SiteFile {
  if (file.records === undefined) throw new RangeError('the file has no records');
  const gone = new Set(taken.map(markText));
  const left = taken.length > 0 ? file.records.filter((mark) => !gone.has(markText(mark))) : file.records;
  if (left.length !== file.records.length - taken.length) throw new RangeError('the records hold no such mark');
  return { ...file, records: [...left, ...added] };
}

function setField(file: SiteFile, step: Extract<EditStep, { kind: 'set' }>): SiteFile {
  const { field, after, at } = step;
  if (after !== undefined && file[field] !== undefined) return { ...file, [field]: after } as SiteFile;
  const entries = Object.entries(file).filter(([name]) => name !== field);
  if (after !== undefined) entries.splice(at ?? entries.length, 0, [field, after]);
  return Object.fromEntries(entries) as unknown as SiteFile;
}
