import { BUDGET, type DrawnWords, type Imported, type ImportedLine, type ImportFault } from '../imported.ts';
import {
  type DrawnSoFar,
  drawLine,
  drawWords,
  type EntityPlace,
  notePath,
  nothingDrawn,
  skip,
} from './drawn-so-far.ts';
import type { DxfBlock, Entity } from './entities/blocks.ts';
import { bareDimension, dimensionWords } from './entities/dimension.ts';
import { leaderParts } from './entities/leader.ts';
import { outlinesOf } from './entities/outline.ts';
import { type BlockPutIn, blockPutIn, filledIn } from './entities/put-in.ts';
import { SILENT_KINDS, type Unseen } from './left-out.ts';
import { type ImportedLayer, type Looks, PLAIN_LOOK } from './look.ts';
import { nameKey } from './names.ts';
import { AS_IT_IS, largest, type Placed, placedWithin, planeOf, waysIn } from './placing.ts';
import { type DxfRecord, numberOf, recordText } from './records.ts';

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

/** A walk through a drawing: what it draws by, what it has drawn, and who hears how far it is. */
interface Walk extends DrawingParts {
  readonly drawn: DrawnSoFar;
  readonly tell: ((done: number) => void) | undefined;
}

/** An entity that is seen: its record, the layer that it is on, and where it stands. */
interface Seen {
  readonly record: DxfRecord;
  readonly layer: ImportedLayer;
  readonly place: EntityPlace;
}

type Outcome = ImportFault | null;

const WORDS = new Set(['TEXT', 'MTEXT', 'ATTRIB']);
const LEADERS = new Set(['MULTILEADER', 'MLEADER']);
const OF_FILES = new Set(['IMAGE', 'PDFUNDERLAY', 'DWFUNDERLAY', 'DGNUNDERLAY']);
const LAYER_OF_BLOCK = '0';

/**
 * Draws entities with blocks expanded; bounded by `BUDGET`. Each line is handed to `put`; `tell` hears how many entities are
 * drawn, their parts not counted.
 */
export function drawEntities(
  all: Iterable<Entity>,
  put: (line: ImportedLine) => void,
  parts: DrawingParts,
  tell?: (done: number) => void,
): Imported<Drawn> {
  const drawn = nothingDrawn(put);
  const fault = drawAll(all, { placed: AS_IT_IS, layer: null, look: PLAIN_LOOK, depth: 0 }, { ...parts, drawn, tell });
  const { lines: count, words, skipped, unseen } = drawn;
  return fault ? { ok: false, fault } : { ok: true, value: { count, words, skipped, unseen } };
}

function drawAll(entities: Iterable<Entity>, place: EntityPlace, walk: Walk): Outcome {
  let done = 0;
  for (const entity of entities) {
    if (place.depth === 0 && done++ % 5000 === 0) walk.tell?.(done);
    const fault = drawOne(entity, place, walk);
    if (fault) return fault;
  }
  return null;
}

function drawOne({ record, parts }: Entity, place: EntityPlace, walk: Walk): Outcome {
  const { drawn, blocks } = walk;
  const { kind } = record;
  if (++drawn.entities > BUDGET.entities) return past(record, BUDGET.entities, 'entities, blocks expanded');
  const putIn = SILENT_KINDS.has(kind) ? null : blockPutIn(record, blocks);
  const layer = seenLayer(record, putIn, place, walk);
  if (!layer) return null;
  const seen = { record, layer, place };
  if (putIn && (kind !== 'DIMENSION' || blocks.has(nameKey(putIn.name)))) return drawBlock(putIn, seen, parts, walk);
  if (kind === 'DIMENSION') return drawBareDimension(seen, walk);
  if (LEADERS.has(kind)) return drawLeader(seen, walk);
  if (WORDS.has(kind)) return drawWords(drawn, record, layer, place);
  if (OF_FILES.has(kind)) {
    const file = walk.files.get(recordText(record, 340) ?? '');
    if (file) notePath(drawn, file);
    else skip(drawn, kind);
    return null;
  }
  return drawOutlines(seen, parts, walk);
}

/** The layer that an entity is on; null where it is not seen, which is noted where somebody meant it to be. */
function seenLayer(
  record: DxfRecord,
  putIn: BlockPutIn | null,
  place: EntityPlace,
  { looks, drawn: { unseen } }: Walk,
): ImportedLayer | null {
  if (SILENT_KINDS.has(record.kind)) return null;
  const own = recordText(record, 8) || LAYER_OF_BLOCK;
  const layer = own === LAYER_OF_BLOCK && place.layer ? place.layer : looks.layer(own);
  // The points that dimensions measure from.
  if (record.kind === 'POINT' && nameKey(layer.name) === 'defpoints') return null;
  if (place.depth === 0 && numberOf(record, 67, 0) === 1) {
    unseen.paper += 1;
    return null;
  }
  if (numberOf(record, 60, 0) === 1) {
    unseen.hidden += 1;
    return null;
  }
  // A layer that is off hides what is on it, one that is frozen also what is put in on it.
  if (layer.frozen || (layer.off && !(putIn && record.kind === 'INSERT'))) {
    unseen.layers.set(layer.name, (unseen.layers.get(layer.name) ?? 0) + 1);
    return null;
  }
  return layer;
}

