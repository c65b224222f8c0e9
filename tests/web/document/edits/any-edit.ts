import fc from 'fast-check';
import type { Part } from '../../../../routing/site/kinds/kind.ts';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import { MOUNTS } from '../../../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import type { Edit } from '../../../../web/document/change/edit.ts';
import { elementsOf, type Ref } from '../../../../web/document/change/element-lists.ts';
import { paste, readClip, writeClip } from '../../../../web/document/clipboard.ts';
import { addElements } from '../../../../web/document/edits/add.ts';
import { changeElements } from '../../../../web/document/edits/change.ts';
import { mountDrops } from '../../../../web/document/edits/charging/mount-drops.ts';
import { deleteElements } from '../../../../web/document/edits/delete.ts';
import { array, arrayTurned, duplicate, mirrorCopy, rotateCopy } from '../../../../web/document/edits/moving/copy.ts';
import { mirror, moveElements, rotate } from '../../../../web/document/edits/moving/move.ts';
import { mergeRecords, recordAsBuilt, recordMarks } from '../../../../web/document/edits/records/records.ts';
import { relabel, rename, renumber } from '../../../../web/document/edits/rename.ts';
import { changeRules, nameSite, setGridlines } from '../../../../web/document/edits/set.ts';
import { setShared } from '../../../../web/document/edits/set-shared.ts';
import { testPen } from '../test-pen.ts';

/** One gesture of a hand that does not look: numbers that a file at hand turns into an edit. */
export interface Gesture {
  readonly kind: keyof typeof GESTURES;
  readonly picks: readonly number[];
  readonly x: number;
  readonly y: number;
  readonly n: number;
}

const feet = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 16);

