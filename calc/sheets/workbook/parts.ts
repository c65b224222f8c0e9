import { strFromU8, strToU8, unzipSync } from 'fflate';
import { ByteText } from '../byte-text.ts';
import { type Packer, zipped } from '../packing.ts';
import type { LiveTable } from './live.ts';
import { columnLetters } from './sheet-cells.ts';

/** Rows of a table without what stands under it: up to the first empty one. */
const tableRows = ({ rows }: LiveTable): number => {
  const gap = rows.findIndex((row) => row.length === 0);
  return gap < 0 ? rows.length : gap;
};

/**
 * The packed workbook with what its writer does not put in: filters, heads on every printed page, pages one sheet wide on
 * letter paper, names, and the cells. Packed with one time at every entry: the same tables are the same bytes, whenever
 * they are written.
 * @param cells the element `sheetData` of each table, in UTF-8
 */
export function withParts(
  packed: Uint8Array,
  tables: readonly LiveTable[],
  cells: readonly ByteText[],
  packer: Packer,
): Uint8Array {
  const entries = unzipSync(packed);
  const edit = (name: string, change: (text: string) => string): void => {
    const entry = entries[name];
    if (entry) entries[name] = strToU8(change(strFromU8(entry)));
  };
  tables.forEach((table, i) => {
    const name = `xl/worksheets/sheet${i + 1}.xml`;
    const entry = entries[name];
    if (entry) entries[name] = sheetXml(strFromU8(entry), table, cells[i]!);
  });
  edit('xl/workbook.xml', (xml) =>
    xml
      .replace('<definedNames/>', `<definedNames>${namesXml(tables)}</definedNames>`)
      .replace('<calcPr/>', '<calcPr fullCalcOnLoad="1"/>'),
  );
  return zipped(entries, packer);
}

/** The last column of the head as letters. */
const lastColumn = ({ rows }: LiveTable): string => columnLetters(Math.max((rows[0]?.length ?? 1) - 1, 0));

function sheetXml(xml: string, table: LiveTable, cells: ByteText): Uint8Array<ArrayBuffer> {
  const filter =
    table.rows.length === 0 ? '' : `<autoFilter ref="A1:${lastColumn(table)}${Math.max(tableRows(table), 1)}"/>`;
  const [before, after] = xml.split(/<sheetData>.*<\/sheetData>/s, 2) as [string, string];
  const head = before.replace(/(<worksheet[^>]*>)/, '$1<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>');
  const foot = after.replace(
    /<pageSetup[^>]*\/>/,
    '<pageSetup paperSize="1" orientation="landscape" fitToWidth="1" fitToHeight="0"/>',
  );
  const whole = new ByteText();
  whole.add(head);
  whole.addAll(cells);
  whole.add(`${filter}${foot}`);
  return whole.bytes;
}

function namesXml(tables: readonly LiveTable[]): string {
  return tables
    .flatMap((table, i) => {
      const sheet = `'${table.name}'`;
      const own = (table.names ?? []).map(({ name, at }) => `<definedName name="${name}">${at}</definedName>`);
      const range = `${sheet}!$A$1:$${lastColumn(table)}$${Math.max(tableRows(table), 1)}`;
      return [
        `<definedName name="_xlnm._FilterDatabase" localSheetId="${i}" hidden="1">${range}</definedName>`,
        `<definedName name="_xlnm.Print_Titles" localSheetId="${i}">${sheet}!$1:$1</definedName>`,
        ...own,
      ];
    })
    .join('');
}