/** Draws a block in each of its ways, with the attributes that stand beside it. */
function drawBlock(
  { name, ways }: BlockPutIn,
  { record, layer, place }: Seen,
  parts: readonly DxfRecord[],
  walk: Walk,
  filled: ReadonlyMap<string, string> = new Map(),
): Outcome {
  const { drawn, looks } = walk;
  const block = walk.blocks.get(nameKey(name));
  if (block?.refersTo && block.entities.length === 0) {
    notePath(drawn, block.refersTo);
    return null;
  }
  if (!block || !ways) {
    skip(drawn, record.kind);
    return null;
  }
  if (place.depth >= BUDGET.nesting)
    return { place: at(record), says: `block ${JSON.stringify(block.name)} lies ${place.depth} blocks deep` };
  const within = { layer, look: looks.of(record, layer, place.look), depth: place.depth + 1 };
  drawn.entities += ways.length;
  for (const [i, way] of ways.entries()) {
    const here = { ...within, placed: placedWithin(place.placed, way) };
    // Attributes stand in place for the first; each of an array has its own.
    const moved: Placed = [1, 0, 0, 1, way[4] - ways[0]![4], way[5] - ways[0]![5]];
    const beside = { ...within, placed: i === 0 ? place.placed : placedWithin(place.placed, moved) };
    const fault =
      drawAll(block.entities, here, walk) ??
      drawAttributes(filledIn(block, filled), here, walk) ??
      drawAttributes(parts, beside, walk);
    if (fault) return fault;
  }
  return null;
}

const drawAttributes = (records: readonly DxfRecord[], place: EntityPlace, walk: Walk): Outcome =>
  drawAll(
    records.map((record) => ({ record, parts: [] })),
    place,
    walk,
  );

/** Draws a dimension that has no block of lines. */
function drawBareDimension({ record, layer, place }: Seen, { drawn, looks }: Walk): Outcome {
  const dimension = bareDimension(record);
  if (!dimension) {
    skip(drawn, record.kind);
    return null;
  }
  const look = looks.line(looks.of(record, layer, place.look), 0, false);
  for (const points of dimension.lines) drawLine(drawn, { points, closed: false, layer: layer.name, look }, place);
  return drawWords(drawn, dimensionWords(record, dimension.words), layer, place);
}

/** Draws a leader with several lines, and the note and block that it leads to. */
function drawLeader(seen: Seen, walk: Walk): Outcome {
  const { record, layer, place } = seen;
  const { drawn, looks, blocks, blockNames } = walk;
  const { lines, heads, note, block } = leaderParts(record);
  const own = looks.of(record, layer, place.look);
  const draw = (points: ImportedLine['points'], head: boolean): boolean =>
    drawLine(drawn, { points, closed: head, layer: layer.name, look: looks.line(own, 0, head) }, place);
  const led = lines.filter((points) => draw(points, false));
  for (const head of heads) draw(head, true);
  if (led.length === 0 && !note && !block) skip(drawn, record.kind);
  const fault = note ? drawWords(drawn, note.record, layer, place) : null;
  const name = block && blockNames.get(block.handle);
  if (fault || !name) return fault;
  const ways = waysIn(block.insert, blocks.get(nameKey(name))?.base ?? [0, 0]);
  return drawBlock({ name, ways }, { ...seen, record: block.insert }, [], walk, block.words);
}

/** Draws what entities of all other kinds come to in lines. */
function drawOutlines({ record, layer, place }: Seen, parts: readonly DxfRecord[], walk: Walk): Outcome {
  const { drawn, looks } = walk;
  const plane = planeOf(record);
  const placed = plane && placedWithin(place.placed, plane);
  const outlines = placed && outlinesOf(record, parts, walk.sagitta / Math.max(largest(placed), 1e-9));
  if (!placed || !outlines) {
    skip(drawn, record.kind || 'unnamed');
    return null;
  }
  const own = looks.of(record, layer, place.look);
  // Boundaries of hatches mostly lie on lines that are drawn as well: they are kept apart from them.
  const on = record.kind === 'HATCH' ? `${layer.name}, hatches` : layer.name;
  for (const { points, closed, width = 0, filled = false, past: more } of outlines) {
    drawn.points += more ?? points.length;
    if (drawn.points > BUDGET.points) return past(record, BUDGET.points, 'points');
    const wide = width > 0 ? width * largest(placed) : 0;
    const look = looks.line(own, Number.isFinite(wide) ? wide : 0, filled);
    if (!drawLine(drawn, { points, closed, layer: on, look }, { placed })) skip(drawn, record.kind);
  }
  return null;
}

const at = ({ line }: DxfRecord): string => `line ${line}`;

const past = (record: DxfRecord, most: number, what: string): ImportFault => ({
  place: at(record),
  says: `is past ${most.toLocaleString('en-US')} ${what}`,
});
