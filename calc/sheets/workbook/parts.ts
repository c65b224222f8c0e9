import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { ZIP_TIME } from '../zip-time.ts';
import type { LiveTable } from './live.ts';

/** Rows of a table without what stands under it: up to the first empty one. */
const tableRows = ({ rows }: LiveTable): number => {
  const gap = rows.findIndex((row) => row.length === 0);
  return gap < 0 ? rows.length : gap;
};

/**
 * The packed workbook with what its writer does not put in: filters, heads on every printed page, pages one sheet wide on
 * letter paper, names, and what the formulas come to, for readers that work none. Packed with one time at every entry: the
 * same tables are the same bytes, whenever they are written.
 */
export function withParts(packed: Uint8Array, tables: readonly LiveTable[], withValues: boolean): Uint8Array {
  const entries = unzipSync(packed);
  const edit = (name: string, change: (text: string) => string): void => {
    const entry = entries[name];
    if (entry) entries[name] = strToU8(change(strFromU8(entry)));
  };
  tables.forEach((table, i) => {
    edit(`xl/worksheets/sheet${i + 1}.xml`, (xml) => sheetXml(withValues ? valuesIn(xml, table) : xml, table));
  });
  edit('xl/workbook.xml', (xml) =>
    xml
      .replace('<definedNames/>', `<definedNames>${namesXml(tables)}</definedNames>`)
      .replace('<calcPr/>', '<calcPr fullCalcOnLoad="1"/>'),
  );
  return zipSync(entries, { mtime: ZIP_TIME });
}

/** The last column of the head as letters. */
function lastColumn({ rows }: LiveTable): string {
  const place = Math.max((rows[0]?.length ?? 1) - 1, 0);
  const letter = (of: number): string => String.fromCharCode(65 + of);
  return place < 26 ? letter(place) : `${letter(Math.floor(place / 26) - 1)}${letter(place % 26)}`;
}

function sheetXml(xml: string, table: LiveTable): string {
  const filter = `<autoFilter ref="A1:${lastColumn(table)}${Math.max(tableRows(table), 1)}"/>`;
  return xml
    .replace(/(<worksheet[^>]*>)/, '$1<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>')
    .replace('</sheetData>', `</sheetData>${filter}`)
    .replace(/<pageSetup[^>]*\/>/, '<pageSetup paperSize="1" orientation="landscape" fitToWidth="1" fitToHeight="0"/>');
}

/** What each formula comes to, beside it. */
function valuesIn(xml: string, { rows }: LiveTable): string {
  return xml.replace(
    /<c r="([A-Z]+)(\d+)"([^>]*)><f>([^<]*)<\/f><\/c>/g,
    (all, letters: string, line, style, formula) => {
      const place = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
      const cell = rows[Number(line) - 1]?.[place];
      if (typeof cell !== 'object' || cell === null) return all;
      if (cell.words !== undefined)
        return `<c r="${letters}${line}"${style} t="str"><f>${formula}</f><v>${cell.words}</v></c>`;
      return cell.value === null ? all : `<c r="${letters}${line}"${style}><f>${formula}</f><v>${cell.value}</v></c>`;
    },
  );
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
