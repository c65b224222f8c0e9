import { readFileSync } from 'node:fs';

export const sound = readFileSync(new URL('../../../outside/import/site.dxf', import.meta.url), 'utf8');

export type Pair = readonly [code: number, value: string | number];
export const text = (...pairs: readonly Pair[]): string => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
export const entities = (...pairs: readonly Pair[]): string =>
  text([0, 'SECTION'], [2, 'ENTITIES'], ...pairs, [0, 'ENDSEC'], [0, 'EOF']);
export const line = (...at: readonly (string | number)[]): Pair[] => [
  [0, 'LINE'],
  [8, 'A'],
  [10, at[0]!],
  [20, at[1]!],
  [11, at[2]!],
  [21, at[3]!],
];
