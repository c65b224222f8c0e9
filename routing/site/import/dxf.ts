import { METRES_PER_FOOT } from '../numbers/units.ts';
import type { Point2 } from '../site.ts';
import { hatchOutlines } from './dxf-hatch.ts';
import { isMirrored, type Outline, outlineOf } from './dxf-outline.ts';
import { type DxfRecord, dxfSections, flagsOf, numberOf, pointsOf, textOf } from './dxf-records.ts';
import { LINE_STEP, type TextLines, textLines } from './dxf-text.ts';
import {
  BUDGET,
  type DrawnLine,
  type DrawnWords,
  type Imported,
  type ImportFault,
  type LineDrawing,
  refused,
} from './imported.ts';

/** Feet in a unit by $INSUNITS (open DXF reference, header variables); a US survey foot is 1200/3937 m. */
const FEET_PER_UNIT = new Map<number, number>([
  [1, 1 / 12],
  [2, 1],
  [3, 5280],
  [4, 0.001 / METRES_PER_FOOT],
  [5, 0.01 / METRES_PER_FOOT],
  [6, 1 / METRES_PER_FOOT],
  [7, 1000 / METRES_PER_FOOT],
  [8, 1e-6 / 12],
  [9, 0.001 / 12],
  [10, 3],
  [14, 0.1 / METRES_PER_FOOT],
  [21, 1200 / 3937 / METRES_PER_FOOT],
]);

interface Block {
  readonly base: Point2;
  readonly entities: readonly Entity[];
}

interface Entity {
  readonly record: DxfRecord;
  readonly vertices: readonly DxfRecord[];
}

/** Takes a point of a block to the drawing: the columns of a matrix and where the origin goes. */
type Placed = readonly [a: number, b: number, c: number, d: number, e: number, f: number];
const AS_IT_IS: Placed = [1, 0, 0, 1, 0, 0];

/**
 * The lines of a text DXF, in the drawing's units: blocks expanded, arcs, ellipses and splines as chords, layers that
 * are off or frozen left out, paper space left out; words, and the boundaries of hatches on layers of their own. What is not drawn is counted by kind in `skipped`. A fault names
 * the line of the file. Never throws, whatever the text; the work is bounded by `BUDGET`.
 */
export function readDxf(text: string): Imported<LineDrawing> {
  const sections = dxfSections(text);
  if (!sections.ok) return sections;
  const blocks = blocksOf(sections.value.get('BLOCKS') ?? []);
  const unseen = layersUnseen(sections.value.get('TABLES') ?? []);
  const lines: DrawnLine[] = [];
  const words: DrawnWords[] = [];
  let letters = 0;
  const skipped = new Map<string, number>();
  const skip = (kind: string): void => void skipped.set(kind, (skipped.get(kind) ?? 0) + 1);
  let entities = 0;
  let points = 0;

  const draw = (
    all: readonly Entity[],
    placed: Placed,
    layerOfInsert: string | null,
    depth: number,
  ): ImportFault | null => {
    for (const { record, vertices } of all) {
      const at = `line ${record.line}`;
      if (++entities > BUDGET.entities)
        return { place: at, says: `is past ${BUDGET.entities.toLocaleString('en-US')} entities, blocks expanded` };
      const own = textOf(record, 8) || '0';
      const layer = own === '0' && layerOfInsert !== null ? layerOfInsert : own;
      if (numberOf(record, 67, 0) === 1 || numberOf(record, 60, 0) === 1 || unseen.has(layer)) continue;
      if (record.kind === 'INSERT' || record.kind === 'DIMENSION') {
        const name = textOf(record, 2) ?? '';
        const block = blocks.get(name);
        const ways = block && waysIn(record, block.base);
        if (!block || !ways) {
          skip(record.kind);
          continue;
        }
        if (depth >= BUDGET.nesting)
          return { place: at, says: `block ${JSON.stringify(name)} lies ${depth} blocks deep` };
        entities += ways.length;
        for (const way of ways) {
          const fault = draw(block.entities, within(placed, way), layer, depth + 1);
          if (fault) return fault;
        }
        continue;
      }
      const written = textLines(record);
      if (written) {
        const put = written.lines.flatMap((text, i) => wordsAt(layer, placed, written, text, i));
        letters += put.reduce((sum, one) => sum + one.words.length, 0);
        if (words.length + put.length > BUDGET.words || letters > BUDGET.letters)
          return { place: at, says: `is past ${BUDGET.words.toLocaleString('en-US')} lines of words` };
        words.push(...put);
        continue;
      }
      const isHatch = record.kind === 'HATCH';
      const outlines = isHatch ? hatchesOf(record) : outlinesOf(record, vertices);
      if (!outlines) {
        if (record.kind !== 'ATTRIB') skip(record.kind || 'unnamed');
        continue;
      }
      for (const { points: own, closed, past } of outlines) {
        points += past ?? own.length;
        if (points > BUDGET.points)
          return { place: at, says: `is past ${BUDGET.points.toLocaleString('en-US')} points` };
        const here = own.map((point) => taken(placed, point));
        // Boundaries of hatches mostly lie on lines that are drawn as well: they are kept apart from them.
        if (here.every(isNear)) lines.push({ layer: isHatch ? `${layer}, hatches` : layer, points: here, closed });
        else skip(record.kind);
      }
    }
    return null;
  };

  const fault = draw(entitiesOf(sections.value.get('ENTITIES') ?? []), AS_IT_IS, null, 0);
  if (fault) return { ok: false, fault };
  if (lines.length + words.length === 0) return refused('the file', nothingDrawn(skipped));
  return { ok: true, value: { lines, words, feetPerUnit: unitOf(sections.value.get('HEADER')?.[0]), skipped } };
}

