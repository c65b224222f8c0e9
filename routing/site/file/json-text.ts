import { lineFinder } from './line-finder.ts';
import type { Fault, Path } from './place.ts';
import { plainJson } from './plain-json.ts';
import { rememberSpelling } from './spelling.ts';

/**
 * A JSON text read: its value, and an error for each field that stands twice in an object (JSON.parse drops one), as far
 * as `MOST_REPEATED`; `more` counts the rest.
 */
export type JsonRead =
  | { readonly ok: true; readonly value: unknown; readonly repeated: readonly Fault[]; readonly more: number }
  | { readonly ok: false; readonly line: number; readonly says: string };

/** So many repeated fields are told one by one: a text may hold a million. */
export const MOST_REPEATED = 1000;

/** Nesting past this is no site file, and would exhaust the stack of what walks it. */
const MAX_DEPTH = 64;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them in strings
const PLAIN_STRING = /"[^"\\\u0000-\u001f]*"/y;
const WORDS: readonly (readonly [string, unknown])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];
const isDigit = (c: number): boolean => c >= 0x30 && c <= 0x39;

/** Scalars whose text is not the plain one, with their keys. */
type OddTexts = [key: string | number, text: string][];

/**
 * Reads JSON as JSON.parse does (RFC 8259; a byte order mark before it is let pass), with the line and column of a
 * syntax error, and without losing anything: repeated fields are errors, and `spellingOf` keeps what a value cannot
 * show of its text. `visit` hears where each value inside an object or a list begins; the path is the reader's own.
 */