const GESTURES = {
  move: (file, refs, { x, y }) => moveElements(file, refs, x, y),
  handle: (file, refs, { x, y }) =>
    moveElements(
      file,
      refs.flatMap((ref) => partsOf(file, ref)),
      x,
      y,
      x / 100,
    ),
  rotate: (file, refs, { x, y, n }) => rotate(file, refs, [x, y], n * 15),
  mirror: (file, refs, { x, y, n }) => mirror(file, refs, [x, y], n * 15),
  delete: (file, refs) => deleteElements(file, refs),
  trim: (file, refs) =>
    deleteElements(
      file,
      refs.flatMap((ref) => partsOf(file, ref).slice(0, 1)),
    ),
  duplicate: (file, refs, { x, y }) => duplicate(file, refs, x, y),
  array: (file, refs, { x, n }) =>
    array(file, refs.slice(0, 2), { count: n % 4, step: [x, 0] }, { count: 2, step: [0, 50] }),
  arrayTurned: (file, refs, { x, n }) =>
    arrayTurned(file, refs.slice(0, 2), { columns: n % 3, columnsEvery: x, rows: 2, rowsEvery: 50, degrees: 7 * n }),
  copyMirrored: (file, refs, { x, n }) => mirrorCopy(file, refs, [x, 0], n),
  copyTurned: (file, refs, { x, n }) => rotateCopy(file, refs, [x, 0], n),
  paste: (file, refs, { x, y }) => {
    const clip = readClip(writeClip(file, refs));
    return clip?.ok ? paste(file, clip.clip, [x, y]) : null;
  },
  cord: (file, refs, { n }) =>
    changeElements(
      file,
      refs.filter(({ list }) => list === 'drops'),
      { cord: n + 1, retractor: n % 3 === 0 ? undefined : [0, 0, n] },
    ),
  use: (file, refs, { n }) =>
    changeElements(
      file,
      refs.filter(({ list }) => list === 'stalls'),
      { use: n % 2 ? 'accessible' : undefined },
    ),
  shared: (file, refs, { n }) =>
    setShared(
      file,
      'drops',
      refs.filter(({ list }) => list === 'drops').map(({ id }) => id),
      { label: 'elevation', paths: [[n % 2 ? 'box' : 'retractor', 2]] },
      n,
    ),
  mount: (file, refs, { n }) =>
    mountDrops(
      file,
      toSite(file),
      refs.filter(({ list }) => list === 'drops').map(({ id }) => id),
      MOUNTS[n % 3]!,
    ).edit,
  column: (file, _, { x, y }) => addElements(file, 'columns', [{ id: newId(file, 'C'), at: [x, y], size: [1, 2] }]),
  drop: (file, _, { x, y }) => addElements(file, 'drops', [{ id: newId(file, 'D'), box: [x, y, 12], cord: 25 }]),
  rename: (file, refs, { n }) => {
    const named = rename(file, refs[0]?.id ?? '', `Z${n}`);
    return named.ok ? named.edit : null;
  },
  renumber: (file, refs, { n }) => {
    const numbered = renumber(file, refs, { prefix: 'N', first: n, step: 1 + (n % 3), width: 2 });
    return numbered.ok ? numbered.edit : null;
  },
  relabel: (file, refs, { n }) => {
    const stalls = refs.flatMap(({ list, id }) => (list === 'stalls' ? id : []));
    return relabel(file, stalls, { prefix: '', first: n, step: 1, width: 2 });
  },
  rules: (file, _, { n }) => changeRules(file, { cordLimit: n % 5 ? n : undefined, allowance: { box: n } }),
  name: (file, _, { n }) => nameSite(file, `Lot ${n}`),
  gridlines: (file, _, { n }) => setGridlines(file, n % 2 ? { y: [{ label: 'A', at: n }] } : null),
  asBuilt: (file, refs, { x, n }) => {
    const drop = refs.find(({ list }) => list === 'drops');
    return drop ? recordAsBuilt(file, drop.id, n % 2 ? { box: [x, 0, 12], note: 'moved' } : null, testPen()) : null;
  },
  mark: (file, refs, { n }) =>
    recordMarks(file, 'Set', [{ of: refs[0]?.id ?? 'any', what: n % 2 ? 'set' : 'tested' }], testPen(`P${n % 3}`)),
  merge: (file, refs, { n }) =>
    mergeRecords(file, [{ id: `o${n}`, of: refs[0]?.id ?? 'any', what: 'note', text: 'seen', by: 'CD', time: n + 1 }]),
} satisfies Record<string, (file: SiteFile, refs: readonly Ref[], gesture: Gesture) => Edit | null>;

export const anyGesture: fc.Arbitrary<Gesture> = fc.record({
  kind: fc.constantFrom(...(Object.keys(GESTURES) as (keyof typeof GESTURES)[])),
  picks: fc.array(fc.nat(), { maxLength: 6 }),
  x: feet,
  y: feet,
  n: fc.integer({ min: 0, max: 40 }),
});

/** The edit that a gesture makes of a file; null where it comes to nothing. */
export function editOf(file: SiteFile, gesture: Gesture): Edit | null {
  const all = ELEMENT_LISTS.flatMap((list): Ref[] => elementsOf(file, list).map(({ id }) => ({ list, id })));
  const refs = all.length > 0 ? gesture.picks.map((pick) => all[pick % all.length]!) : [];
  const make = GESTURES[gesture.kind] as (file: SiteFile, refs: readonly Ref[], gesture: Gesture) => Edit | null;
  return make(file, refs, gesture);
}

function partsOf(file: SiteFile, { list, id }: Ref): Ref[] {
  const element = elementsOf(file, list).find((one) => one.id === id);
  const parts: Part[] = [];
  if (element && 'path' in element) for (const index of element.path.keys()) parts.push({ kind: 'vertex', index });
  if (element && 'box' in element) parts.push({ kind: 'retractor' }, { kind: 'box' });
  if (element && 'entry' in element) parts.push({ kind: 'entry' });
  return parts.map((part) => ({ list, id, part }));
}
