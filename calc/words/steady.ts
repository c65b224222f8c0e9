/** Decimals that are written: a billionth of a foot, of an ampere. */
const SCALE = 1e9;
/** From here on a billionth is finer than a number holds. */
const LARGE = 1e6;
/** Digits that every engine agrees on. */
const DIGITS = 15;

/**
 * A number as it is written: sine, cosine and arctangent may differ in their last digit from one JavaScript engine to
 * another, and the same plan is to be the same bytes in each.
 */
export const steady = (value: number): number => {
  // A whole number has no last digit to differ in. Adding 0 takes the sign from a zero.
  if (Number.isInteger(value)) return value + 0;
  return Math.abs(value) < LARGE ? Math.round(value * SCALE) / SCALE + 0 : Number(value.toPrecision(DIGITS));
};

/** Data with every number in it as it is written. */
export function steadyData<T>(data: T): T {
  if (typeof data === 'number') return steady(data) as T;
  if (Array.isArray(data)) return data.map(steadyData) as T;
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, steadyData(value)])) as T;
}
