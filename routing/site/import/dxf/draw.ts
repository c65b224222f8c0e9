import type { Point2 } from '../../site.ts';
import { BUDGET, type DrawnWords, type Imported, type ImportedLine, type ImportFault } from '../imported.ts';
import type { DxfBlock, Entity } from './blocks.ts';
import { bareDimension } from './dimension.ts';
import { leaderParts } from './leader.ts';
import { SILENT_KINDS, type Unseen } from './left-out.ts';
import { type DxfLook, type ImportedLayer, type Looks, PLAIN_LOOK } from './look.ts';
import { nameKey } from './names.ts';
import { outlinesOf } from './outline.ts';
import { AS_IT_IS, largest, type Placed, placedWithin, planeOf, taken, waysIn } from './placing.ts';
import { type DxfRecord, numberOf, recordText } from './records.ts';
import { textLines } from './text.ts';
import type { TextLines } from './text-lines.ts';

/** What entities draw by. */
export interface DrawingParts {
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly looks: Looks;
  /** Names of blocks, and files that are referred to, by handle. */
  readonly blockNames: ReadonlyMap<string, string>;
  readonly files: ReadonlyMap<string, string>;
  /** Farthest that a chord lies off its curve, in units of the drawing. */
  readonly sagitta: number;
}

export interface Drawn {
  /** How many lines were put. */
  readonly count: number;
  readonly words: readonly DrawnWords[];
  readonly skipped: ReadonlyMap<string, number>;
  readonly unseen: Unseen;
}

/** Where entities stand: as placed, on the layer of what put them in, with its look. */
interface Place {
  readonly placed: Placed;
  readonly layer: ImportedLayer | null;
  readonly look: DxfLook;
  readonly depth: number;
}

/** Kinds that put a block in where it already stands. */
const IN_PLACE = new Set(['DIMENSION', 'ARC_DIMENSION', 'LARGE_RADIAL_DIMENSION']);
const OF_FILES = new Set(['IMAGE', 'PDFUNDERLAY', 'DWFUNDERLAY', 'DGNUNDERLAY']);
const LAYER_OF_BLOCK = '0';

/**
 * Draws entities with blocks expanded; bounded by `BUDGET`. Each line is handed to `put`; `tell` hears how many entities are
 * drawn, their parts not counted.
 */
