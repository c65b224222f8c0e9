import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const FORMS = ['web/panels', 'web/parts', 'web/underlay', 'web/board', 'web/strip', 'web/tables', 'web/field'];

const files = FORMS.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
).filter((name) => /\.tsx?$/.test(name));

test('what is typed is made a number in one place only: that for lengths or that for numbers', () => {
  const reads = /\b(Number|parseFloat|parseInt|valueAsNumber)\(([^()]|\([^()]*\))*(text|draft|bare|typed|typing)\b/;
  expect(files.length).toBeGreaterThan(100);
  expect(files.filter((name) => reads.test(readFileSync(name, 'utf8')))).toEqual([]);
});

test('a field of its own reading is a list of places, text, or goes by way of lengths or numbers', () => {
  const typed = files.filter((name) => readFileSync(name, 'utf8').includes('<TypedField'));
  expect(typed).toEqual(['web/parts/fields.tsx', 'web/parts/maybe-fields.tsx']);
});