export function readJson(text: string, visit?: (path: Path, at: number) => void): JsonRead {
  const plain = visit ? null : plainJson(text, MAX_DEPTH);
  if (plain) return { ok: true, value: plain.value, repeated: [], more: 0 };
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let failure: { readonly says: string; readonly at: number } | null = null;
  const path: (string | number)[] = [];
  const lineOf = lineFinder(text);
  const repeated: Fault[] = [];
  let more = 0;

  const fail = (says: string, where = at): undefined => {
    failure ??= { says, at: where };
    return undefined;
  };
  const here = (): string =>
    at >= text.length ? 'the text ends' : `got ${JSON.stringify(String.fromCodePoint(text.codePointAt(at) ?? 0))}`;

  const skipSpace = (): void => {
    for (;;) {
      const c = text.charCodeAt(at);
      if (c !== 0x20 && c !== 0x0a && c !== 0x0d && c !== 0x09) return;
      at++;
    }
  };

  /** A string literal; `raw` is its text with the quotes. */
  const string = (): { readonly value: string; readonly raw: string } | undefined => {
    PLAIN_STRING.lastIndex = at;
    if (PLAIN_STRING.test(text)) {
      const raw = text.slice(at, PLAIN_STRING.lastIndex);
      at = PLAIN_STRING.lastIndex;
      return { value: raw.slice(1, -1), raw };
    }
    const start = at;
    for (at++; ; at++) {
      const c = text.charCodeAt(at);
      if (at >= text.length) return fail('this text has no closing quote', start);
      if (c === 0x22) break;
      if (c < 0x20) return fail('a line break, a tab or another control character inside a text');
      if (c !== 0x5c) continue;
      at++;
      const letter = text[at] ?? '';
      if (letter === 'u' && /^[0-9a-fA-F]{4}$/.test(text.slice(at + 1, at + 5))) at += 4;
      else if (letter === '' || !'"\\/bfnrt'.includes(letter)) return fail('an escape that JSON does not know', at - 1);
    }
    at++;
    const raw = text.slice(start, at);
    return { value: JSON.parse(raw) as string, raw };
  };

  const scalar = (oddTexts: OddTexts, key: string | number): unknown => {
    if (text[at] === '"') {
      const literal = string();
      if (literal !== undefined && literal.raw !== JSON.stringify(literal.value)) oddTexts.push([key, literal.raw]);
      return literal?.value;
    }
    NUMBER.lastIndex = at;
    if (NUMBER.test(text)) {
      const raw = text.slice(at, NUMBER.lastIndex);
      at = NUMBER.lastIndex;
      const value = Number(raw);
      if (String(value) !== raw) oddTexts.push([key, raw]);
      return value;
    }
    for (const [word, value] of WORDS) {
      if (!text.startsWith(word, at)) continue;
      at += word.length;
      return value;
    }
    return fail(`expected a value, ${here()}`);
  };

  const value = (oddTexts: OddTexts, key: string | number, depth: number): unknown => {
    const open = text[at];
    if (open !== '{' && open !== '[') return scalar(oddTexts, key);
    if (depth >= MAX_DEPTH) return fail(`nested deeper than ${MAX_DEPTH} levels`);
    return open === '{' ? object(depth) : list(depth);
  };

  /** Steps over what stands between items. True: another follows. */
  const another = (close: string, first: boolean): boolean => {
    skipSpace();
    if (text[at] === close) {
      at++;
      return false;
    }
    if (first) return true;
    if (text[at] !== ',') {
      fail(`expected "," or "${close}", ${here()}`);
      return false;
    }
    at++;
    skipSpace();
    if (text[at] !== close) return true;
    fail(`a "," before "${close}"`);
    return false;
  };

  const list = (depth: number): unknown[] => {
    const items: unknown[] = [];
    const oddTexts: OddTexts = [];
    for (at++; another(']', items.length === 0) && failure === null; ) {
      path.push(items.length);
      visit?.(path, at);
      items.push(value(oddTexts, items.length, depth + 1));
      path.pop();
      if (failure !== null) break;
    }
    if (oddTexts.length > 0) rememberSpelling(items, { texts: new Map(oddTexts) });
    return items;
  };

  const object = (depth: number): object => {
    const fields = {};
    const keys: string[] = [];
    const oddTexts: OddTexts = [];
    const oddKeys: [string, string][] = [];
    let numbered = false;
    for (at++; another('}', keys.length === 0) && failure === null; ) {
      const start = at;
      const key = text[at] === '"' ? string() : fail(`expected a field name in quotes, ${here()}`);
      if (key === undefined) break;
      skipSpace();
      if (text[at] !== ':') {
        fail(`expected ":" after the field name, ${here()}`);
        break;
      }
      at++;
      skipSpace();
      path.push(key.value);
      visit?.(path, start);
      const isRepeated = Object.hasOwn(fields, key.value);
      if (isRepeated && repeated.length >= MOST_REPEATED) more++;
      else if (isRepeated) {
        const again = lineOf(start);
        repeated.push({
          path: [...path],
          says: `the field stands twice in one object, again at line ${again.line}, column ${again.column}`,
        });
      }
      if (key.raw.length !== key.value.length + 2 && key.raw !== JSON.stringify(key.value))
        oddKeys.push([key.value, key.raw]);
      keys.push(key.value);
      numbered ||= isDigit(key.value.charCodeAt(0));
      setOwn(fields, key.value, value(oddTexts, key.value, depth + 1));
      path.pop();
      if (failure !== null) break;
    }
    // Keys that look like whole numbers come first in an object, wherever they stood.
    const reordered = numbered && Object.keys(fields).some((key, i) => key !== keys[i]);
    if (reordered || oddTexts.length > 0 || oddKeys.length > 0) {
      const texts = { texts: new Map(oddTexts), keyTexts: new Map(oddKeys) };
      rememberSpelling(fields, reordered ? { ...texts, keys } : texts);
    }
    return fields;
  };

  skipSpace();
  if (at >= text.length) fail('the text is empty');
  const root = failure === null ? value([], '', 0) : undefined;
  skipSpace();
  if (failure === null && at < text.length) fail(`expected the end of the text, ${here()}`);
  // Told apart anew: the compiler does not see that the functions above set it.
  const found = failure as { readonly says: string; readonly at: number } | null;
  if (found === null) return { ok: true, value: root, repeated, more };
  const { line, column } = lineOf(found.at);
  return { ok: false, line, says: `not JSON: line ${line}, column ${column}: ${found.says}` };
}

/** Sets an own field whatever its name: plain assignment to `__proto__` would change the prototype. */
function setOwn(fields: object, name: string, value: unknown): void {
  if (name === '__proto__') {
    Object.defineProperty(fields, name, { value, enumerable: true, configurable: true, writable: true });
  } else {
    (fields as Record<string, unknown>)[name] = value;
  }
}
