import type { Point2, Point3, SiteFile } from '../../routing/site/site.ts';
import type { ElementOf, ListName } from './element-lists.ts';

/** Site feet, in which the board and the forms speak, to the file's own units. */
export interface Lengths {
  readonly length: (feet: number) => number;
  readonly feet: (length: number) => number;
  readonly point2: (feet: Point2) => Point2;
  readonly point3: (feet: Point3) => Point3;
}

const FEET_PER_METRE = 1 / 0.3048;

/** The conversions of a file. A length that comes from the hand is kept to a millionth of the file's unit. */
export function lengthsOf(file: Pick<SiteFile, 'units'>): Lengths {
  const per = file.units === 'm' ? FEET_PER_METRE : 1;
  const length = (feet: number): number => tidy(feet / per);
  return {
    length,
    feet: (fileLength) => fileLength * per,
    point2: ([x, y]) => [length(x), length(y)],
    point3: ([x, y, z]) => [length(x), length(y), length(z)],
  };
}

/** A number to six decimals, so that a move by 0.1 leaves no tail of rounding in the file. */
export const tidy = (value: number): number => {
  const rounded = Math.round(value * 1e6) / 1e6;
  return Number.isFinite(rounded) ? rounded + 0 : value;
};

/** The fields of each list's elements that are lengths or points. */
const LENGTH_FIELDS: Readonly<Record<ListName, readonly string[]>> = {
  stalls: ['at', 'width', 'depth'],
  columns: ['at', 'size', 'height'],
  members: ['from', 'to'],
  keepouts: ['outline', 'from', 'to'],
  aisles: ['outline'],
  equipment: ['at', 'size', 'entry', 'workingSpace'],
  feeders: ['length'],
  loads: [],
  raceways: ['path'],
  pullpoints: ['at'],
  drops: ['box', 'retractor', 'cord', 'restHeight'],
  chargers: ['branchLimit'],
};

/** Fields of an element given in feet, in the file's units. */
export function inFileUnits<L extends ListName, T extends Partial<ElementOf<L>>>(file: SiteFile, list: L, fields: T): T {
  return scaled(fields, LENGTH_FIELDS[list], lengthsOf(file).length);
}

/** Fields of an element of the file, in feet. */
export function inFeet<L extends ListName, T extends Partial<ElementOf<L>>>(file: SiteFile, list: L, fields: T): T {
  return scaled(fields, LENGTH_FIELDS[list], lengthsOf(file).feet);
}

/** `value` with the numbers under the named fields converted, however deep they stand. */
export function scaled<T extends object>(value: T, fields: readonly string[], convert: (length: number) => number): T {
  const entries = Object.entries(value).map(([name, held]) => [name, fields.includes(name) ? deep(held, convert) : held]);
  return Object.fromEntries(entries) as T;
}

function deep(value: unknown, convert: (length: number) => number): unknown {
  if (typeof value === 'number') return convert(value);
  if (Array.isArray(value)) return value.map((item) => deep(item, convert));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, held]) => [name, deep(held, convert)]));
  }
  return value;
}

