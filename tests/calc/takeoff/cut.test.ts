import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cut } from '../../../calc/takeoff/cutting/cut.ts';
import { explained } from '../../../calc/words/explain.ts';

describe('cutting by hand', () => {
  test('a kerf is lost between pieces, not at the end of the stock', () => {
    // Two pieces of 5 from a stock of 10 with a kerf of 1 need 11; with one end flush, 4.5 + 1 + 4.5 is 10 to the inch.
    expect(cut({ stock: 10, pieces: [5, 5], kerf: 1 }).stocks).toBe(2);
    expect(cut({ stock: 10, pieces: [4.5, 4.5], kerf: 1 }).stocks).toBe(1);
  });
  test('first fit takes three sticks where two do', () => {
    expect(cut({ stock: 10, pieces: [6, 5, 3, 2, 2, 2] })).toMatchObject({ stocks: 2, bound: 2 });
  });
  test('nothing to cut takes no stock', () => {
    expect(cut({ stock: 10, pieces: [] })).toEqual({ stocks: 0, bound: 0, plan: [] });
  });
  test('pieces of the whole stock are not lost to rounding', () => {
    expect(cut({ stock: 0.3, pieces: [0.1, 0.1, 0.1] }).stocks).toBe(1);
  });
  test.each([
    [{ stock: 0, pieces: [1] }, /stock/],
    [{ stock: 10, pieces: [0] }, /piece/],
    [{ stock: 10, pieces: [11] }, /longer than the stock/],
    [{ stock: 10, pieces: [1], kerf: -1 }, /kerf/],
    [{ stock: 10, pieces: [Number.NaN] }, /piece/],
  ])('%j is refused', (wish, says) => {
    expect(() => cut(wish)).toThrow(says);
  });
  test('the answer says what proves it', () => {
    const { steps } = explained((tell) => cut({ stock: 10, pieces: [6, 5, 3, 2, 2, 2] }, tell));
    expect(steps[0]?.source).not.toBe('');
  });
});

/** Slow and obvious: every way to put the pieces, one after another, into the stocks opened so far or a new one. */
function fewestByTrying(capacity: number, pieces: readonly number[]): number {
  let best = pieces.length;
  const place = (i: number, rooms: number[]): void => {
    if (rooms.length >= best) return;
    const piece = pieces[i];
    if (piece === undefined) {
      best = rooms.length;
      return;
    }
    rooms.forEach((room, stock) => {
      if (room >= piece) place(i + 1, rooms.with(stock, room - piece));
    });
    place(i + 1, [...rooms, capacity - piece]);
  };
  place(0, []);
  return best;
}

describe('cutting in general', () => {
  test('small orders take as few stocks as trying everything does', () => {
    const wish = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(wish, (pieces) => {
        const { stocks, bound } = cut({ stock: 20, pieces });
        expect(stocks).toBe(fewestByTrying(20, pieces));
        expect(bound).toBe(stocks);
      }),
      { numRuns: 300 },
    );
  });
  test('any order is cut whole, within its stocks, and never under its bound', () => {
    const wish = fc.array(fc.double({ min: 0.01, max: 10, noNaN: true }), { maxLength: 60 });
    fc.assert(
      fc.property(wish, fc.double({ min: 0, max: 0.2, noNaN: true }), (pieces, kerf) => {
        const { stocks, bound, plan } = cut({ stock: 10, pieces, kerf });
        expect(bound).toBeLessThanOrEqual(stocks);
        expect(plan.flat().sort()).toEqual([...pieces].sort());
        for (const stock of plan)
          expect(stock.reduce((sum, piece) => sum + piece + kerf, -kerf)).toBeLessThanOrEqual(
            10 * (1 + 1e-8) + kerf * 1e-8,
          );
      }),
      { numRuns: 60 },
    );
  });
});
