import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const textOf = (path: string): string => readFileSync(resolve(ROOT, path), 'utf8');

test('every file and folder that DEVELOPERS names is there', () => {
  const named = [...textOf('DEVELOPERS.md').matchAll(/`((?:routing|calc|web|tests|samples)\/[\w./-]*)`/g)]
    .map(([, path = '']) => path)
    // `x.ts` stands for any file of its folder.
    .filter((path) => !/\/x(-panel)?\.tsx?$/.test(path));
  expect(named.length).toBeGreaterThan(100);
  expect(named.filter((path) => !existsSync(resolve(ROOT, path)))).toEqual([]);
});

test('a kind of element stands in no other files than its recipe names', () => {
  // A kind with a form and an action, which nothing else asks for; its layer is that of revisions.
  const naming = /'clouds'|\.clouds\b|^\s+clouds(?:,|:)/m;
  expect(['routing', 'calc', 'web'].flatMap(sources).filter((path) => naming.test(textOf(path)))).toEqual([
    'routing/site/kinds/clouds.ts',
    'routing/site/kinds/kinds.ts',
    'calc/sheets/drawing/kinds.ts',
    'web/board/kinds/clouds.ts',
    'web/board/kinds/kinds.ts',
    'web/panels/elements/kinds.tsx',
    'web/panels/elements/remarks/cloud-panel.tsx',
  ]);
});
