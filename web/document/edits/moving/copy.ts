import { addTo } from '../../../../routing/lists/grouping.ts';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { newIds, splitId } from '../../../../routing/site/new-id.ts';
import { gridWays } from '../../../../routing/site/place/grid-frame.ts';
import type { Motion } from '../../../../routing/site/place/motion.ts';
import type { Point2, SiteFile } from '../../../../routing/site/site.ts';
import { applyEdit, type Edit, joinEdits } from '../../change/edit.ts';
import { type Element, elementsOf, type ListName, listOf, type Ref } from '../../change/element-lists.ts';
import { inFile, placeInFile } from '../../change/file-lengths.ts';
import { type Gathered, held, insertSteps } from '../gather.ts';
import { inWords } from '../in-words.ts';
import { mirrored, moved, shift, turn } from './motion.ts';

/**
 * Copies elements to a place off by site feet, each under the next free id of its kind. With a drop come its chargers,
 * with equipment its loads and the feeder into it; copies refer to copies where there are such, else to what the
 * originals refer to, save that a copied charger serves only copied stalls.
 */
export function duplicate(file: SiteFile, refs: readonly Ref[], dxFt: number, dyFt: number): Edit {
  return copied(file, refs, 'Copy', [shift(inFile(file, dxFt), inFile(file, dyFt))]);
}

/** A copy mirrored in the line through a place, site feet, in a direction, degrees. */
export const mirrorCopy = (file: SiteFile, refs: readonly Ref[], throughFt: Point2, degrees: number): Edit =>
  copied(file, refs, 'Mirror a copy of', [mirrored(placeInFile(file, throughFt), degrees)]);

/** A copy turned counter-clockwise about a place, site feet. */
export const rotateCopy = (file: SiteFile, refs: readonly Ref[], aboutFt: Point2, degrees: number): Edit =>
  copied(file, refs, 'Rotate a copy of', [turn(placeInFile(file, aboutFt), degrees)]);

/** One way of an array: so many in all, the original counted, each a step (site feet) from the one before. */
export interface ArrayWay {
  readonly count: number;
  readonly step: Point2;
}

/** Copies elements along a line, or along two for a grid, the originals being the first. */
export function array(file: SiteFile, refs: readonly Ref[], along: ArrayWay, across?: ArrayWay): Edit {
  const motions: Motion[] = [];
  for (let j = 0; j < (across?.count ?? 1); j++) {
    for (let i = 0; i < along.count; i++) {
      if (i === 0 && j === 0) continue;
      const [ax, ay] = across?.step ?? [0, 0];
      motions.push(shift(inFile(file, i * along.step[0] + j * ax), inFile(file, i * along.step[1] + j * ay)));
    }
  }
  return copied(file, refs, 'Array', motions);
}

/** Rows by columns of an array, feet between them. */
export interface ArrayShape {
  readonly columns: number;
  readonly columnsEvery: number;
  readonly rows: number;
  readonly rowsEvery: number;
  /** Which way the columns follow each other, degrees counter-clockwise from +x; the rows do so a quarter turn on. */
  readonly degrees: number;
}

/** Copies elements into rows and columns that are turned as a whole; what is copied is not turned. */
export function arrayTurned(file: SiteFile, refs: readonly Ref[], shape: ArrayShape): Edit {
  const { columns, columnsEvery, rows, rowsEvery, degrees } = shape;
  const [along, across] = gridWays({ rotation: degrees });
  return array(
    file,
    refs,
    { count: columns, step: [columnsEvery * along[0], columnsEvery * along[1]] },
    { count: rows, step: [rowsEvery * across[0], rowsEvery * across[1]] },
  );
}

function copied(file: SiteFile, refs: readonly Ref[], verb: string, motions: readonly Motion[]): Edit {
  const originals = held(file, refs);
  const name = `${verb} ${inWords(originals.map(({ list, element }) => ({ list, id: element.id })))}`;
  const all = held(file, withDependents(file, refs));
  let now = file;
  const edits = motions.map((motion) => {
    const edit = { name, steps: copySteps(now, all, motion) };
    now = applyEdit(now, edit);
    return edit;
  });
  return joinEdits(name, ...edits);
}

