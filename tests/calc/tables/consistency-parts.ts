import { expect } from 'vitest';

/** Checks that need no second copy: what each table must obey by its own arithmetic. */

export const rising = (values: readonly (number | null)[]) => {
  const present = values.filter((value) => value !== null);
  expect(present).toEqual([...present].sort((a, b) => a - b));
};
export const strictlyRising = (values: readonly number[]) => {
  rising(values);
  expect(new Set(values).size).toBe(values.length);
};
export const circle = (diameter: number) => (Math.PI / 4) * diameter * diameter;
