import { describe, expect, test } from 'vitest';
import { addDraw, noDraws } from '../../../../calc/supply/load-flow/draws.ts';
import { uncoupled } from '../../../../calc/supply/load-flow/phase-matrix.ts';
import { magnitude, magnitudeAt, phasorAt, plus, polar } from '../../../../calc/supply/load-flow/phasor.ts';
import { type Bus, solve } from '../../../../calc/supply/load-flow/sweep.ts';

const held = (volts: number): Float64Array =>
  new Float64Array([0, -120, 120].flatMap((angle) => Object.values(polar(volts, angle))));

const root = (volts: number): Bus => ({
  parent: -1,
  nominal: volts,
  held: held(volts),
  ratio: null,
  back: null,
  impedance: null,
});

const neutralAmps = (amps: Float64Array): number =>
  magnitude(plus(plus(phasorAt(amps, 0), phasorAt(amps, 1)), phasorAt(amps, 2)));

describe('textbook examples of unbalanced and of several loads', () => {
  test('three lighting loads on a four-wire supply: line and neutral currents', () => {
    // Mehta and Mehta, Principles of Power System, Example 14.7: 400/231 V, 10, 8, 5 kW at unity power factor.
    const draws = noDraws(1);
    for (const [line, kw] of [
      ['A', 10],
      ['B', 8],
      ['C', 5],
    ] as const)
      addDraw(draws.power, 0, line, kw * 1000, 0);
    const { out } = solve([root(231)], draws);
    expect(Math.abs(magnitudeAt(out, 0) - 43.3)).toBeLessThan(0.05);
    expect(Math.abs(magnitudeAt(out, 1) - 34.6)).toBeLessThan(0.05);
    expect(Math.abs(magnitudeAt(out, 2) - 21.65)).toBeLessThan(0.05);
    expect(Math.abs(neutralAmps(out) - 18.9)).toBeLessThan(0.05);
  });

  test('lamps and a motor of poor power factor on a four-wire supply', () => {
    // Mehta and Mehta, Example 14.8: 70, 84, 33 A at unity, a motor of 200 A at 0.2 lagging.
    const draws = noDraws(1);
    for (const [line, amps] of [
      ['A', 70],
      ['B', 84],
      ['C', 33],
    ] as const)
      addDraw(draws.current, 0, line, amps, 0);
    addDraw(draws.current, 0, 'ABC', 200 * 0.2, -200 * Math.sqrt(1 - 0.04));
    const { out } = solve([root(231)], draws);
    const lines = [224.7, 232, 209.1];
    for (const [line, amps] of lines.entries()) expect(Math.abs(magnitudeAt(out, line) - amps)).toBeLessThan(0.5);
    expect(Math.abs(neutralAmps(out) - 45.64)).toBeLessThan(0.01);
  });

  // Mehta and Mehta, Examples 13.3 and 13.4: two-wire direct-current distributors fed from one end, ohms there and back.
  test.each([
    { volts: 600, ohms: [0.56, 1.12], amps: [40, 20], at: [566.4, 544], within: 0.05 },
    { volts: 250, ohms: [0.099, 0.132, 0.066], amps: [12, 15, 20], at: [245.35, 240.73, 239.41], within: 0.005 },
  ])('loads along a distributor at $volts V', ({ volts, ohms, amps, at, within }) => {
    const sections = ohms.map(
      (r, i): Bus => ({
        parent: i,
        nominal: volts,
        held: null,
        ratio: null,
        back: null,
        impedance: uncoupled({ re: r, im: 0 }),
      }),
    );
    const draws = noDraws(1 + ohms.length);
    for (const [i, one] of amps.entries()) addDraw(draws.current, i + 1, 'A', one, 0);
    const solved = solve([root(volts), ...sections], draws);
    for (const [i, want] of at.entries())
      expect(Math.abs(magnitudeAt(solved.volts, 3 * (i + 1)) - want)).toBeLessThanOrEqual(within);
  });
});