export function drawEntities(
  all: Iterable<Entity>,
  put: (line: ImportedLine) => void,
  { blocks, looks, blockNames, files, sagitta }: DrawingParts,
  tell?: (done: number) => void,
): Imported<Drawn> {
  let drawn = 0;
  const words: DrawnWords[] = [];
  const skipped = new Map<string, number>();
  const unseen: Unseen = { paper: 0, layers: new Map(), hidden: 0, cut: 0, clipped: 0, refersTo: new Set() };
  let [letters, count, points] = [0, 0, 0];
  const skip = (kind: string): void => void skipped.set(kind, (skipped.get(kind) ?? 0) + 1);

  const line = (
    own: readonly Point2[],
    closed: boolean,
    layer: string,
    look: ImportedLine['look'],
    place: Place,
  ): boolean => {
    const here = place.placed === AS_IT_IS ? own : own.map((point) => taken(place.placed, point));
    if (!here.every(isNear)) return false;
    put({ layer, points: here, closed, ...(look && { look }) });
    drawn += 1;
    return true;
  };

  const text = (record: DxfRecord, layer: ImportedLayer, place: Place): ImportFault | null => {
    const plane = planeOf(record);
    const written = plane && textLines(record);
    if (!plane || !written) {
      skip(record.kind);
      return null;
    }
    const placed = placedWithin(place.placed, plane);
    const added = written.flatMap((block) =>
      block.lines.flatMap((each, i) => wordsAt(layer.name, placed, block, each, i)),
    );
    letters += added.reduce((sum, one) => sum + one.words.length, 0);
    if (record.values.reduce((sum, value) => sum + value.length, 0) > BUDGET.note) unseen.cut += 1;
    if (words.length + added.length > BUDGET.words || letters > BUDGET.letters)
      return { place: `line ${record.line}`, says: `is past ${BUDGET.words.toLocaleString('en-US')} lines of words` };
    words.push(...added);
    return null;
  };

  const insert = (
    name: string,
    ways: readonly Placed[] | null,
    record: DxfRecord,
    parts: readonly DxfRecord[],
    layer: ImportedLayer,
    place: Place,
    filled: ReadonlyMap<string, string> = new Map(),
  ): ImportFault | null => {
    const block = blocks.get(nameKey(name));
    const at = `line ${record.line}`;
    if (block?.refersTo && block.entities.length === 0) {
      unseen.refersTo.add(fileName(block.refersTo));
      return null;
    }
    if (!block || !ways) {
      skip(record.kind);
      return null;
    }
    if (place.depth >= BUDGET.nesting)
      return { place: at, says: `block ${JSON.stringify(block.name)} lies ${place.depth} blocks deep` };
    const look = looks.of(record, layer, place.look);
    count += ways.length;
    for (const [i, way] of ways.entries()) {
      const here = { placed: placedWithin(place.placed, way), layer, look, depth: place.depth + 1 };
      const fault = draw(block.entities, here) ?? attributes(filledIn(block, filled), here);
      if (fault) return fault;
      // Attributes stand in place for the first; each of an array has its own.
      const moved: Placed = [1, 0, 0, 1, way[4] - ways[0]![4], way[5] - ways[0]![5]];
      const beside = {
        placed: i === 0 ? place.placed : placedWithin(place.placed, moved),
        layer,
        look,
        depth: here.depth,
      };
      const other = attributes(parts, beside);
      if (other) return other;
    }
    return null;
  };

  const attributes = (parts: readonly DxfRecord[], place: Place): ImportFault | null =>
    parts.length === 0
      ? null
      : draw(
          parts.map((record) => ({ record, parts: [] })),
          place,
        );

  /** The block's own name, its ways, and what stands in it; null for kinds that put no block in. */
  const blockIn = (record: DxfRecord): readonly [name: string, ways: readonly Placed[] | null] | null => {
    const name = recordText(record, 2) ?? '';
    if (IN_PLACE.has(record.kind)) return [name, [AS_IT_IS]];
    if (record.kind === 'INSERT') return [name, waysIn(record, blocks.get(nameKey(name))?.base ?? [0, 0])];
    if (record.kind !== 'ACAD_TABLE') return null;
    const [x = 1, y = 0] = [numberOf(record, 11, 1), numberOf(record, 21, 0)];
    const turned = Math.hypot(x, y) > 0 ? (Math.atan2(y, x) * 180) / Math.PI : 0;
    const kept = [10, 20].flatMap((code): [number, string][] => [[code, recordText(record, code) ?? '']]);
    const as: DxfRecord = {
      kind: 'INSERT',
      line: record.line,
      codes: [...kept.map(([code]) => code), 50],
      values: [...kept.map(([, value]) => value), String(turned)],
    };
    return [name, waysIn(as, blocks.get(nameKey(name))?.base ?? [0, 0])];
  };

  const one = ({ record, parts }: Entity, place: Place): ImportFault | null => {
    const at = `line ${record.line}`;
    const { kind } = record;
    if (++count > BUDGET.entities)
      return { place: at, says: `is past ${BUDGET.entities.toLocaleString('en-US')} entities, blocks expanded` };
    if (SILENT_KINDS.has(kind)) return null;
    const own = recordText(record, 8) || LAYER_OF_BLOCK;
    const layer = own === LAYER_OF_BLOCK && place.layer ? place.layer : looks.layer(own);
    // The points that dimensions measure from.
    if (kind === 'POINT' && nameKey(layer.name) === 'defpoints') return null;
    if (place.depth === 0 && numberOf(record, 67, 0) === 1) {
      unseen.paper += 1;
      return null;
    }
    if (numberOf(record, 60, 0) === 1) {
      unseen.hidden += 1;
      return null;
    }
    const putIn = blockIn(record);
    // A layer that is off hides what is on it, one that is frozen also what is put in on it.
    if (layer.frozen || (layer.off && !(putIn && kind === 'INSERT'))) {
      unseen.layers.set(layer.name, (unseen.layers.get(layer.name) ?? 0) + 1);
      return null;
    }
    if (putIn && (kind !== 'DIMENSION' || blocks.has(nameKey(putIn[0]))))
      return insert(putIn[0], putIn[1], record, parts, layer, place);
    const look = (): DxfLook => looks.of(record, layer, place.look);
    if (kind === 'DIMENSION') {
      const dimension = bareDimension(record);
      if (!dimension) skip(kind);
      const plain = looks.line(look(), 0, false);
      for (const own of dimension?.lines ?? []) line(own, false, layer.name, plain, place);
      return dimension ? text(wordsRecord(record, dimension.words), layer, place) : null;
    }
    if (kind === 'MULTILEADER' || kind === 'MLEADER') {
      const { lines: leaders, heads, note, block } = leaderParts(record);
      const plain = looks.line(look(), 0, false);
      const led = leaders.filter((own) => line(own, false, layer.name, plain, place));
      for (const head of heads) line(head, true, layer.name, looks.line(look(), 0, true), place);
      if (led.length === 0 && !note && !block) skip(kind);
      const name = block && blockNames.get(block.handle);
      const base = blocks.get(nameKey(name ?? ''))?.base ?? [0, 0];
      return (
        (note ? text(note.record, layer, place) : null) ??
        (block && name ? insert(name, waysIn(block.insert, base), block.insert, [], layer, place, block.words) : null)
      );
    }
    if (kind === 'TEXT' || kind === 'MTEXT' || kind === 'ATTRIB') return text(record, layer, place);
    if (OF_FILES.has(kind)) {
      const file = files.get(recordText(record, 340) ?? '');
      if (file) unseen.refersTo.add(fileName(file));
      else skip(kind);
      return null;
    }
    const plane = planeOf(record);
    const here = plane && placedWithin(place.placed, plane);
    const outlines = here && outlinesOf(record, parts, sagitta / Math.max(largest(here), 1e-9));
    if (!here || !outlines) {
      skip(kind || 'unnamed');
      return null;
    }
    const seen = look();
    for (const { points: own, closed, width = 0, filled = false, past } of outlines) {
      points += past ?? own.length;
      if (points > BUDGET.points) return { place: at, says: `is past ${BUDGET.points.toLocaleString('en-US')} points` };
      // Boundaries of hatches mostly lie on lines that are drawn as well: they are kept apart from them.
      const on = kind === 'HATCH' ? `${layer.name}, hatches` : layer.name;
      const wide = width > 0 ? width * largest(here) : 0;
      if (
        !line(own, closed, on, looks.line(seen, Number.isFinite(wide) ? wide : 0, filled), { ...place, placed: here })
      )
        skip(kind);
    }
    return null;
  };

  const draw = (entities: Iterable<Entity>, place: Place): ImportFault | null => {
    let done = 0;
    for (const entity of entities) {
      if (place.depth === 0 && done++ % 5000 === 0) tell?.(done);
      const fault = one(entity, place);
      if (fault) return fault;
    }
    return null;
  };

  const fault = draw(all, { placed: AS_IT_IS, layer: null, look: PLAIN_LOOK, depth: 0 });
  return fault ? { ok: false, fault } : { ok: true, value: { count: drawn, words, skipped, unseen } };
}

