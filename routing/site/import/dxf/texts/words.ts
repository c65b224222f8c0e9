const SIGNS = new Map([
  ['d', '°'],
  ['p', '±'],
  ['c', '⌀'],
  ['%', '%'],
]);

/** `%%d` and the like as signs; underlines and what is no letter are dropped. */
export const plainWords = (text: string): string =>
  text
    .replace(/%%(\d{3})/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/%%([a-z%])/gi, (_, sign: string) => SIGNS.get(sign.toLowerCase()) ?? '')
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/\^([IJM ])/g, (_, sign: string) => (sign === ' ' ? '^' : ' '))
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is dropped
    .replace(/[\u0000-\u001f\u007f]/g, ' ');

/** A column of its own begins here. */
export const NEW_COLUMN = '\u0002';
const KEPT = '\u0001';

/**
 * The lines of an MTEXT without its formatting: fonts, heights, colors and the like are dropped, a stack is `a/b`. Before
 * a line that begins a column stands `NEW_COLUMN`.
 */
export function formattedLines(text: string): readonly string[] {
  return text
    .replace(/\\([\\{}])/g, (_, sign: string) => KEPT + sign.charCodeAt(0).toString(16).padStart(2, '0'))
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/\\S([^;]{0,80});/g, (_, stack: string) => stack.replace(/[\^#]/, '/').replace(/\s*\/\s*/, '/'))
    .replace(/\^J/g, '\\P')
    .replace(/\\[ACFHQTWfp][^;\\{}]{0,120};/g, '')
    .replace(/\\N/g, `\\P${NEW_COLUMN}`)
    .replace(/\\[LlOoKkX]/g, '')
    .replaceAll('\\~', ' ')
    .replace(/[{}]/g, '')
    .split(/\\P/)
    .map((line) => {
      const begins = line.startsWith(NEW_COLUMN);
      const plain = plainWords(
        // biome-ignore lint/suspicious/noControlCharactersInRegex: the mark of what was kept
        line.replace(/\u0001([0-9a-f]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))),
      ).trim();
      return begins ? NEW_COLUMN + plain : plain;
    });
}

const NARROW = /[iljtfrI.,:;'|!()[\] ]/;
const WIDE = /[mwMW@%]/;
const TALL = /[A-Z0-9]/;

/** How wide words are written, in heights of their capitals: near enough to break lines by (measured on the page's typeface). */
export function widthOf(words: string): number {
  let width = 0;
  for (const sign of words) width += NARROW.test(sign) ? 0.42 : WIDE.test(sign) ? 1.15 : TALL.test(sign) ? 0.84 : 0.76;
  return width;
}

/** A line broken between words so that no part is wider, in heights of capitals; a longer word stands alone. */
export function brokenWords(line: string, width: number): readonly string[] {
  if (!(width > 0) || widthOf(line) <= width) return [line];
  const lines: string[] = [];
  let now = '';
  let used = 0;
  for (const word of line.split(' ')) {
    const own = widthOf(word);
    if (now !== '' && used + 0.42 + own > width) {
      lines.push(now);
      now = word;
      used = own;
    } else {
      used += now === '' ? own : 0.42 + own;
      now = now === '' ? word : `${now} ${word}`;
    }
  }
  return [...lines, now];
}
