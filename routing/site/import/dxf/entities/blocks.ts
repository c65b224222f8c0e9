import type { Point2 } from '../../../site.ts';
import { nameKey } from '../names.ts';
import { type DxfRecord, flagsOf, pointsOf, recordText } from '../records.ts';

export interface Entity {
  readonly record: DxfRecord;
  /** Vertices of a polyline of the older kind, attributes of an insert. */
  readonly parts: readonly DxfRecord[];
}

export interface DxfBlock {
  readonly name: string;
  readonly base: Point2;
  readonly entities: readonly Entity[];
  /** The file that it stands for and that has to be bound into the drawing; null for a block of its own. */
  readonly refersTo: string | null;
}

/** Polylines of the older kind with their vertices, inserts with their attributes, the rest alone. */
export function* entitiesOf(records: Iterable<DxfRecord>): Generator<Entity> {
  let head: { record: DxfRecord; parts: DxfRecord[] } | null = null;
  for (const record of records) {
    if (record.kind === 'VERTEX') {
      if (head?.record.kind === 'POLYLINE') head.parts.push(record);
      continue;
    }
    if (record.kind === 'ATTRIB' && head?.record.kind === 'INSERT') {
      head.parts.push(record);
      continue;
    }
    if (head) yield head;
    head = record.kind === 'SEQEND' ? null : { record, parts: [] };
  }
  if (head) yield head;
}

/** A block that stands for another file, attached or laid over it (flags of BLOCK). */
const OUTSIDE = 4 | 8;

/** The blocks of a drawing by the key of their names. */
export function blocksOf(records: readonly DxfRecord[]): ReadonlyMap<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>();
  let head: DxfRecord | null = null;
  let inside: DxfRecord[] = [];
  for (const record of records) {
    if (record.kind === 'BLOCK') {
      head = record;
      inside = [];
    } else if (record.kind === 'ENDBLK') {
      if (head) {
        const name = recordText(head, 2) ?? '';
        const refersTo = (flagsOf(head) & OUTSIDE) === 0 ? null : recordText(head, 1) || name;
        const base = pointsOf(head, 10)[0] ?? [0, 0];
        blocks.set(nameKey(name), { name, base, entities: [...entitiesOf(inside)], refersTo });
      }
      head = null;
    } else inside.push(record);
  }
  return blocks;
}
