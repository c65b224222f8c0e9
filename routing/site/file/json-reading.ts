import type { Fault, Path } from './place.ts';
import { rememberSpelling } from './spelling.ts';

/** So many repeated fields are told one by one: a text may hold a million. */
export const MOST_REPEATED = 1000;

/** Nesting past this is no site file, and would exhaust the stack of what walks it. */
export const MAX_DEPTH = 64;

/** A text as far as it has been read. */
export interface Reading {
  readonly text: string;
  /** Where the next sign stands. */
  at: number;
  /** The first thing that is wrong; nothing is read after it. */
  failure: { readonly says: string; readonly at: number } | null;
  /** Where the value being read lies. */
  readonly path: (string | number)[];
  /** Fields that stand twice, as far as `MOST_REPEATED`; `more` counts the rest. */
  readonly repeated: Fault[];
  more: number;
  readonly lineOf: (at: number) => { readonly line: number; readonly column: number };
  readonly visit: ((path: Path, at: number) => void) | undefined;
}

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

/** Notes what is wrong, at a place of the text; what was noted first stands. */
export function fail(reading: Reading, says: string, at = reading.at): undefined {
  reading.failure ??= { says, at };
  return undefined;
}

/** What stands where the reading is, in words. */
export const here = ({ text, at }: Reading): string =>
  at >= text.length ? 'the text ends' : `got ${JSON.stringify(String.fromCodePoint(text.codePointAt(at) ?? 0))}`;

export function skipSpace(reading: Reading): void {
  const { text } = reading;
  for (;;) {
    const c = text.charCodeAt(reading.at);
    if (c !== 0x20 && c !== 0x0a && c !== 0x0d && c !== 0x09) return;
    reading.at++;
  }
}

/** A string literal; `raw` is its text with the quotes. */
interface Literal {
  readonly value: string;
  readonly raw: string;
}

function stringAt(reading: Reading): Literal | undefined {
  const { text, at } = reading;
  PLAIN_STRING.lastIndex = at;
  if (!PLAIN_STRING.test(text)) return escapedString(reading);
  reading.at = PLAIN_STRING.lastIndex;
  const raw = text.slice(at, reading.at);
  return { value: raw.slice(1, -1), raw };
}

function escapedString(reading: Reading): Literal | undefined {
  const { text, at: start } = reading;
  for (reading.at++; ; reading.at++) {
    const c = text.charCodeAt(reading.at);
    if (reading.at >= text.length) return fail(reading, 'this text has no closing quote', start);
    if (c === 0x22) break;
    if (c < 0x20) return fail(reading, 'a line break, a tab or another control character inside a text');
    if (c !== 0x5c) continue;
    reading.at++;
    const { at } = reading;
    const letter = text[at] ?? '';
    if (letter === 'u' && /^[0-9a-fA-F]{4}$/.test(text.slice(at + 1, at + 5))) reading.at += 4;
    else if (letter === '' || !'"\\/bfnrt'.includes(letter))
      return fail(reading, 'an escape that JSON does not know', at - 1);
  }
  reading.at++;
  const raw = text.slice(start, reading.at);
  return { value: JSON.parse(raw) as string, raw };
}

function scalarAt(reading: Reading, oddTexts: OddTexts, key: string | number): unknown {
  const { text, at } = reading;
  if (text[at] === '"') {
    const literal = stringAt(reading);
    if (literal !== undefined && literal.raw !== JSON.stringify(literal.value)) oddTexts.push([key, literal.raw]);
    return literal?.value;
  }
  NUMBER.lastIndex = at;
  if (NUMBER.test(text)) {
    reading.at = NUMBER.lastIndex;
    const raw = text.slice(at, reading.at);
    const value = Number(raw);
    if (String(value) !== raw) oddTexts.push([key, raw]);
    return value;
  }
  for (const [word, value] of WORDS) {
    if (!text.startsWith(word, at)) continue;
    reading.at += word.length;
    return value;
  }
  return fail(reading, `expected a value, ${here(reading)}`);
}

