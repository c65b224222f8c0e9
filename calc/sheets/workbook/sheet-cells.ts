import { ByteText } from '../byte-text.ts';
import { type LiveCell, type LiveTable, NUMBER_FORMATS } from './live.ts';

/** A cell as the packer of workbooks takes it. */
export type PackerCell = { readonly value: string | number } & Readonly<Record<string, unknown>>;

/** The cells of a workbook, written. */
export interface WrittenCells {
  /** The element `sheetData` of each table, in UTF-8. */
  readonly sheets: readonly ByteText[];
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
    const out = new ByteText();
    const addValue = (value: number): void => {
      out.add('<v>');
      if (Number.isInteger(value)) out.whole(value);
      else out.add(String(value));
      out.add('</v>');
    };
    const addText = (name: string, whole: string, style: string): void => {
      const value = whole.replace(NOT_PRINTED, '');
      if (value === '') {
        if (style !== '') out.add(`${name}${style}/>`);
        return;
      }
      let text = texts.get(value);
      if (text === undefined) {
        text = texts.size;
        texts.set(value, text);
        firsts.push({ value: packed(value), type: String });
      }
      out.add(name);
      out.add(style);
      out.add(' t="s"><v>');
      out.whole(text);
      out.add('</v></c>');
    };
    /** `name` is the beginning of its element. */
    const addCell = (name: string, value: LiveCell, isHead: boolean, head: LiveCell | undefined): void => {
      if (value === null) return;
      if (typeof value === 'string') {
        addText(name, value, isHead ? styleOf('head', HEAD) : '');
        return;
      }
      if (typeof value === 'boolean') {
        addText(name, value ? 'yes' : 'no', '');
        return;
      }
      if (typeof value === 'number') {
        if (!Number.isFinite(value)) return;
        out.add(name);
        if (isMoney(head)) out.add(styleOf(NUMBER_FORMATS.money, { format: NUMBER_FORMATS.money }));
        out.add('>');
        addValue(value);
        out.add('</c>');
        return;
      }
      const { formula, shown, words } = value;
      if (formula === undefined && value.value === null) return;
      out.add(name);
      out.add(styleOf(NUMBER_FORMATS[shown], { format: NUMBER_FORMATS[shown] }));
      if (formula !== undefined) {
        const isWords = withValues && words !== undefined;
        out.add(isWords ? ' t="str"><f>' : '><f>');
        out.add(escaped(formula.replace(NOT_PRINTED, '')));
        out.add('</f>');
        if (isWords) out.add(`<v>${escaped(words)}</v>`);
        else if (withValues && value.value !== null) addValue(value.value);
      } else {
        out.add('>');
        addValue(value.value!);
      }
      out.add('</c>');
    };
    const columns = Math.max(0, ...rows.map((row) => row.length));
    const names = Array.from({ length: columns }, (_, i) => `<c r="${columnLetters(i)}`);
    out.add(rows.length === 0 ? '<sheetData/>' : '<sheetData>');
    rows.forEach((row, i) => {
      out.add('<row r="');
      out.whole(i + 1);
      out.add('">');
      const begun = out.length;
      row.forEach((value, j) => {
        addCell(`${names[j]}${i + 1}"`, value, i === 0, rows[0]?.[j]);
      });
      // One without cells is an element without an end of its own.
      if (out.length === begun) out.takeBack(1);
      out.add(out.length < begun ? '/>' : '</row>');
    });
    if (rows.length > 0) out.add('</sheetData>');
    return { sheet: out, firsts };
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
