import type { CodeTables } from '../tables/code-tables.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { lineOhmsPerFoot } from './drop-conductor.ts';
import { lineFactor, sineOf } from './line-drop.ts';
import type { DropCircuit } from './voltage-drop.ts';

/**
 * Greatest one-way length, ft, at which the drop is `limitPercent`: the inverse of `voltageDrop`, by the same method.
 * Null where no length drops so far: no current flows, or the volts at the load never fall to it before they rise again.
 * @example
 * // Hand-worked by NEC 2023 Chapter 9 Table 8: 3% of 240 V is 7.2 V, over 2 x 32 A x 0.778 ohm per 1,000 ft
 * longestRun(NEC, {
 *   phases: 1,
 *   volts: 240,
 *   amps: 32,
 *   conductor: { size: '8', metal: 'copper' },
 *   method: 'resistance',
 *   limitPercent: 3,
 * }) // 144.6
 */
export function longestRun(
  tables: CodeTables,
  input: DropCircuit & { readonly limitPercent: number },
  tell: Tell = SILENT,
): number | null {
  const { phases, volts, amps, conductor, method, limitPercent } = input;
  if (!(volts > 0)) throw new RangeError(`volts must be over 0, got ${volts}`);
  const { r, x, powerFactor } = lineOhmsPerFoot(tables, conductor, input, tell);
  const k = lineFactor(phases) * amps;
  const perFoot = k * (r * powerFactor + x * sineOf(powerFactor));
  const limitVolts = (volts * limitPercent) / 100;
  const length =
    method === 'exact'
      ? smallerRoot(k * k * (r * r + x * x), volts * perFoot, volts, limitVolts)
      : limitVolts / perFoot;
  if (!Number.isFinite(length)) return null;
  tell(() => ({
    find: 'longest run',
    formula:
      method === 'exact'
        ? 'the shortest length at which |V - k x I x (R + jX) x length| is |V| - allowed drop: a quadratic in the length'
        : 'allowed drop / drop per foot',
    values: {
      'allowed drop': `${limitPercent}% of ${measured(volts, 'V')} = ${measured(limitVolts, 'V')}`,
      'drop per foot': measured(perFoot, 'V'),
      k: phases === 3 ? 'sqrt 3' : '2, there and back',
      amperes: measured(amps, 'A'),
    },
    result: length,
    unit: 'ft',
    source: method === 'impedance' ? `${tables.impedances.source} Note 2` : "Ohm's law",
  }));
  return length;
}

/**
 * Smaller root of a L² - 2 b L + c = 0, with c = V² - (V - drop)² written so that a small drop loses no figures; the root
 * taken as c / (b + sqrt) for the same reason. NaN where there is none.
 */
function smallerRoot(a: number, b: number, volts: number, drop: number): number {
  const c = drop * (2 * volts - drop);
  return c / (b + Math.sqrt(b * b - a * c));
}
