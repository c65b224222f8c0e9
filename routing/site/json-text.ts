import { errorAt, type SiteError } from './place.ts';
import { rememberSpelling } from './spelling.ts';

/** A JSON text read: its value, and an error for each field that stands twice in an object (JSON.parse drops one). */
export type JsonRead =
  | { readonly ok: true; readonly value: unknown; readonly repeated: readonly SiteError[] }
  | { readonly ok: false; readonly error: SiteError };

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
const CLOSING: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

/**
 * Reads JSON as JSON.parse does (RFC 8259; a byte order mark before it is let pass), with the line and column of a
 * syntax error, and without losing anything: repeated fields are errors, and `spellingOf` keeps what a value cannot
 * show of its text.
 */
export function readJson(text: string): JsonRead {
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let failure: { readonly says: string; readonly at: number } | null = null;
  const path: (string | number)[] = [];
  const lineOf = lineFinder(text);
  const repeated: SiteError[] = [];

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

  const scalar = (texts: Map<string | number, string>, key: string | number): unknown => {
    if (text[at] === '"') {
      const literal = string();
      if (literal !== undefined && literal.raw !== JSON.stringify(literal.value)) texts.set(key, literal.raw);
      return literal?.value;
    }
    NUMBER.lastIndex = at;
    if (NUMBER.test(text)) {
      const raw = text.slice(at, NUMBER.lastIndex);
      at = NUMBER.lastIndex;
      const value = Number(raw);
      if (String(value) !== raw) texts.set(key, raw);
      return value;
    }
    for (const [word, value] of WORDS) {
      if (!text.startsWith(word, at)) continue;
      at += word.length;
      return value;
    }
    return fail(`expected a value, ${here()}`);
  };

  const value = (texts: Map<string | number, string>, key: string | number, depth: number): unknown => {
    const open = text[at];
    if (open !== '{' && open !== '[') return scalar(texts, key);
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
    const texts = new Map<string | number, string>();
    for (at++; another(CLOSING['['] ?? '', items.length === 0) && failure === null; ) {
      path.push(items.length);
      items.push(value(texts, items.length, depth + 1));
      path.pop();
      if (failure !== null) break;
    }
    if (texts.size > 0) rememberSpelling(items, { texts });
    return items;
  };

  const object = (depth: number): object => {
    const fields = {};
    const keys: string[] = [];
    const texts = new Map<string | number, string>();
    const keyTexts = new Map<string, string>();
    for (at++; another(CLOSING['{'] ?? '', keys.length === 0) && failure === null; ) {
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
      if (Object.hasOwn(fields, key.value)) {
        repeated.push(errorAt(path, `the field stands twice in one object, again at ${lineOf(start)}`));
      }
      if (key.raw.length !== key.value.length + 2) keyTexts.set(key.value, key.raw);
      keys.push(key.value);
      setOwn(fields, key.value, value(texts, key.value, depth + 1));
      path.pop();
      if (failure !== null) break;
    }
    const reordered = keys.some((key) => /^\d/.test(key)) && Object.keys(fields).some((key, i) => key !== keys[i]);
    if (reordered || texts.size > 0 || keyTexts.size > 0) {
      rememberSpelling(fields, { texts, keyTexts, ...(reordered ? { keys } : {}) });
    }
    return fields;
  };

  skipSpace();
  if (at >= text.length) fail('the text is empty');
  const root = failure === null ? value(new Map(), '', 0) : undefined;
  skipSpace();
  if (failure === null && at < text.length) fail(`expected the end of the text, ${here()}`);
  return outcome(failure, lineOf, root, repeated);
}

function outcome(
  failure: { readonly says: string; readonly at: number } | null,
  lineOf: (at: number) => string,
  value: unknown,
  repeated: readonly SiteError[],
): JsonRead {
  if (failure === null) return { ok: true, value, repeated };
  return { ok: false, error: errorAt([], `not JSON: ${lineOf(failure.at)}: ${failure.says}`) };
}

/** Sets an own field whatever its name: plain assignment to `__proto__` would change the prototype. */
function setOwn(fields: object, name: string, value: unknown): void {
  if (name === '__proto__') {
    Object.defineProperty(fields, name, { value, enumerable: true, configurable: true, writable: true });
  } else {
    (fields as Record<string, unknown>)[name] = value;
  }
}

/** Where a character stands, for a person with an editor; both count from 1. The lines are found once, when asked. */
function lineFinder(text: string): (at: number) => string {
  let starts: number[] | undefined;
  return (at) => {
    starts ??= [0, ...Array.from(text.matchAll(/\r\n|\r|\n/g), (line) => line.index + line[0].length)];
    let low = 0;
    for (let high = starts.length; high - low > 1; ) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= at) low = middle;
      else high = middle;
    }
    return `line ${low + 1}, column ${at - (starts[low] ?? 0) + 1}`;
  };
}
