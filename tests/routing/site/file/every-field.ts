import { readFileSync } from 'node:fs';

/** The text of a sound site file that holds every field there is. */
export const everyFieldText: string = readFileSync(
  new URL('../fixtures/every-field.site.json', import.meta.url),
  'utf8',
);

type Plain = Record<string, unknown>;

/** The same as a fresh plain value, for a test to spoil. */
export const everyField = (): Plain => JSON.parse(everyFieldText) as Plain;

/** The value with one part of it set, by its path; undefined takes the part away. */
export function withPart(value: Plain, path: readonly (string | number)[], part: unknown): Plain {
  const last = path.at(-1) ?? '';
  const holder = path.slice(0, -1).reduce<Plain>((at, step) => at[step] as Plain, value);
  if (part === undefined) delete holder[last];
  else holder[last] = part;
  return value;
}
