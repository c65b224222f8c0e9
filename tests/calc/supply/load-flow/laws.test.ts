import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addConstantCurrents,
  addDraw,
  addPowerCurrents,
  type Draws,
  noDraws,
} from '../../../../calc/supply/load-flow/draws.ts';
import { fourWire, phaseMatrix, uncoupled } from '../../../../calc/supply/load-flow/phase-matrix.ts';
import {
  magnitude,
  magnitudeAt,
  type Phasor,
  phasorAt,
  plus,
  polar,
} from '../../../../calc/supply/load-flow/phasor.ts';
import { type Bus, type Solved, solve } from '../../../../calc/supply/load-flow/sweep.ts';
import { threePhaseWinding, windingOhms } from '../../../../calc/supply/tree/windings.ts';
import { LINES } from '../../../../routing/site/schema/vocabulary.ts';

const PRIMARY = 480 / Math.sqrt(3);
const SECONDARY = 208 / Math.sqrt(3);

const source: Bus = {
  parent: -1,
  nominal: PRIMARY,
  held: new Float64Array([0, -120, 120].flatMap((angle) => Object.values(polar(PRIMARY, angle)))),
  ratio: null,
  back: null,
  impedance: null,
};

const plain = { held: null, ratio: null, back: null };

/** A random tree behind a 480 V source: four-wire, three-wire and coupled feeders, and one transformer to 208 V. */
const trees = fc
  .record({
    parents: fc.array(fc.nat(), { minLength: 1, maxLength: 8 }),
    kinds: fc.array(fc.constantFrom('four', 'three', 'coupled'), { minLength: 8, maxLength: 8 }),
    ohms: fc.array(fc.double({ min: 0.001, max: 0.02, noNaN: true }), { minLength: 8, maxLength: 8 }),
    transformerAt: fc.nat(),
    loads: fc.array(
      fc.record({
        bus: fc.nat(),
        lines: fc.constantFrom(...LINES),
        amps: fc.boolean(),
        size: fc.double({ min: 1, max: 40, noNaN: true }),
        angle: fc.double({ min: -0.8, max: 0.8, noNaN: true }),
      }),
      { minLength: 1, maxLength: 20 },
    ),
  })
  .map(({ parents, kinds, ohms, transformerAt, loads }) => {
    const transformer = 1 + (transformerAt % parents.length);
    const low = [false];
    const buses = [source];
    parents.forEach((choice, i) => {
      const parent = choice % buses.length;
      const z = { re: ohms[i]!, im: ohms[i]! / 3 };
      if (i + 1 === transformer && !low[parent]!) {
        const ohm = windingOhms(4.5, 2, { kva: 150, secondaryVolts: 208 });
        buses.push({ parent, nominal: SECONDARY, held: null, ...threePhaseWinding('delta-wye', 208 / 480, ohm) });
        low.push(true);
        return;
      }
      const coupled = phaseMatrix((row, column) => (row === column ? z : { re: z.re / 5, im: z.im / 4 }));
      const impedance = kinds[i] === 'four' ? fourWire(z) : kinds[i] === 'three' ? uncoupled(z) : coupled;
      buses.push({ ...plain, parent, nominal: low[parent]! ? SECONDARY : PRIMARY, impedance });
      low.push(low[parent]!);
    });
    const draws = noDraws(buses.length);
    for (const { bus, lines, amps, size, angle } of loads) {
      const at = bus % buses.length;
      const scale = amps ? size : size * buses[at]!.nominal;
      addDraw(amps ? draws.current : draws.power, at, lines, scale * Math.cos(angle), scale * Math.sin(angle));
    }
    return { buses, draws };
  });

/** What is drawn at a bus itself under the solved voltages, all three lines. */
function ownCurrents({ volts }: Solved, draws: Draws, buses: number): Float64Array {
  const own = new Float64Array(6 * buses);
  for (let bus = 0; bus < buses; bus++) {
    addPowerCurrents(draws.power, bus, volts, own);
    addConstantCurrents(draws.current, bus, volts, own);
  }
  return own;
}

/** Watts and vars of three line currents under three voltages to neutral. */
function power(volts: Float64Array, vBus: number, amps: Float64Array, iBus: number): Phasor {
  let sum: Phasor = { re: 0, im: 0 };
  for (let line = 0; line < 3; line++) {
    const v = phasorAt(volts, 3 * vBus + line);
    const i = phasorAt(amps, 3 * iBus + line);
    sum = plus(sum, { re: v.re * i.re + v.im * i.im, im: v.im * i.re - v.re * i.im });
  }
  return sum;
}

/** Watts lost in the branch that leads to a bus: Re(I* Z I). */
function loss({ impedance }: Bus, amps: Float64Array, bus: number): number {
  if (impedance === null) return 0;
  let watts = 0;
  for (let row = 0; row < 3; row++) {
    let drop: Phasor = { re: 0, im: 0 };
    for (let column = 0; column < 3; column++) {
      const z = phasorAt(impedance, 3 * row + column);
      const i = phasorAt(amps, 3 * bus + column);
      drop = plus(drop, { re: z.re * i.re - z.im * i.im, im: z.re * i.im + z.im * i.re });
    }
    const i = phasorAt(amps, 3 * bus + row);
    watts += drop.re * i.re + drop.im * i.im;
  }
  return watts;
}

