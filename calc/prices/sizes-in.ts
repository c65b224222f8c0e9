import { toFeet } from '../../routing/site/numbers/units.ts';

/** A size that a specification names: `400` and what follows it, `A bus`. */
export interface Size {
  readonly value: number;
  /** The words after the figure, up to the next comma. */
  readonly after: string;
}

/** `25' 6"`, `1-1/4`, `3/4`, `250`; of `480-208 V` both, the first too with what follows the last. */
const FIGURES =
  /(\d+)'(?: ?(\d+)(?: (\d+)\/(\d+))?")?|(?:(\d+)-)?(\d+)\/([1-9]\d*)|(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?)(?=\s))?/g;

/** The sizes in a specification, from left to right; feet and inches and meters as feet. An aught such as `1/0` is none. */
export function sizesIn(spec: string): readonly Size[] {
  const sizes: Size[] = [];
  for (const found of spec.matchAll(FIGURES)) {
    const [all, feet, inches, top, bottom, whole, over, under, plain, second] = found;
    const rest = spec.slice(found.index + all.length);
    const after = /^[^,]*/.exec(rest)![0].trim();
    if (feet !== undefined)
      sizes.push({
        value: Number(feet) + (Number(inches ?? 0) + (top ? Number(top) / Number(bottom) : 0)) / 12,
        after: `ft ${after}`.trim(),
      });
    else if (plain !== undefined) {
      sizes.push(
        /^m\b/.test(after)
          ? { value: toFeet(Number(plain), 'm'), after: `ft${after.slice(1)}` }
          : { value: Number(plain), after },
      );
      if (second !== undefined) sizes.push({ value: Number(second), after });
    } else sizes.push({ value: Number(whole ?? 0) + Number(over) / Number(under), after });
  }
  return sizes;
}

/** The first size of a specification in a unit: `A` finds the 400 of `400 A bus, 350 A main`, `A main` the 350. */
export function firstSize(spec: string, unit: string): number | null {
  const found = sizesIn(spec).find(({ after }) => after === unit || after.startsWith(`${unit} `));
  return found?.value ?? null;
}
