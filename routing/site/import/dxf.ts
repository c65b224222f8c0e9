import { drawEntities } from './dxf/draw.ts';
import { blocksOf, entitiesOf } from './dxf/entities/blocks.ts';
import { isReadableEntity } from './dxf/entities/outline.ts';
import { headerNumber, sagittaOf, unitOf } from './dxf/header.ts';
import { leftOutWords, type Unseen, unseenNotes } from './dxf/left-out.ts';
import { looksOf } from './dxf/look.ts';
import { type DxfRecord, dxfSections, recordText } from './dxf/records.ts';
import { type Imported, type ImportedLine, type LineDrawing, refused } from './imported.ts';

/**
 * The lines of a text DXF, in the drawing's units, each handed to `put` as it is read, so that a large drawing is never
 * held in two forms: blocks expanded, curves as chords within 0.01 ft, what its layers hide left out, paper space left
 * out; words, and the boundaries of hatches on layers of their own. What is not drawn is counted by kind in `skipped`
 * and told in `notes`. A fault names the line of the file. Never throws, whatever the text; the work is bounded by
 * `BUDGET`. `tell` hears what share is done.
 */
export function drawDxf(
  text: string,
  put: (line: ImportedLine) => void,
  tell?: (share: number) => void,
): Imported<Omit<LineDrawing, 'lines'>> {
  const read = dxfSections(text, tell && ((share) => tell(0.3 * share)));
  if (!read.ok) return read;
  const { sections, entities, entityCount, stops } = read.value;
  const tables = sections.get('TABLES') ?? [];
  const objects = sections.get('OBJECTS') ?? [];
  const header = sections.get('HEADER')?.[0];
  const { feetPerUnit, says: unitSays } = unitOf(header);
  const lineScale = headerNumber(header, '$LTSCALE');
  const drawn = drawEntities(
    entitiesOf(entities),
    put,
    {
      blocks: blocksOf(sections.get('BLOCKS') ?? []),
      looks: looksOf(tables, lineScale > 0 ? lineScale : 1),
      blockNames: byHandle(tables, 2, (kind) => kind === 'BLOCK_RECORD'),
      files: byHandle(objects, 1, (kind) => kind.endsWith('DEFINITION') || kind === 'IMAGEDEF'),
      sagitta: sagittaOf(header, feetPerUnit),
    },
    tell && ((done) => tell(0.3 + (0.7 * done) / entityCount)),
  );
  if (!drawn.ok) return drawn;
  const { count, words, skipped } = drawn.value;
  const unseen: Unseen = {
    ...drawn.value.unseen,
    clipped: objects.filter(({ kind }) => kind === 'SPATIAL_FILTER').length,
  };
  const left = leftOutWords(skipped, isReadableEntity);
  const notes = [
    ...(stops === null ? [] : [`It is shown as far as it goes: ${stops}.`]),
    ...unseenNotes(unseen),
    ...(left === '' ? [] : [`Not drawn: ${left}.`]),
  ];
  if (count + words.length === 0)
    return refused(
      'the file',
      `holds nothing that is drawn${notes.length > 0 ? `: ${notes.join(' ').replace('Not drawn: ', 'only ')}` : ''}`.replace(
        /\.$/,
        '',
      ),
    );
  return {
    ok: true,
    value: {
      words,
      feetPerUnit,
      unitSays,
      rounding: roundingOf(entities),
      skipped,
      notes,
    },
  };
}

/** So many coordinates tell with how many digits a file is written. */
const DIGITS_OF = 4000;

/** Half of the last digit of the coordinates. */
function roundingOf(records: Iterable<DxfRecord>): number {
  let [decimals, seen] = [0, 0];
  for (const { codes, values } of records) {
    if (seen > DIGITS_OF) break;
    for (const [i, code] of codes.entries()) {
      if (code < 10 || code > 28) continue;
      seen += 1;
      const [whole = '', exponent = '0'] = values[i]!.toLowerCase().split('e');
      const point = whole.indexOf('.');
      const places = point < 0 ? 0 : whole.replace(/0+$/, '').length - point - 1;
      decimals = Math.max(decimals, Math.min(16, places - Number(exponent)));
    }
  }
  return 0.5 * 10 ** -(Number.isFinite(decimals) ? decimals : 0);
}

/** What records of some kinds say under a group code, by their handles. */
function byHandle(
  records: readonly DxfRecord[],
  code: number,
  wanted: (kind: string) => boolean,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const record of records) {
    const [handle, value] = [recordText(record, 5), recordText(record, code)];
    if (handle !== undefined && value !== undefined && wanted(record.kind)) found.set(handle, value);
  }
  return found;
}