/** The refs with those of what is copied along: a drop's chargers, equipment's loads and the feeder into it. */
export function withDependents(file: SiteFile, refs: readonly Ref[]): readonly Ref[] {
  const idsIn = (list: ListName): ReadonlySet<string> =>
    new Set(refs.flatMap((ref) => (ref.list === list ? ref.id : [])));
  const drops = idsIn('drops');
  const equipment = idsIn('equipment');
  const dependents: Ref[] = [];
  for (const { id, drop } of elementsOf(file, 'chargers')) {
    if (drops.has(drop)) dependents.push({ list: 'chargers', id });
  }
  for (const { id, from } of elementsOf(file, 'loads')) {
    if (equipment.has(from)) dependents.push({ list: 'loads', id });
  }
  for (const { id, to } of elementsOf(file, 'feeders')) {
    if (equipment.has(to)) dependents.push({ list: 'feeders', id });
  }
  return [...refs, ...dependents];
}

/** The steps that put copies of elements of this file, moved and under new ids, into it. */
export function copySteps(file: SiteFile, originals: readonly Gathered[], motion: Motion): Edit['steps'] {
  const ids = freshIds(file, originals);
  const labels = freshLabels(file, originals);
  return ELEMENT_LISTS.flatMap((list) => {
    const copies = originals
      .filter((original) => original.list === list)
      .map(({ element }) => relinked(list, moved(list, element, motion), ids, labels));
    return insertSteps(file, list, copies);
  });
}

/** New names for the originals: those they have, where another site has no use for them, else the next free ones. */
function freshIds(file: SiteFile, originals: readonly Gathered[]): ReadonlyMap<string, string> {
  const byPrefix = new Map<string, string[]>();
  for (const { element } of originals) {
    const { prefix } = splitId(element.id);
    addTo(byPrefix, prefix, element.id);
  }
  const ids = new Map<string, string>();
  for (const [prefix, old] of byPrefix) {
    const fresh = old.every((id) => listOf(file, id) === undefined) ? old : newIds(file, prefix, old.length);
    for (const [index, id] of old.entries()) ids.set(id, fresh[index]!);
  }
  return ids;
}

/** Stall labels likewise: going on from the highest in use, in the originals' order; one without a number is kept. */
function freshLabels(file: SiteFile, originals: readonly Gathered[]): ReadonlyMap<string, string> {
  const used = new Set<string>();
  const highest = new Map<string, number>();
  for (const { label } of elementsOf(file, 'stalls')) {
    const { prefix, digits } = splitId(label ?? '');
    if (label !== undefined) used.add(label);
    if (digits !== '') highest.set(prefix, Math.max(highest.get(prefix) ?? 0, Number(digits)));
  }
  const labelled = originals.flatMap(({ element }) =>
    'heading' in element && element.label !== undefined ? [{ id: element.id, label: element.label }] : [],
  );
  if (!labelled.some(({ label }) => used.has(label))) return new Map(labelled.map(({ id, label }) => [id, label]));
  const labels = new Map<string, string>();
  for (const { id, label } of labelled) {
    const { prefix, digits } = splitId(label);
    if (digits === '') continue;
    const next = (highest.get(prefix) ?? 0) + 1;
    highest.set(prefix, next);
    labels.set(id, `${prefix}${String(next).padStart(digits.startsWith('0') ? digits.length : 1, '0')}`);
  }
  return labels;
}

function relinked(
  list: ListName,
  element: Element,
  ids: ReadonlyMap<string, string>,
  labels: ReadonlyMap<string, string>,
): Element {
  const now = (id: string): string => ids.get(id) ?? id;
  const own = { ...element, id: now(element.id) };
  if (list === 'stalls') {
    const label = labels.get(element.id);
    return label === undefined ? own : ({ ...own, label } as Element);
  }
  if (list === 'chargers' && 'drop' in own) {
    return { ...own, drop: now(own.drop), from: now(own.from), stalls: own.stalls.flatMap((id) => ids.get(id) ?? []) };
  }
  if (list === 'feeders' && 'to' in own && 'conductor' in own) return { ...own, from: now(own.from), to: now(own.to) };
  if (list === 'loads' && 'va' in own) return { ...own, from: now(own.from) };
  return own;
}
