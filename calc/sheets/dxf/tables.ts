import type { DimStyle } from './dimension-entities.ts';
import { lineWeightOf } from './entity-writer.ts';
import type { DxfLayer } from './layer-names.ts';
import { type Tags, tagText } from './tags.ts';

/** A line type: dash and gap in units of the space that it is used in. */
export interface LineType {
  readonly name: string;
  readonly says: string;
  readonly pattern: readonly number[];
}

/** Letters of a sheet, and those of names and headings. */
export const STYLES = [
  { name: 'LETTERS', file: 'overpass-regular.ttf' },
  { name: 'LETTERS-BOLD', file: 'overpass-semibold.ttf' },
] as const;

export interface BlockRecord {
  readonly name: string;
  readonly handle: string;
  /** Handle of its layout; none for a block. */
  readonly layout?: string;
}

export interface TableParts {
  readonly next: () => string;
  readonly lineTypes: readonly LineType[];
  readonly layers: readonly (DxfLayer & { readonly handle: string })[];
  readonly dimStyles: readonly DimStyle[];
  readonly records: readonly BlockRecord[];
  /** The middle of the drawing and how high it is, for the view that a program opens with. */
  readonly middle: readonly [number, number];
  readonly height: number;
}

/** The section of tables. */
export function addTables(tags: Tags, parts: TableParts): void {
  const { next, lineTypes, layers, dimStyles, records, middle, height } = parts;
  const table = (name: string, count: number, write: (owner: string) => void): void => {
    const owner = next();
    tags.add([0, 'TABLE'], [2, name], [5, owner], [330, '0'], [100, 'AcDbSymbolTable'], [70, count]);
    if (name === 'DIMSTYLE') tags.add([100, 'AcDbDimStyleTable'], [71, count]);
    write(owner);
    tags.add([0, 'ENDTAB']);
  };
  const record = (kind: string, owner: string, marker: string, name: string, handle = next()): void =>
    tags.add(
      [0, kind],
      [kind === 'DIMSTYLE' ? 105 : 5, handle],
      [330, owner],
      [100, 'AcDbSymbolTableRecord'],
      [100, marker],
      [2, name],
      [70, 0],
    );
  tags.add([0, 'SECTION'], [2, 'TABLES']);
  table('VPORT', 1, (owner) => {
    record('VPORT', owner, 'AcDbViewportTableRecord', '*Active');
    tags.add([10, 0], [20, 0], [11, 1], [21, 1], [12, middle[0]], [22, middle[1]], [13, 0], [23, 0]);
    tags.add([14, 1], [24, 1], [15, 1], [25, 1], [16, 0], [26, 0], [36, 1], [17, 0], [27, 0], [37, 0]);
    tags.add([40, height], [41, 1.6], [42, 50], [43, 0], [44, 0], [50, 0], [51, 0]);
    tags.add([71, 0], [72, 1000], [73, 1], [74, 3], [75, 0], [76, 0], [77, 0], [78, 0]);
  });
  const types = [
    { name: 'ByBlock', says: '', pattern: [] },
    { name: 'ByLayer', says: '', pattern: [] },
    { name: 'Continuous', says: 'full line', pattern: [] },
    ...lineTypes,
  ];
  table('LTYPE', types.length, (owner) => {
    for (const { name, says, pattern } of types) {
      record('LTYPE', owner, 'AcDbLinetypeTableRecord', name);
      const total = pattern.reduce((sum, part) => sum + Math.abs(part), 0);
      tags.add([3, tagText(says)], [72, 65], [73, pattern.length], [40, total]);
      for (const part of pattern) tags.add([49, part], [74, 0]);
    }
  });
  table('LAYER', layers.length, (owner) => {
    for (const { name, index, lineType, weight, isPlotted, handle } of layers) {
      record('LAYER', owner, 'AcDbLayerTableRecord', name, handle);
      tags.add([62, index], [6, lineType]);
      if (!isPlotted) tags.add([290, 0]);
      tags.add([370, lineWeightOf(weight)], [390, '0']);
    }
  });
  table('STYLE', STYLES.length + 1, (owner) => {
    for (const { name, file } of [{ name: 'Standard', file: 'txt' }, ...STYLES]) {
      record('STYLE', owner, 'AcDbTextStyleTableRecord', name);
      tags.add([40, 0], [41, 1], [50, 0], [71, 0], [42, 1], [3, file], [4, '']);
    }
  });
  table('VIEW', 0, () => {});
  table('UCS', 0, () => {});
  table('APPID', 1, (owner) => record('APPID', owner, 'AcDbRegAppTableRecord', 'ACAD'));
  table('DIMSTYLE', dimStyles.length + 1, (owner) => {
    for (const style of [{ name: 'Standard', letter: 1, tick: 0, past: 0, factor: 1, isMetric: false }, ...dimStyles]) {
      record('DIMSTYLE', owner, 'AcDbDimStyleTableRecord', style.name);
      const { letter, tick, past, factor, isMetric } = style;
      // Lettered over the line, along it, ticks for arrows; feet and inches to a sixteenth, or metres.
      tags.add([41, letter], [42, 0], [44, past], [140, letter], [142, tick], [144, factor], [147, letter * 0.3]);
      tags.add([73, 0], [74, 0], [77, 1], [78, 3], [271, isMetric ? 3 : 4], [277, isMetric ? 2 : 4]);
    }
  });
  table('BLOCK_RECORD', records.length, (owner) => {
    for (const { name, handle, layout = '0' } of records) {
      tags.add([0, 'BLOCK_RECORD'], [5, handle], [330, owner], [100, 'AcDbSymbolTableRecord']);
      tags.add([100, 'AcDbBlockTableRecord'], [2, name], [340, layout]);
    }
  });
  tags.add([0, 'ENDSEC']);
}
