import { clockOf, DAY } from '../clock.ts';
import type { DayCar } from '../day-input.ts';
import type { SharePoints, Tables } from './population-tables.ts';

/**
 * Numbers from a seed, 0 up to but not including 1, the same on every machine: a counter that is mixed by two
 * multiplications and three shifts, all in 32 bits.
 */
export function seeded(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x9e3779b9) >>> 0;
    let z = s;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 4294967296;
  };
}

/** The value at u of a table of quantiles, straight between its points. */
function between(table: SharePoints, u: number): number {
  let j = 0;
  while (j + 2 < table.length && table[j + 1]![0] <= u) j++;
  const [[p, v], [nextP, nextV]] = [table[j]!, table[j + 1] ?? table[j]!];
  return nextP === p ? v : v + (nextV - v) * ((u - p) / (nextP - p));
}

/** The value of the last point at or before u. */
function stepped(table: SharePoints, u: number): number {
  let value = table[0]![1];
  for (const [p, v] of table) if (p <= u) value = v;
  return value;
}

/** Cars from a seed: four numbers each, for arrival, stay, energy and the car's own most. */
export function carsFrom(tables: Tables, cars: number, seed: number): DayCar[] {
  const next = seeded(seed);
  return Array.from({ length: cars }, () => {
    const [u1, u2, u3, u4] = [next(), next(), next(), next()];
    const arrive = Math.floor(between(tables.arrive, u1) + 0.5);
    const isLate = tables.split !== undefined && tables.lateStay !== undefined && arrive >= tables.split;
    const stay = Math.floor(between(isLate ? tables.lateStay! : tables.stay, u2) + 0.5);
    return {
      arrive: clockOf(arrive % DAY),
      leave: clockOf((arrive + stay) % DAY),
      kwh: Math.floor(10 * between(tables.kwh, u3) + 0.5) / 10,
      maxKw: stepped(tables.maxKw, u4),
    };
  });
}
