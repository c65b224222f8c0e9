import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSite } from '../../../../routing/site/file/read.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { numberables } from '../../../../web/panels/selection/standing.ts';
import { SMALL } from '../../document/small-site.ts';

const LIBRARY = ((read) => (read.ok ? toSite(read.file) : expect.fail('the sample is not valid')))(
  readSite(readFileSync('samples/library-lot.site.json', 'utf8')),
);
const numbered = (prefix: string, from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, i) => `${prefix}${String(from + i).padStart(2, '0')}`);

test('one stall can be numbered with its whole row, both sides of an access aisle, and with no other row', () => {
  expect(numberables(LIBRARY, [{ list: 'stalls', id: 'S10' }])).toEqual([
    { list: 'stalls', rows: [['S10']], whole: [numbered('S', 9, 16)] },
  ]);
});

test('drops bring their chargers, and both stand in the rows of the stalls that they serve', () => {
  const drops = LIBRARY.drops.toReversed().map(({ id }) => ({ list: 'drops', id }) as const);
  expect(numberables(LIBRARY, drops)).toEqual([
    { list: 'drops', rows: [numbered('D', 1, 8), numbered('D', 9, 16)], whole: null },
    { list: 'chargers', rows: [numbered('EV', 1, 8), numbered('EV', 9, 16)], whole: null },
  ]);
});

test('every kind of element has its order, and one of a kind none', () => {
  const site = toSite({
    ...SMALL,
    loads: [...SMALL.loads!, { ...SMALL.loads![0]!, id: 'L2' }],
    raceways: [...SMALL.raceways!, { ...SMALL.raceways![0]!, id: 'R2' }],
  });
  const all = (['stalls', 'columns', 'members', 'equipment', 'loads', 'raceways', 'chargers'] as const).flatMap(
    (list) => site[list].map(({ id }) => ({ list, id })),
  );
  expect(numberables(site, all).map(({ list, rows }) => [list, rows.flat()])).toEqual([
    ['stalls', ['S07', 'S08', 'S09']],
    ['equipment', ['P1', 'T1']],
    ['loads', ['L1', 'L2']],
    ['raceways', ['R1', 'R2']],
    ['chargers', ['E1', 'E2']],
  ]);
});
