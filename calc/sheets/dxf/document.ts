import type { Point2 } from '../../../routing/site/site.ts';
import type { ByteText } from '../byte-text.ts';
import type { DimStyle, WrittenBlock } from './dimension-entities.ts';
import type { DxfLayer } from './layer-names.ts';
import { addObjects, type Layout } from './layouts.ts';
import { addTables, type LineType } from './tables.ts';
import { tagList } from './tags.ts';
import { addWipeoutClasses } from './wipeout.ts';

/** The parts of a drawing as they stand in a file. */
export interface DocumentParts {
  readonly next: () => string;
  readonly seed: () => string;
  readonly isMetric: boolean;
  readonly lineTypes: readonly LineType[];
  readonly layers: readonly (DxfLayer & { readonly handle: string })[];
  readonly dimStyles: readonly DimStyle[];
  readonly blocks: readonly WrittenBlock[];
  /** Handle of the block record of the model, and its entities. */
  readonly model: { readonly record: string; readonly text: ByteText };
  readonly layouts: readonly Layout[];
  /** The box round the model. */
  readonly extent: readonly [Point2, Point2];
}

const FEET = 2;
const METRES = 6;

/** A drawing as the bytes of a DXF file (AC1018): all sections that a program asks for. */
export function dxfBytes(parts: DocumentParts): Uint8Array<ArrayBuffer> {
  const { next, seed, isMetric, blocks, model, layouts, extent } = parts;
  const [[minX, minY], [maxX, maxY]] = extent;
  const papers = layouts.map((layout, i) => ({ ...layout, space: `*Paper_Space${i === 0 ? '' : i - 1}` }));
  const modelLayout = next();
  const body = tagList();
  addTables(body, {
    ...parts,
    records: [
      { name: '*Model_Space', handle: model.record, layout: modelLayout },
      ...papers.map(({ space, record, handle }) => ({ name: space, handle: record, layout: handle })),
      ...blocks.map(({ name, record }) => ({ name, handle: record })),
    ],
    middle: [(minX + maxX) / 2, (minY + maxY) / 2],
    height: Math.max(maxY - minY, (maxX - minX) / 1.6) * 1.05,
  });
  body.add([0, 'SECTION'], [2, 'BLOCKS']);
  const block = (name: string, record: string, text: ByteText | null, flags = 0): void => {
    body.add([0, 'BLOCK'], [5, next()], [330, record], [100, 'AcDbEntity'], [8, '0'], [100, 'AcDbBlockBegin']);
    body.add([2, name], [70, flags], [10, 0], [20, 0], [30, 0], [3, name], [1, '']);
    if (text) body.text.addAll(text);
    body.add([0, 'ENDBLK'], [5, next()], [330, record], [100, 'AcDbEntity'], [8, '0'], [100, 'AcDbBlockEnd']);
  };
  block('*Model_Space', model.record, null);
  // The entities of the first sheet stand with those of the model.
  for (const [i, { space, record, text }] of papers.entries()) block(space, record, i === 0 ? null : text);
  for (const { name, record, text, isAnonymous, hasAttributes } of blocks)
    block(name, record, text, (isAnonymous ? 1 : 0) + (hasAttributes ? 2 : 0));
  body.add([0, 'ENDSEC'], [0, 'SECTION'], [2, 'ENTITIES']);
  body.text.addAll(model.text);
  if (papers[0]) body.text.addAll(papers[0].text);
  body.add([0, 'ENDSEC']);
  addObjects(body, next, { record: model.record, handle: modelLayout, extent }, layouts);
  body.add([0, 'EOF']);
  const head = tagList();
  head.add([0, 'SECTION'], [2, 'HEADER']);
  const set = (name: string, ...pairs: readonly (readonly [number, string | number])[]): void =>
    head.add([9, name], ...pairs);
  set('$ACADVER', [1, 'AC1018']);
  set('$DWGCODEPAGE', [3, 'ANSI_1252']);
  set('$INSBASE', [10, 0], [20, 0], [30, 0]);
  set('$EXTMIN', [10, minX], [20, minY], [30, 0]);
  set('$EXTMAX', [10, maxX], [20, maxY], [30, 0]);
  set('$LIMMIN', [10, minX], [20, minY]);
  set('$LIMMAX', [10, maxX], [20, maxY]);
  set('$LTSCALE', [40, 1]);
  set('$PSLTSCALE', [70, 0]);
  set('$ATTMODE', [70, 1]);
  set('$TEXTSTYLE', [7, 'LETTERS']);
  set('$DIMSTYLE', [2, parts.dimStyles[0]?.name ?? 'Standard']);
  set('$MEASUREMENT', [70, isMetric ? 1 : 0]);
  set('$INSUNITS', [70, isMetric ? METRES : FEET]);
  set('$LWDISPLAY', [290, 1]);
  set('$PEXTMIN', [10, 0], [20, 0], [30, 0]);
  set('$PEXTMAX', [10, papers[0]?.width ?? 1], [20, papers[0]?.height ?? 1], [30, 0]);
  set('$TILEMODE', [70, 1]);
  set('$HANDSEED', [5, seed()]);
  head.add([0, 'ENDSEC'], [0, 'SECTION'], [2, 'CLASSES']);
  addWipeoutClasses(head);
  head.add([0, 'ENDSEC']);
  head.text.addAll(body.text);
  return head.text.bytes;
}
