import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** What has one helper, how it looks where it is written again, and where else it may stand, with why. */
const HELPERS: readonly (readonly [helper: string, again: RegExp, but: Readonly<Record<string, string>>])[] = [
  [
    'addTo (routing/lists/grouping.ts): an item to the group of its key',
    /=== undefined\) [\w.]+\.set\([^;]*, \[\w+\]\);\s+else \w+\.push\(|if \((\w+)\) \1\.push\([^;]*\);\s+else [\w.]+\.set\([^;]*, \[|\.set\(([^;]*), \[\.\.\.\([\w.]+\.get\(\2\) \?\? \[\]\), /,
    {
      'routing/lists/grouping.ts': 'it stands here',
      'calc/checks/conduits/conduit-findings.ts': 'what has no cure stands under another key than it is sought by',
    },
  ],
  [
    'indexById (routing/site/ids.ts): where each id stands',
    /new Map\([\w.?]+\.map\(\(\{ id \}, (\w+)\) => \[id, \1\]\)\)/,
    { 'routing/site/ids.ts': 'it stands here' },
  ],
  [
    'inPlan (routing/plane/space.ts): a place in space without its elevation',
    /= \(\[x, y\]: Point3\): Point2 => \[x, y\]|map\(\(\[x, y\]\): Point2 => \[x, y\]\)/,
    { 'routing/plane/space.ts': 'it stands here' },
  ],
  [
    'counted (routing/words/counted.ts): a count with its noun',
    /\$\{([\w.]+)\} \$\{\1 === 1 \? '[^']*' : '[^']*'\}/,
    { 'routing/words/counted.ts': 'it stands here' },
  ],
  [
    'areaOf, twiceAreaOf (routing/plane/area.ts): the area of a polygon',
    /sum \+ \w+ \* \w+ - \w+ \* \w+/,
    { 'routing/plane/area.ts': 'it stands here' },
  ],
];

test.each(HELPERS)('%s is written once', (_, again, but) => {
  const found = ['routing', 'calc', 'web']
    .flatMap(sources)
    .filter((path) => !(path in but) && again.test(readFileSync(resolve(ROOT, path), 'utf8')));
  expect(found).toEqual([]);
});

test('what is looked for is found where it is written again', () => {
  const again = [
    'const others = at.get(key);\nif (others === undefined) at.set(key, [one]);\nelse others.push(one);',
    'new Map(list.map(({ id }, i) => [id, i]))',
    'const flat = ([x, y]: Point3): Point2 => [x, y];',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: source text
    "`${n} ${n === 1 ? 'row stands' : 'rows stand'}`",
    'return sum + x * ny - nx * y;',
  ];
  expect(HELPERS.map(([, pattern], i) => pattern.test(again[i]!))).toEqual(HELPERS.map(() => true));
});
