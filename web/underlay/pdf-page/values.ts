/** A value of a PDF as it is written (ISO 32000-1, 7.3); null for whatever is none, or nested too deep. */
export type PdfValue = number | boolean | null | PdfName | PdfText | PdfRef | readonly PdfValue[] | PdfDict;
export interface PdfName {
  readonly name: string;
}
export interface PdfText {
  readonly text: string;
}
export interface PdfRef {
  readonly ref: number;
}
export type PdfDict = ReadonlyMap<string, PdfValue>;

/** Deeper than this nothing of use is nested; what is in one value at most. */
const DEEPEST = 12;
const MOST = 5_000;

export const isDict = (value: PdfValue | undefined): value is PdfDict => value instanceof Map;
export const isList = (value: PdfValue | undefined): value is readonly PdfValue[] => Array.isArray(value);
export const nameOf = (value: PdfValue | undefined): string | null =>
  typeof value === 'object' && value !== null && 'name' in value ? value.name : null;

const SPACE = /(?:[\0\t\n\f\r ]|%[^\n\r]*)*/y;
const TOKEN = /<<|>>|\[|\]|\/[^\0\t\n\f\r ()<>[\]{}/%]*|<[0-9a-fA-F\s]*>|[-+.\d]+|[a-zA-Z]+/y;

/** The value that stands in a text from a place on, and the place after it. */
export function pdfValueAt(text: string, from: number): { readonly value: PdfValue; readonly end: number } {
  let at = from;
  let left = MOST;
  const next = (pattern: RegExp): string => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0] ?? '';
    at += found.length;
    return found;
  };
  const value = (depth: number): PdfValue | undefined => {
    next(SPACE);
    left -= 1;
    if (left < 0 || depth > DEEPEST) return undefined;
    if (text[at] === '(') return { text: literal() };
    const token = next(TOKEN);
    if (token === '' || token === '>>' || token === ']') return undefined;
    if (token === '<<') {
      const dict = new Map<string, PdfValue>();
      for (;;) {
        const key = value(depth + 1);
        const name = nameOf(key);
        if (name === null) return dict;
        const one = value(depth + 1);
        if (one === undefined) return dict;
        dict.set(name, one);
      }
    }
    if (token === '[') {
      const list: PdfValue[] = [];
      for (let one = value(depth + 1); one !== undefined; one = value(depth + 1)) list.push(one);
      return list;
    }
    if (token.startsWith('/'))
      return {
        name: token.slice(1).replace(/#([0-9a-fA-F]{2})/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16))),
      };
    if (token.startsWith('<')) return { text: ofHex(token) };
    if (/^\d+$/.test(token)) {
      const held = at;
      const rest = /(?:\s+)\d{1,5}\s+R(?![a-zA-Z])/y;
      if (next(rest) !== '') return { ref: Number(token) };
      at = held;
    }
    if (/^[-+.\d]/.test(token)) return Number(token);
    return token === 'true' ? true : token === 'false' ? false : null;
  };
  const literal = (): string => {
    let [out, open] = ['', 0];
    for (; at < text.length && out.length < MOST; at++) {
      const sign = text[at]!;
      if (sign === '\\') {
        at += 1;
        out += text[at] ?? '';
        continue;
      }
      if (sign === '(' && open++ === 0) continue;
      if (sign === ')' && --open === 0) break;
      out += sign;
    }
    at += 1;
    return plain(out);
  };
  const found = value(0) ?? null;
  return { value: found, end: at };
}

const ofHex = (token: string): string =>
  plain(token.replace(/[^0-9a-fA-F]/g, '').replace(/../g, (pair) => String.fromCharCode(Number.parseInt(pair, 16))));

/** Letters of UTF-16 with their upper halves off: units and names of one are of ASCII. */
const plain = (text: string): string => (text.startsWith('\xfe\xff') ? text.slice(2).replaceAll('\0', '') : text);
