/** A cell of a sheet; null leaves it empty. */
export type Cell = string | number | boolean | null;

/**
 * First characters that make a spreadsheet take text for a formula, their full-width forms included, and those that
 * some programs strip before they look (OWASP, CSV Injection; ASVS 5.0, 1.2.10).
 */
const DANGEROUS = /^[\s\0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n\0]/;

/** Signs that no reader shows and some act on (NUL, BEL, ESC): all but tabs and what begins a line. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
const CONTROLS = /[\u0000-\u0008\u000e-\u001f\u007f-\u0084\u0086-\u009f]/g;

/**
 * Rows as the text of a CSV file: UTF-8 with its mark, lines ended by CR LF (RFC 4180), so that spreadsheets read it
 * as it is. Text that a spreadsheet would take for a formula gets an apostrophe before it, on every line of a cell of
 * several lines; numbers stay numbers. What is not finite is left empty.
 */
export function csv(rows: readonly (readonly Cell[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')}`;
}

function cell(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  // A lone CR, a line separator or a vertical tab begins a line too.
  const plain = value.replace(CONTROLS, '');
  const lines = plain.split(/(\r\n|[\n\r\u2028\u2029\v\f])/);
  const guarded = lines.map((line, i) => (i % 2 === 0 && DANGEROUS.test(line) ? `'${line}` : line)).join('');
  return guarded !== plain || /[",\r\n\u2028\u2029\v\f]|^\s|\s$/.test(guarded)
    ? `"${guarded.replaceAll('"', '""')}"`
    : guarded;
}
