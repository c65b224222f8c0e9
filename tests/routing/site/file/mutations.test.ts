import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { readSite, readSiteValue } from '../../../../routing/site/file/read.ts';
import { writeSite } from '../../../../routing/site/file/write.ts';
import { siteFileSchema } from '../../../../routing/site/schema/schema.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { everyField, everyFieldText } from './every-field.ts';

type Path = readonly (string | number)[];
type Holder = Record<string | number, unknown>;

/** Every place of a value except the whole. */
const placesOf = (value: unknown, at: Path = []): readonly Path[] =>
  typeof value !== 'object' || value === null
    ? []
    : (Array.isArray(value) ? [...value.keys()] : Object.keys(value)).flatMap((step) => [
        [...at, step],
        ...placesOf((value as Holder)[step], [...at, step]),
      ]);

const PLACES = placesOf(everyField());
const place = fc.constantFrom(...PLACES);
const partAt = (value: unknown, path: Path): unknown =>
  path.reduce((at, step) => (Object.hasOwn(Object(at), step) ? (at as Holder)[step] : undefined), value);

const oddNumber = fc.constantFrom(0, -0, -1, 0.5, 1e5, 100_000.1, 1e9, 1e308, 5e-324, Number.NaN, Infinity, -Infinity);
const oddValue = fc.oneof(
  oddNumber,
  fc.constantFrom<unknown>(
    null,
    true,
    '',
    '0',
    'S01',
    'D01',
    'P1',
    '__proto__',
    [],
    {},
    [[]],
    [0, 0],
    [0, 0, 0],
    undefined,
  ),
  fc.jsonValue({ maxDepth: 3 }),
);
const oddName = fc.constantFrom('__proto__', 'constructor', 'toString', 'id', 'from', '0', '', 'at', 'S01');

/** What is done to the part at a place: taken away, set, doubled, put in the place of another, or given a new neighbour. */
type Change =
  | { readonly kind: 'drop' | 'double'; readonly path: Path }
  | { readonly kind: 'set'; readonly path: Path; readonly value: unknown }
  | { readonly kind: 'move'; readonly path: Path; readonly from: Path }
  | { readonly kind: 'add'; readonly path: Path; readonly name: string; readonly value: unknown };

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constantFrom('drop' as const, 'double' as const), path: place }),
  fc.record({ kind: fc.constant('set' as const), path: place, value: oddValue }),
  fc.record({ kind: fc.constant('move' as const), path: place, from: place }),
  fc.record({ kind: fc.constant('add' as const), path: place, name: oddName, value: oddValue }),
);

function apply(file: Holder, change: Change): void {
  const holder = partAt(file, change.path.slice(0, -1)) as Holder | unknown[] | undefined;
  const step = change.path.at(-1) ?? '';
  if (typeof holder !== 'object' || holder === null) return;
  const put = (name: string | number, value: unknown): void => {
    Object.defineProperty(holder, name, { value, enumerable: true, configurable: true, writable: true });
  };
  switch (change.kind) {
    case 'drop':
      if (Array.isArray(holder)) holder.splice(Number(step), 1);
      else delete holder[step];
      return;
    case 'double':
      if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(step)]));
      else put(`${step}2`, structuredClone(holder[step]));
      return;
    case 'set':
      put(step, change.value);
      return;
    case 'move':
      put(step, structuredClone(partAt(file, change.from)));
      return;
    case 'add':
      put(Array.isArray(holder) ? holder.length : change.name, change.value);
      return;
  }
}

function expectFinite(value: unknown): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`a number that is not finite: ${value}`);
  if (value instanceof Map) for (const inner of value.values()) expectFinite(inner);
  else if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) expectFinite(inner);
}

/** A file that was read is sound: finite throughout, converted without trouble, and the same when written and read. */
function expectSound(file: SiteFile): void {
  expectFinite(file);
  expect(v.is(siteFileSchema, file)).toBe(true);
  expectFinite(toSite(file));
  const again = readSite(writeSite(file));
  expect(again.ok && JSON.stringify(again.file)).toBe(JSON.stringify(file));
}

describe('whatever is done to a site file, reading gives errors with places or a sound file', () => {
  it('to its parts (7,000 files)', () => {
    let sound = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const file = everyField();
        for (const change of changes) apply(file, change);
        const result = readSiteValue(file);
        if (result.ok) {
          sound++;
          expectSound(result.file);
        } else {
          expect(result.errors.length).toBeGreaterThan(0);
          for (const error of result.errors) expect(error.says).toMatch(/./);
        }
      }),
      { numRuns: 7000 },
    );
    // Most changes do harm, and some do none: a reader that takes or refuses everything shows here.
    expect(sound).toBeGreaterThan(100);
    expect(sound).toBeLessThan(6000);
  });

  it('to its characters (3,000 files)', () => {
    const cut = fc.nat(everyFieldText.length);
    const put = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 4 }),
      fc.constantFrom(
        '"',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '-',
        '1e999',
        'null',
        '\\',
        '\u0000',
        '\ufeff',
        '"id": "S01",',
        '[[[[[[',
      ),
    );
    const edit = fc.tuple(cut, fc.nat(40), put);
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
        const text = edits.reduce(
          (now, [start, drop, add]) => now.slice(0, start) + add + now.slice(start + drop),
          everyFieldText,
        );
        const result = readSite(text);
        if (result.ok) expectSound(result.file);
        else for (const error of result.errors) expect(error.line).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });
});
