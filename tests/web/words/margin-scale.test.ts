import { expect, test } from 'vitest';
import type { Margins } from '../../../calc/plan/margins.ts';
import { MARGIN_FULL, marginShare, worstShare } from '../../../web/words/margin-scale.ts';

const cord = { stall: 'S1', direction: 'nose-in', inlet: 'front-left' } as const;
const margins = (cordLeft: number | null, branchLeft: number | null, voltsLeft: number | null): Margins => ({
  charger: 'EV1',
  cord: cordLeft === null ? null : { left: cordLeft, used: 22 - cordLeft, limit: 22, ...cord },
  branch: branchLeft === null ? null : { left: branchLeft, used: 250 - branchLeft, limit: 250 },
  volts: voltsLeft === null ? null : { of: 'branch', left: voltsLeft, used: 3 - voltsLeft, limit: 3 },
});

test('an unused default branch limit and drop limit are full bars, whatever the lot', () => {
  const unused = margins(0, 250, 3);
  expect(marginShare('branch', unused)).toBe(1);
  expect(marginShare('volts', unused)).toBe(1);
  expect(marginShare('cord', unused)).toBe(0);
});

test('what is missing goes the other way by the same scale, and past it is past one', () => {
  const short = margins(-5, -500, null);
  expect(marginShare('cord', short)).toBe(-0.5);
  expect(marginShare('branch', short)).toBe(-2);
  expect(marginShare('volts', short)).toBeNull();
  expect(Object.keys(MARGIN_FULL)).toEqual(['cord', 'branch', 'volts']);
});

test('the worst of three is the least share of its scale, not the least figure', () => {
  // 8 ft of cord are four fifths of its scale, 100 ft of branch two fifths, 2.7 % nine tenths.
  expect(worstShare(margins(8, 100, 2.7))).toBeCloseTo(0.4, 12);
});

test('no run, no reach and no way round to the inlet are worse than any charger that is short', () => {
  expect(worstShare(margins(5, null, null))).toBe(Number.NEGATIVE_INFINITY);
  expect(worstShare(margins(null, 100, 1))).toBe(Number.NEGATIVE_INFINITY);
  expect(worstShare(margins(Number.NEGATIVE_INFINITY, 100, 1))).toBe(Number.NEGATIVE_INFINITY);
  expect(worstShare(margins(-1000, 100, 1))).toBeGreaterThan(Number.NEGATIVE_INFINITY);
});
