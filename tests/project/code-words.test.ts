import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** The sources in which an edition of the code is to be words of a table only, without their comments. */
const SOURCES = ['calc', 'routing', 'web']
  .flatMap(sources)
  .filter((path) => !path.startsWith('calc/tables/'))
  .map((path) => ({
    path,
    text: readFileSync(join(ROOT, path), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, ''),
  }));

/** Where the code may be named all the same. */
const NAMED: Readonly<Record<string, string>> = {
  'routing/site/rules/rules.ts': 'the edition of a site file that names none, a part of the contract',
};

/** Documents that are no edition of the electrical code, in whose numbers a section's shape turns up. */
const OTHER_DOCUMENTS = /ADA Standards|International Fire Code|California Building Code|US Access Board/;

test('there are sources to look at', () => expect(SOURCES.length).toBeGreaterThan(400));

test('no text outside the tables names the electrical code', () => {
  const naming = SOURCES.filter(({ path, text }) => !(path in NAMED) && /\bNEC /.test(text));
  expect(naming.map(({ path }) => path)).toEqual([]);
});

test('no text outside the tables has the number of a section', () => {
  const numbered = SOURCES.flatMap(({ path, text }) =>
    [...text.matchAll(/'[^'\n]*'|"[^"\n]*"|`[^`]*`/g)]
      .map(([literal]) => literal)
      .filter((literal) => /\b\d{3}\.\d{1,3}(\([A-Z0-9]\))?/.test(literal) && !OTHER_DOCUMENTS.test(literal))
      .map((literal) => `${path}: ${literal.slice(0, 80)}`),
  );
  expect(numbered).toEqual([]);
});
