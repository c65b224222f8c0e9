import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDraw, noDraws } from '../../../calc/supply/load-flow/draws.ts';
import { phaseMatrix } from '../../../calc/supply/load-flow/phase-matrix.ts';
import { minus, type Phasor, phasorAt, polar } from '../../../calc/supply/load-flow/phasor.ts';
import { type Bus, solve } from '../../../calc/supply/load-flow/sweep.ts';
import { type Connection, threePhaseWinding } from '../../../calc/supply/tree/windings.ts';

type Pair = [number, number];
type Triple = [number, number, number];
interface Line {
  feet: number;
  ohmPerMile: Pair[][];
}
interface Row {
  id: string;
  connection: string;
  case: string;
  primaryVolts: number;
  secondaryVolts: number;
  transformer: { kva: number; rPercent: number; xPercent: number };
  line1: Line;
  line2: Line;
  load: { kw: Triple; powerFactor: Triple; connection: string };
  reported: string;
  volts: Record<'2' | '3' | '4', [Triple, Triple]>;
  tolerance: { volts: number; degrees: number };
}

const { rows } = JSON.parse(readFileSync(new URL('ieee-4-node.json', import.meta.url), 'utf8')) as { rows: Row[] };

const CONNECTIONS: Record<string, Connection> = {
  'grounded wye - grounded wye': 'wye-wye',
  'delta - grounded wye': 'delta-wye-lag',
  'delta - delta': 'delta-delta',
};

const lineMatrix = ({ feet, ohmPerMile }: Line) =>
  phaseMatrix((i, j) => {
    const [re, im] = ohmPerMile[i]![j]!;
    return { re: (re * feet) / 5280, im: (im * feet) / 5280 };
  });

/** Nodes 1 to 4 of the test feeder as buses 0 to 3. */
function busesOf(row: Row): Bus[] {
  const primary = row.primaryVolts / Math.sqrt(3);
  const secondary = row.secondaryVolts / Math.sqrt(3);
  const percent = row.secondaryVolts ** 2 / (row.transformer.kva * 1000) / 100;
  const winding = threePhaseWinding(CONNECTIONS[row.connection]!, row.secondaryVolts / row.primaryVolts, {
    re: row.transformer.rPercent * percent,
    im: row.transformer.xPercent * percent,
  });
  const held = new Float64Array([0, -120, 120].flatMap((angle) => Object.values(polar(primary, angle))));
  const line = { held: null, ratio: null, back: null };
  return [
    { parent: -1, nominal: primary, held, ratio: null, back: null, impedance: null },
    { ...line, parent: 0, nominal: primary, impedance: lineMatrix(row.line1) },
    { parent: 1, nominal: secondary, held: null, ...winding },
    { ...line, parent: 2, nominal: secondary, impedance: lineMatrix(row.line2) },
  ];
}

function reported(row: Row, volts: Float64Array, node: 2 | 3 | 4): Phasor[] {
  const phasors = [0, 1, 2].map((line) => phasorAt(volts, 3 * (node - 1) + line));
  const toLine = row.reported === 'all line to line' || (node === 2 && row.reported.startsWith('node 2 line to line'));
  return toLine ? phasors.map((v, i) => minus(v, phasors[(i + 1) % 3]!)) : phasors;
}

const degreesOf = ({ re, im }: Phasor): number => (Math.atan2(im, re) * 180) / Math.PI;
const turnBetween = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

describe('published voltages of the IEEE 4 node test feeder', () => {
  test.each(rows)('$id: $connection, $case', (row) => {
    const draws = noDraws(4);
    const words = row.load.connection.startsWith('delta') ? (['AB', 'BC', 'CA'] as const) : (['A', 'B', 'C'] as const);
    words.forEach((lines, i) => {
      const watts = row.load.kw[i]! * 1000;
      addDraw(draws.power, 3, lines, watts, watts * Math.tan(Math.acos(row.load.powerFactor[i]!)));
    });
    const solved = solve(busesOf(row), draws);
    expect(solved.unsettled).toEqual([]);
    for (const node of [2, 3, 4] as const) {
      const [volts, degrees] = row.volts[node];
      reported(row, solved.volts, node).forEach((v, i) => {
        expect(Math.abs(Math.hypot(v.re, v.im) - volts[i]!)).toBeLessThanOrEqual(row.tolerance.volts);
        expect(turnBetween(degreesOf(v), degrees[i]!)).toBeLessThanOrEqual(row.tolerance.degrees);
      });
    }
  });

  test('all five published cases are held', () => {
    expect(rows.map(({ id }) => id)).toEqual(['ieee4-01', 'ieee4-02', 'ieee4-03', 'ieee4-04', 'ieee4-06']);
  });
});
