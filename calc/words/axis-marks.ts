/**
 * Figures at which an axis from nought is marked: whole steps of 1, 2 or 5 times a power of ten, four or so up to `most`.
 * The powers are multiplied out, so that every engine has the same.
 */
export function marksUpTo(most: number): number[] {
  let power = 1e-3;
  while (power * 10 <= most / 4) power *= 10;
  const step = power * ([1, 2, 5].find((times) => times * power >= most / 4) ?? 10);
  return Array.from({ length: Math.floor(most / step) }, (_, i) => Number(((i + 1) * step).toPrecision(6)));
}