const isNear = ([x, y]: Point2): boolean => Math.abs(x) <= BUDGET.coordinate && Math.abs(y) <= BUDGET.coordinate;

function outlinesOf(record: DxfRecord, vertices: readonly DxfRecord[]): readonly Outline[] | null {
  const outline = outlineOf(record, vertices);
  return outline && [outline];
}

/** The boundaries of a hatch in the plan; null where it stands aslant to it or is damaged. */
function hatchesOf(record: DxfRecord): readonly Outline[] | null {
  const mirrored = isMirrored(record);
  const outlines = mirrored === null ? null : hatchOutlines(record);
  if (!outlines?.every(({ points }) => points.every((at) => at.every(Number.isFinite)))) return null;
  if (!mirrored) return outlines;
  return outlines.map(({ points, closed }) => ({ points: points.map(([x, y]): Point2 => [-x, y]), closed }));
}

/** A line of words where its block is put; none where it comes to nothing there. */
function wordsAt(layer: string, placed: Placed, text: TextLines, line: string, index: number): DrawnWords[] {
  const radians = (text.turn * Math.PI) / 180;
  const [ux, uy] = [Math.cos(radians), Math.sin(radians)];
  const down = index * LINE_STEP * text.height;
  const from: Point2 = [text.at[0] + down * uy, text.at[1] - down * ux];
  const at = taken(placed, from);
  const along = taken(placed, [from[0] + ux, from[1] + uy]);
  const up = taken(placed, [from[0] - uy, from[1] + ux]);
  const height = text.height * Math.hypot(up[0] - at[0], up[1] - at[1]);
  const turn = (Math.atan2(along[1] - at[1], along[0] - at[0]) * 180) / Math.PI;
  if (line === '' || !isNear(at) || !(height > 0 && height <= BUDGET.coordinate) || !Number.isFinite(turn)) return [];
  return [{ layer, at, height, turn, anchor: text.anchor, words: line }];
}

const nothingDrawn = (skipped: ReadonlyMap<string, number>): string =>
  skipped.size === 0
    ? 'holds nothing that is drawn'
    : `holds no lines, only ${[...skipped]
        .slice(0, 5)
        .map(([kind, count]) => `${count} ${kind}`)
        .join(', ')}`;