describe('laws that every solved network obeys', () => {
  test('currents into a bus and out of it add up to nothing, line by line', () => {
    fc.assert(
      fc.property(trees, ({ buses, draws }) => {
        const solved = solve(buses, draws);
        fc.pre(solved.unsettled.length === 0);
        const own = ownCurrents(solved, draws, buses.length);
        for (let bus = 0; bus < buses.length; bus++) {
          for (let line = 0; line < 3; line++) {
            let sum = phasorAt(own, 3 * bus + line);
            buses.forEach(({ parent }, child) => {
              if (parent === bus) sum = plus(sum, phasorAt(solved.into, 3 * child + line));
            });
            const out = phasorAt(solved.out, 3 * bus + line);
            expect(Math.hypot(sum.re - out.re, sum.im - out.im)).toBeLessThan(1e-8);
          }
        }
      }),
    );
  });

  test('the energy that goes in is what the loads take and the conductors lose', () => {
    fc.assert(
      fc.property(trees, ({ buses, draws }) => {
        const solved = solve(buses, draws);
        fc.pre(solved.unsettled.length === 0);
        const own = ownCurrents(solved, draws, buses.length);
        let spent = 0;
        buses.forEach((bus, i) => {
          spent += power(solved.volts, i, own, i).re + loss(bus, solved.out, i);
        });
        const given = power(solved.volts, 0, solved.out, 0).re;
        expect(Math.abs(given - spent)).toBeLessThan(1e-6 * Math.max(1000, Math.abs(given)));
      }),
    );
  });

  test('a transformer passes on what it takes, but for its windings', () => {
    fc.assert(
      fc.property(trees, ({ buses, draws }) => {
        const solved = solve(buses, draws);
        fc.pre(solved.unsettled.length === 0);
        buses.forEach((bus, i) => {
          if (bus.ratio === null) return;
          const taken = power(solved.volts, bus.parent, solved.into, i).re;
          const given = power(solved.volts, i, solved.out, i).re;
          expect(Math.abs(taken - given - loss(bus, solved.out, i))).toBeLessThan(1e-6 * Math.max(1000, given));
          // Its delta takes no current that would need a neutral.
          const sum = [0, 1, 2].map((line) => phasorAt(solved.into, 3 * i + line)).reduce(plus);
          expect(magnitude(sum)).toBeLessThan(1e-9);
        });
      }),
    );
  });

  test('balanced load gives no neutral current and equal voltages', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), fc.constantFrom('pairs', 'neutral'), (amps, how) => {
        const buses = [source, { ...plain, parent: 0, nominal: PRIMARY, impedance: fourWire({ re: 0.02, im: 0.01 }) }];
        const draws = noDraws(2);
        for (const lines of how === 'pairs' ? (['AB', 'BC', 'CA'] as const) : (['A', 'B', 'C'] as const))
          addDraw(draws.current, 1, lines, amps * 0.99, -amps * Math.sqrt(1 - 0.99 ** 2));
        const { volts, out } = solve(buses, draws);
        expect(magnitude([0, 1, 2].map((line) => phasorAt(out, 3 + line)).reduce(plus))).toBeLessThan(1e-9);
        for (const line of [1, 2]) expect(magnitudeAt(volts, 3 + line)).toBeCloseTo(magnitudeAt(volts, 3), 8);
      }),
    );
  });

  test('the constant currents under a ceiling come to it exactly, or are left as they are', () => {
    fc.assert(
      fc.property(trees, fc.double({ min: 5, max: 200, noNaN: true }), ({ buses, draws }, limit) => {
        const only = { ...draws, power: noDraws(buses.length).power };
        const free = solve(buses, only);
        const ceiling = Float64Array.from(draws.ceiling);
        ceiling[0] = limit;
        const held = solve(buses, { ...only, ceiling });
        fc.pre(free.unsettled.length === 0 && held.unsettled.length === 0);
        const worst = ({ out }: Solved): number => Math.max(...[0, 1, 2].map((line) => magnitudeAt(out, line)));
        if (held.share[0]! < 1) expect(worst(held)).toBeCloseTo(limit, 6);
        else expect(worst(held)).toBeLessThanOrEqual(limit * (1 + 1e-9));
        expect(held.share[0] === 1).toBe(worst(free) <= limit);
      }),
    );
  });

  test('a load past the greatest power of its feeder is said to be unsettled, in numbers that are numbers', () => {
    const near = { ...plain, parent: 0, nominal: PRIMARY, impedance: uncoupled({ re: 0.5, im: 0.2 }) };
    const other = { ...source };
    const fine = { ...near, parent: 2 };
    const draws = noDraws(4);
    addDraw(draws.power, 1, 'ABC', 1e7, 0);
    addDraw(draws.power, 3, 'ABC', 1e4, 0);
    const solved = solve([source, near, other, fine], draws);
    expect(solved.unsettled).toEqual([0]);
    for (const list of [solved.volts, solved.out, solved.into]) expect(list.every(Number.isFinite)).toBe(true);
    expect(magnitudeAt(solved.volts, 3)).toBeCloseTo(PRIMARY, 9);
    const alone = solve([source, { ...near }], { ...noDraws(2), power: draws.power.slice(28) });
    expect(magnitudeAt(solved.volts, 9)).toBeCloseTo(magnitudeAt(alone.volts, 3), 9);
  });

  test('a bus before its parent is a mistake of the caller', () => {
    expect(() => solve([{ ...source, parent: 0 }], noDraws(1))).toThrow(RangeError);
  });
});
