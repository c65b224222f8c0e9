import type { SiteFile } from '../site.ts';
import { type Spelling, spellingOf } from './spelling.ts';

/** A value stands on one line up to here. */
const WIDTH = 120;
const INDENT = '  ';

/**
 * The text of a site file: JSON with two spaces of indent, an element or a point a line where it fits. Reading it gives
 * the same file, keys in the same order. What came from a text and was not changed since is spelled as it was there.
 * Throws RangeError at a value that JSON cannot hold, such as NaN: an error of the program, never saved over.
 * @example
 * // By definition: what is written is read back
 * readSite(writeSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'lot' })).file.name // 'lot'
 */
export function writeSite(file: SiteFile): string {
  const lines = fieldsOf(file).map(
    ({ name, value, text }) => `${INDENT}${name}: ${listOfElements(value) ?? broken(value, text, INDENT)}`,
  );
  return `{\n${lines.join(',\n')}\n}\n`;
}

/** A list of objects stands broken, however short, so that a further element changes no other line. */
function listOfElements(value: unknown): string | null {
  if (!Array.isArray(value) || value.length === 0 || !value.every(isContainer)) return null;
  return between(
    '[',
    ']',
    INDENT,
    value.map((item) => broken(item, undefined, INDENT + INDENT)),
  );
}

/** On one line where there is room after the indent, else item by item. `text` is the spelling of a scalar. */
function broken(value: unknown, text: string | undefined, indent: string): string {
  const line = flat(value, text);
  if (!isContainer(value) || indent.length + line.length <= WIDTH) return line;
  const inner = indent + INDENT;
  if (Array.isArray(value)) {
    return between(
      '[',
      ']',
      indent,
      itemsOf(value).map((item) => broken(item.value, item.text, inner)),
    );
  }
  return between(
    '{',
    '}',
    indent,
    fieldsOf(value).map(({ name, value: field, text: spelled }) => `${name}: ${broken(field, spelled, inner)}`),
  );
}

function between(open: string, close: string, indent: string, items: readonly string[]): string {
  return `${open}\n${items.map((item) => `${indent}${INDENT}${item}`).join(',\n')}\n${indent}${close}`;
}

function flat(value: unknown, text: string | undefined): string {
  if (!isContainer(value)) return scalar(value, text);
  if (Array.isArray(value))
    return `[${itemsOf(value)
      .map((item) => flat(item.value, item.text))
      .join(', ')}]`;
  const fields = fieldsOf(value).map(({ name, value: field, text: spelled }) => `${name}: ${flat(field, spelled)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

const isContainer = (value: unknown): value is object => typeof value === 'object' && value !== null;

function scalar(value: unknown, text: string | undefined): string {
  // A spelling holds only for the value it was read with.
  if (text !== undefined && Object.is(JSON.parse(text), value)) return text;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`a site file holds finite numbers only, not ${value}`);
    return Object.is(value, -0) ? '-0' : String(value);
  }
  if (typeof value === 'string' || typeof value === 'boolean' || value === null) return JSON.stringify(value);
  throw new RangeError(`a site file cannot hold ${typeof value}`);
}

interface Item {
  readonly value: unknown;
  readonly text: string | undefined;
}

function itemsOf(list: readonly unknown[]): readonly Item[] {
  const texts = spellingOf(list)?.texts;
  return list.map((value, i) => ({ value, text: texts?.get(i) }));
}

function fieldsOf(of: object): readonly (Item & { readonly name: string })[] {
  const spelling = spellingOf(of);
  return keysOf(of, spelling).map((key) => ({
    name: spelling?.keyTexts?.get(key) ?? JSON.stringify(key),
    value: (of as Record<string, unknown>)[key],
    text: spelling?.texts?.get(key),
  }));
}

function keysOf(of: object, spelling: Spelling | undefined): readonly string[] {
  const own = Object.keys(of);
  const order = spelling?.keys;
  return order !== undefined && order.length === own.length && order.every((key) => Object.hasOwn(of, key))
    ? order
    : own;
}
