import { nameKey } from '../names.ts';
import { AS_IT_IS, type Placed, waysIn } from '../placing.ts';
import { type DxfRecord, numberOf, recordText } from '../records.ts';
import type { DxfBlock } from './blocks.ts';

/** Kinds that put a block in where it already stands. */
const IN_PLACE = new Set(['DIMENSION', 'ARC_DIMENSION', 'LARGE_RADIAL_DIMENSION']);

/** A block that a record puts in, by its own name, and the ways in which it stands there; null: none can be told. */
export interface BlockPutIn {
  readonly name: string;
  readonly ways: readonly Placed[] | null;
}

/** The block that a record puts in; null for kinds that put none in. */
export function blockPutIn(record: DxfRecord, blocks: ReadonlyMap<string, DxfBlock>): BlockPutIn | null {
  const { kind } = record;
  if (!IN_PLACE.has(kind) && kind !== 'INSERT' && kind !== 'ACAD_TABLE') return null;
  const name = recordText(record, 2) ?? '';
  if (IN_PLACE.has(kind)) return { name, ways: [AS_IT_IS] };
  const base = blocks.get(nameKey(name))?.base ?? [0, 0];
  return { name, ways: waysIn(kind === 'INSERT' ? record : asInsert(record), base) };
}

/** A table as what puts its block in: it tells a direction in place of a turn. */
function asInsert(record: DxfRecord): DxfRecord {
  const [x, y] = [numberOf(record, 11, 1), numberOf(record, 21, 0)];
  const turned = Math.hypot(x, y) > 0 ? (Math.atan2(y, x) * 180) / Math.PI : 0;
  return {
    kind: 'INSERT',
    line: record.line,
    codes: [10, 20, 50],
    values: [recordText(record, 10) ?? '', recordText(record, 20) ?? '', String(turned)],
  };
}

/** The attributes of a block with the words that are put into them, by the handles of their definitions. */
export function filledIn({ entities }: DxfBlock, words: ReadonlyMap<string, string>): readonly DxfRecord[] {
  if (words.size === 0) return [];
  return entities.flatMap(({ record }) => {
    const says = record.kind === 'ATTDEF' ? words.get(recordText(record, 5) ?? '') : undefined;
    if (says === undefined) return [];
    const at = record.codes.indexOf(1);
    return [{ ...record, kind: 'ATTRIB', values: record.values.map((value, i) => (i === at ? says : value)) }];
  });
}
