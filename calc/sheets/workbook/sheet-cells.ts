import { type LiveCell, type LiveTable, NUMBER_FORMATS } from './live.ts';

/** A cell as the packer of workbooks takes it. */
export type PackerCell = { readonly value: string | number } & Readonly<Record<string, unknown>>;

/** The cells of a workbook, written. */
export interface WrittenCells {
  /** The element `sheetData` of each table. */
  readonly sheets: readonly string[];
  /** For each table the cells in which a text or a style stands for the first time: of them come the lists of both. */
  readonly firsts: readonly (readonly PackerCell[])[];
}

const HEAD = { fontWeight: 'bold', wrap: true } as const;

/**
 * Writes the cells of all tables, with the numbers that texts and styles get by where they stand first. The packer's own
 * way from a cell to its element is a chain of objects for each of a million cells.
 * @param withValues what formulas come to stands beside them
 */
export function sheetCells(tables: readonly LiveTable[], withValues: boolean): WrittenCells {
  const texts = new Map<string, number>();
  // Without a style a cell has that of number 0.
  const styles = new Map<string, number>();
  const written = tables.map(({ rows }) => {
    const firsts: PackerCell[] = [];
    const styleOf = (key: string, look: object): string => {
      let style = styles.get(key);
      if (style === undefined) {
        style = styles.size + 1;
        styles.set(key, style);
        firsts.push({ value: 0, type: Number, ...look });
      }
      return ` s="${style}"`;
    };
    const textOf = (whole: string, style: string): string => {
      const value = whole.replace(NOT_PRINTED, '');
      if (value === '') return style === '' ? '' : `${style}/>`;
      let text = texts.get(value);
      if (text === undefined) {
        text = texts.size;
        texts.set(value, text);
        firsts.push({ value: packed(value), type: String });
      }
      return `${style} t="s"><v>${text}</v></c>`;
    };
    const cell = (value: LiveCell, isHead: boolean, head: LiveCell | undefined): string => {
      if (value === null) return '';
      if (typeof value === 'string') return textOf(value, isHead ? styleOf('head', HEAD) : '');
      if (typeof value === 'boolean') return textOf(value ? 'yes' : 'no', '');
      if (typeof value === 'number') {
        if (!Number.isFinite(value)) return '';
        const style = isMoney(head) ? styleOf(NUMBER_FORMATS.money, { format: NUMBER_FORMATS.money }) : '';
        return `${style}><v>${value}</v></c>`;
      }
      const { formula, shown, words } = value;
      if (formula === undefined && value.value === null) return '';
      const style = styleOf(NUMBER_FORMATS[shown], { format: NUMBER_FORMATS[shown] });
      if (formula === undefined) return `${style}><v>${value.value}</v></c>`;
      const f = `<f>${escaped(formula.replace(NOT_PRINTED, ''))}</f>`;
      if (withValues && words !== undefined) return `${style} t="str">${f}<v>${escaped(words)}</v></c>`;
      return `${style}>${f}${withValues && value.value !== null ? `<v>${value.value}</v>` : ''}</c>`;
    };
    const columns = Math.max(0, ...rows.map((row) => row.length));
    const letters = Array.from({ length: columns }, (_, i) => columnLetters(i));
    const lines = rows.map((row, i) => {
      let cells = '';
      row.forEach((value, j) => {
        const rest = cell(value, i === 0, rows[0]?.[j]);
        if (rest !== '') cells += `<c r="${letters[j]}${i + 1}"${rest}`;
      });
      return cells === '' ? `<row r="${i + 1}"/>` : `<row r="${i + 1}">${cells}</row>`;
    });
    return { sheet: lines.length === 0 ? '<sheetData/>' : `<sheetData>${lines.join('')}</sheetData>`, firsts };
  });
  return { sheets: written.map(({ sheet }) => sheet), firsts: written.map(({ firsts }) => firsts) };
}

/** Control characters and half surrogates: no text of a workbook may have them. */
const NOT_PRINTED = /[^\P{Cc}\t\n\r]|\p{Cs}/gu;

/**
 * A text as the packer may be given it: it looks texts up among the properties of an object, where `constructor` is
 * found without having been put there. The sign before the last letter is one that it leaves out of what it writes.
 */
const packed = (text: string): string =>
  text in Object.prototype ? `${text.slice(0, -1)}\u0001${text.slice(-1)}` : text;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('>', '&gt;').replaceAll('<', '&lt;');

const isMoney = (head: LiveCell | undefined): boolean => typeof head === 'string' && head.endsWith('($)');

/** `A` to `Z`, then `AA`. */
export function columnLetters(at: number): string {
  const before = Math.floor(at / 26);
  return `${before === 0 ? '' : columnLetters(before - 1)}${String.fromCharCode(65 + (at % 26))}`;
}
