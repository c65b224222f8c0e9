/** How things are numbered in order: `prefix` and a number counted up from `first` by `step`, of at least `width` digits. */
export interface Numbering {
  readonly prefix: string;
  readonly first: number;
  readonly step: number;
  readonly width: number;
}

/** The number of the thing at a place in the order, counted from 0. */
export const numberAt = ({ prefix, first, step, width }: Numbering, index: number): string =>
  `${prefix}${String(first + index * step).padStart(width, '0')}`;

/** The numbering that a name or a label is the first of: "S-08" is S-, 8, two digits. What has no number begins with 1. */
export function numberingFrom(name: string): Numbering {
  const digits = /\d{1,9}$/.exec(name)?.[0];
  if (digits === undefined) return { prefix: name, first: 1, step: 1, width: 2 };
  return { prefix: name.slice(0, -digits.length), first: Number(digits), step: 1, width: digits.length };
}
