import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { NEC_2023 } from '../../calc/tables/nec-2023/nec-2023.ts';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** The floors that work by the code; drawings, prices and days have figures of their own. */
const FLOORS = ['circuits', 'branches', 'supply', 'takeoff', 'checks', 'plan', 'why', 'study'];

/** Figures of a table beside its rows. */
function beside(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  return Object.values(value).flatMap(beside);
}

/** Factors and shares of the edition that are no whole number, which little else is; a half is a half everywhere. */
const FACTORS = new Set(
  [...beside(NEC_2023), ...NEC_2023.bundling.rows.map(({ percent }) => percent / 100)].filter(
    (figure) => !Number.isInteger(figure) && figure < 10 && figure !== 0.5,
  ),
);
/** The same as a sentence has them. */
const PERCENTS = new Set([...FACTORS].map((factor) => Math.round(1e4 * factor) / 100));

/** What has such a figure and is not by the code. */
const OTHERS: Readonly<Record<string, readonly (readonly [figure: string, why: string])[]>> = {
  'calc/branches/boxes/boxes.ts': [['1.25', 'largest trade size that a side of a box takes, inches']],
  'calc/branches/pulls/pull-tension.ts': [
    ['0.8', 'cable pulling practice: what several conductors pulled at once may take'],
  ],
  'calc/study/study.ts': [['0.25', 'shortest stay that a study takes, hours']],
  'calc/supply/fault/chain-by-impedance.ts': [
    ['1.2', 'reactance of half a winding'],
    ['1.2', 'reactance of half a winding'],
  ],
  'calc/supply/fault/fault-steps.ts': [['1.2', 'reactance of half a winding']],
  'calc/takeoff/conduits/ground-quantities.ts': [['1.25', 'how much soil swells when it is dug']],
  'calc/takeoff/buying/packages.ts': [['1.25', 'inches of a conduit']],
  'calc/takeoff/cutting/stock.ts': [['0.125', 'width of a saw cut, inches']],
};

test('a factor of the code stands in its edition and nowhere else', () => {
  expect([...FACTORS]).toEqual(expect.arrayContaining([1.25, 0.8, 0.125, 1.2, 2.5]));
  const files = FLOORS.flatMap((floor) => sources(join('calc', floor)));
  expect(files.length).toBeGreaterThan(250);
  const found = files.map((path) => {
    const text = readFileSync(resolve(ROOT, path), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/ .*$/gm, '');
    const factors = [...text.matchAll(/(?<![\w.])\d*\.\d+(?![\w.])/g)].filter(([figure]) =>
      FACTORS.has(Number(figure)),
    );
    const percents = [...text.matchAll(/(?<![\w.])\d+(?:\.\d+)?(?=%| percent)/g)].filter(([figure]) =>
      PERCENTS.has(Number(figure)),
    );
    return [path, [...factors, ...percents].map(([figure]) => figure)] as const;
  });
  expect(Object.fromEntries(found.filter(([, figures]) => figures.length > 0))).toEqual(
    Object.fromEntries(Object.entries(OTHERS).map(([path, figures]) => [path, figures.map(([figure]) => figure)])),
  );
});