/** The value that begins where the reading is; undefined where something is wrong. */
export function valueAt(reading: Reading, oddTexts: OddTexts, key: string | number, depth: number): unknown {
  const open = reading.text[reading.at];
  if (open !== '{' && open !== '[') return scalarAt(reading, oddTexts, key);
  if (depth >= MAX_DEPTH) return fail(reading, `nested deeper than ${MAX_DEPTH} levels`);
  return open === '{' ? objectAt(reading, depth) : listAt(reading, depth);
}

/** Steps over what stands between items. True: another follows. */
function another(reading: Reading, close: string, first: boolean): boolean {
  const { text } = reading;
  skipSpace(reading);
  if (text[reading.at] === close) {
    reading.at++;
    return false;
  }
  if (first) return true;
  if (text[reading.at] !== ',') {
    fail(reading, `expected "," or "${close}", ${here(reading)}`);
    return false;
  }
  reading.at++;
  skipSpace(reading);
  if (text[reading.at] !== close) return true;
  fail(reading, `a "," before "${close}"`);
  return false;
}

function listAt(reading: Reading, depth: number): unknown[] {
  const { path, visit } = reading;
  const items: unknown[] = [];
  const oddTexts: OddTexts = [];
  for (reading.at++; another(reading, ']', items.length === 0) && reading.failure === null; ) {
    path.push(items.length);
    visit?.(path, reading.at);
    items.push(valueAt(reading, oddTexts, items.length, depth + 1));
    path.pop();
    if (reading.failure !== null) break;
  }
  if (oddTexts.length > 0) rememberSpelling(items, { texts: new Map(oddTexts) });
  return items;
}

function objectAt(reading: Reading, depth: number): object {
  const { path, visit } = reading;
  const fields = {};
  const keys: string[] = [];
  const oddTexts: OddTexts = [];
  const oddKeys: [string, string][] = [];
  let numbered = false;
  for (reading.at++; another(reading, '}', keys.length === 0) && reading.failure === null; ) {
    const start = reading.at;
    const key = nameAt(reading);
    if (key === undefined) break;
    path.push(key.value);
    visit?.(path, start);
    if (Object.hasOwn(fields, key.value)) repeat(reading, start);
    if (key.raw.length !== key.value.length + 2 && key.raw !== JSON.stringify(key.value))
      oddKeys.push([key.value, key.raw]);
    keys.push(key.value);
    numbered ||= isDigit(key.value.charCodeAt(0));
    setOwn(fields, key.value, valueAt(reading, oddTexts, key.value, depth + 1));
    path.pop();
    if (reading.failure !== null) break;
  }
  // Keys that look like whole numbers come first in an object, wherever they stood.
  const reordered = numbered && Object.keys(fields).some((key, i) => key !== keys[i]);
  if (reordered || oddTexts.length > 0 || oddKeys.length > 0) {
    const texts = { texts: new Map(oddTexts), keyTexts: new Map(oddKeys) };
    rememberSpelling(fields, reordered ? { ...texts, keys } : texts);
  }
  return fields;
}

/** The name of a field, and on past its colon. */
function nameAt(reading: Reading): Literal | undefined {
  const { text } = reading;
  if (text[reading.at] !== '"') return fail(reading, `expected a field name in quotes, ${here(reading)}`);
  const name = stringAt(reading);
  if (name === undefined) return undefined;
  skipSpace(reading);
  if (text[reading.at] !== ':') return fail(reading, `expected ":" after the field name, ${here(reading)}`);
  reading.at++;
  skipSpace(reading);
  return name;
}

/** Notes that the field whose name begins at a place stood in its object before. */
function repeat(reading: Reading, at: number): void {
  if (reading.repeated.length >= MOST_REPEATED) {
    reading.more++;
    return;
  }
  const again = reading.lineOf(at);
  reading.repeated.push({
    path: [...reading.path],
    says: `the field stands twice in one object, again at line ${again.line}, column ${again.column}`,
  });
}

/** Sets an own field whatever its name: plain assignment to `__proto__` would change the prototype. */
function setOwn(fields: object, name: string, value: unknown): void {
  if (name === '__proto__') {
    Object.defineProperty(fields, name, { value, enumerable: true, configurable: true, writable: true });
  } else {
    (fields as Record<string, unknown>)[name] = value;
  }
}