/** Polylines of the older kind with their vertices, the rest alone. */
function entitiesOf(records: readonly DxfRecord[]): readonly Entity[] {
  const entities: { record: DxfRecord; vertices: DxfRecord[] }[] = [];
  let polyline: DxfRecord[] | null = null;
  for (const record of records) {
    if (record.kind === 'VERTEX') {
      polyline?.push(record);
      continue;
    }
    polyline = null;
    if (record.kind === 'SEQEND') continue;
    const vertices: DxfRecord[] = [];
    if (record.kind === 'POLYLINE') polyline = vertices;
    entities.push({ record, vertices });
  }
  return entities;
}

function blocksOf(records: readonly DxfRecord[]): ReadonlyMap<string, Block> {
  const blocks = new Map<string, Block>();
  let head: DxfRecord | null = null;
  let inside: DxfRecord[] = [];
  for (const record of records) {
    if (record.kind === 'BLOCK') {
      head = record;
      inside = [];
    } else if (record.kind === 'ENDBLK') {
      if (head)
        blocks.set(textOf(head, 2) ?? '', { base: pointsOf(head, 10)[0] ?? [0, 0], entities: entitiesOf(inside) });
      head = null;
    } else inside.push(record);
  }
  return blocks;
}

/** Names of the layers that are off (a color below zero) or frozen. */
function layersUnseen(tables: readonly DxfRecord[]): ReadonlySet<string> {
  const unseen = new Set<string>();
  for (const record of tables)
    if (record.kind === 'LAYER' && (numberOf(record, 62, 7) < 0 || (flagsOf(record) & 1) === 1))
      unseen.add(textOf(record, 2) ?? '');
  return unseen;
}

/** The ways a block is put in: one, or an array of rows and columns; null where they are damaged or too many. */
function waysIn(record: DxfRecord, base: Point2): readonly Placed[] | null {
  // The lines of a dimension stand in a block of their own, already in place.
  if (record.kind === 'DIMENSION') return [AS_IT_IS];
  const mirrored = isMirrored(record);
  const [at] = pointsOf(record, 10);
  if (mirrored === null || !at) return null;
  const scale = [numberOf(record, 41, 1), numberOf(record, 42, 1)] as const;
  const turn = (numberOf(record, 50, 0) * Math.PI) / 180;
  const columns = Math.trunc(numberOf(record, 70, 1)) || 1;
  const rows = Math.trunc(numberOf(record, 71, 1)) || 1;
  if (!(columns >= 1 && rows >= 1 && columns * rows <= BUDGET.entities)) return null;
  const spacing = [numberOf(record, 44, 0), numberOf(record, 45, 0)] as const;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const flip = mirrored ? -1 : 1;
  const ways: Placed[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      // A point p of the block lands at `at` + turn (spacing step + scale (p - base)).
      const dx = column * spacing[0] - scale[0] * base[0];
      const dy = row * spacing[1] - scale[1] * base[1];
      const way: Placed = [
        flip * scale[0] * cos,
        scale[0] * sin,
        flip * -scale[1] * sin,
        scale[1] * cos,
        flip * (at[0] + dx * cos - dy * sin),
        at[1] + dx * sin + dy * cos,
      ];
      if (!way.every(Number.isFinite)) return null;
      ways.push(way);
    }
  return ways;
}

const taken = ([a, b, c, d, e, f]: Placed, [x, y]: Point2): Point2 => [a * x + c * y + e, b * x + d * y + f];

/** A placing within another. */
function within(outer: Placed, [a, b, c, d, e, f]: Placed): Placed {
  const [p, q, r, s] = outer;
  const [x, y] = taken(outer, [e, f]);
  return [p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d, x, y];
}

function unitOf(header: DxfRecord | undefined): number | null {
  if (!header) return null;
  const at = header.values.indexOf('$INSUNITS');
  if (at < 0 || header.codes[at] !== 9) return null;
  return FEET_PER_UNIT.get(Number(header.values[at + 1])) ?? null;
}
