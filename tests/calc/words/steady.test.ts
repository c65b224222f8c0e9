import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { steady, steadyData } from '../../../calc/words/steady.ts';

describe('numbers as they are written', () => {
  it('are the same for what two engines make of one sine', () => {
    // The two ends that two versions of one engine gave for the same bend and the same coordinate.
    expect(steady(209.99922868309037)).toBe(steady(209.9992286830904));
    expect(steady(12.44387298107781)).toBe(steady(12.443872981077808));
  });
  it('are within half a billionth of what they were, or have its 15 digits, and stay as they are from then on', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }), (value) => {
        const written = steady(value);
        expect(Math.abs(written - value)).toBeLessThanOrEqual(Math.max(0.51e-9, Math.abs(value) * 1e-14));
        expect(steady(written)).toBe(written);
        expect(Object.is(written, -0)).toBe(false);
      }),
    );
  });
  it('in any data, which is the same otherwise', () => {
    const data = { a: [1 / 3, null, 'x', true], b: { c: -1e-12, d: undefined }, __proto__: null };
    expect(steadyData(data)).toEqual({ a: [0.333333333, null, 'x', true], b: { c: 0 } });
    expect(steadyData([4403367486939361])).toEqual([4403367486939361]);
    const whole = fc.jsonValue({ maxDepth: 3 }).filter((value) => !/\d\.\d|e[-+]/.test(JSON.stringify(value)));
    fc.assert(
      fc.property(whole, (value) => {
        expect(JSON.stringify(steadyData(value))).toBe(JSON.stringify(value));
      }),
    );
  });
});