const isNear = ([x, y]: Point2): boolean => Math.abs(x) <= BUDGET.coordinate && Math.abs(y) <= BUDGET.coordinate;

/** The last part of a path, of whichever system. */
const fileName = (path: string): string => path.split(/[\\/]/).at(-1) || path;

/** The attributes of a block with the words that are put into them, by the handles of their definitions. */
function filledIn({ entities }: DxfBlock, words: ReadonlyMap<string, string>): readonly DxfRecord[] {
  if (words.size === 0) return [];
  return entities.flatMap(({ record }) => {
    const says = record.kind === 'ATTDEF' ? words.get(recordText(record, 5) ?? '') : undefined;
    if (says === undefined) return [];
    const at = record.codes.indexOf(1);
    return [{ ...record, kind: 'ATTRIB', values: record.values.map((value, i) => (i === at ? says : value)) }];
  });
}

function wordsRecord(
  record: DxfRecord,
  { at, turn, text }: { readonly at: Point2; readonly turn: number; readonly text: string },
): DxfRecord {
  const height = numberOf(record, 140, 0.18);
  return {
    kind: 'MTEXT',
    line: record.line,
    codes: [10, 20, 40, 50, 71, 1],
    values: [String(at[0]), String(at[1]), String(height), String(turn), '5', text],
  };
}

/** A line of words where its block is put; none where it comes to nothing there. */
function wordsAt(layer: string, placed: Placed, text: TextLines, line: string, index: number): DrawnWords[] {
  const radians = (text.turn * Math.PI) / 180;
  const [ux, uy] = [Math.cos(radians), Math.sin(radians)];
  const down = index * text.step;
  const from: Point2 = [text.at[0] + down * uy, text.at[1] - down * ux];
  const at = taken(placed, from);
  const along = taken(placed, [from[0] + ux, from[1] + uy]);
  const up = taken(placed, [from[0] - uy, from[1] + ux]);
  const [ax, ay] = [along[0] - at[0], along[1] - at[1]];
  const height = text.height * Math.hypot(up[0] - at[0], up[1] - at[1]);
  // Seen from behind it is written the other way from its other end, so that it covers the same ground.
  const behind = ax * (up[1] - at[1]) - ay * (up[0] - at[0]) < 0;
  const turn = (Math.atan2(behind ? -ay : ay, behind ? -ax : ax) * 180) / Math.PI;
  const anchor = behind ? OTHER_END[text.anchor] : text.anchor;
  const width = (text.width ?? 0) * Math.hypot(ax, ay);
  if (line === '' || !isNear(at) || !(height > 0 && height <= BUDGET.coordinate) || !Number.isFinite(turn)) return [];
  const bounded = width > 0 && width <= BUDGET.coordinate;
  return [{ layer, at, height, turn, anchor, words: line, ...(bounded && { width }) }];
}

const OTHER_END = { left: 'right', middle: 'middle', right: 'left' } as const;
