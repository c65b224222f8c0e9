import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const EXPORTED = /^export (?:async )?(?:const|let|function\*?|class|interface|type|enum) (\w+)/gm;

/** A kind of element has a home in both rooms, under one noun; what the library gives has the name that others know. */
const HOMES = /^(routing\/site|web\/board)\/kinds\/|^calc\/library\//;
/** One thing on two floors: in the site file, and read for a sheet. */
const SAME = ['Underlay'];

test('no exported name of the rooms stands for two things', () => {
  const placesOf = new Map<string, Set<string>>();
  for (const path of ['routing', 'calc', 'web'].flatMap(sources))
    for (const [, name = ''] of readFileSync(resolve(ROOT, path), 'utf8').matchAll(EXPORTED))
      placesOf.set(name, (placesOf.get(name) ?? new Set()).add(path));
  expect(placesOf.size).toBeGreaterThan(3000);
  const twice = [...placesOf]
    .filter(([name, paths]) => !SAME.includes(name) && [...paths].filter((path) => !HOMES.test(path)).length > 1)
    .map(([name, paths]) => `${name}: ${[...paths].join(', ')}`);
  expect(twice).toEqual([]);
});
