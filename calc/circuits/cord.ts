import { ambientFactor } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { resistance } from '../tables/conductor-of.ts';
import type { CordRow } from '../tables/conductor-rows.ts';
import { cited } from '../tables/sections.ts';
import { compareSizes, isConductorSize } from '../tables/sizes.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { estimatedDrop } from './line-drop.ts';

export interface CordInput {
  readonly amps: number;
  /** Line to line at the box. */
  readonly volts: number;
  readonly phases: 1 | 3;
  /** Ft. */
  readonly length: number;
  /** Size to look at; the smallest that carries the amperes where it is not given. */
  readonly size?: string | undefined;
  /** That of the tables, 30 °C, where it is not given. */
  readonly ambientC?: number | undefined;
}

export interface SizedCord {
  readonly size: string;
  /** Of the size at the ambient, A. */
  readonly ampacity: number;
  readonly fits: boolean;
  readonly dropVolts: number;
  readonly dropPercent: number;
}

/** Amperes of a size at the ambient of the tables: of flexible cord, or from 8 AWG on of power cable where that has more. */
function tableAmps({ cords }: CodeTables, size: string, phases: 1 | 3): number | null {
  const of = (rows: readonly CordRow[]): number | null =>
    rows.find((row) => row.size === size)?.[phases === 3 ? 'three' : 'two'] ?? null;
  const cable = compareSizes(size, '8') < 0 ? null : of(cords.power);
  const cord = of(cords.rows);
  return cable === null ? cord : Math.max(cable, cord ?? 0);
}

/** Sizes of cord that have a resistance in the tables too, from the smallest. */
const sizesOf = ({ cords, conductors }: CodeTables): readonly string[] =>
  [...new Set([...cords.rows, ...cords.power].map(({ size }) => size))]
    .filter((size) => isConductorSize(size) && conductors.rows.some((row) => row.size === size))
    .sort(compareSizes);

/**
 * The cord of a charger by the tables for flexible cords and power cables, copper, its conductors those of its phases: the
 * smallest size that carries its amperes, and the volts that it drops of itself. Null where no size of the tables does, or
 * they lack the one that is given. The listing of the equipment rules over it.
 * @example
 * // NEC 2023 Table 400.5(A)(2), 60 C column: 8 AWG carries 55 A; Table 8: 2 x 32 A x 25 ft x 0.778 ohm / 1,000 ft
 * cord(NEC, { amps: 32, volts: 208, phases: 1, length: 25 }) // { size: '8', ampacity: 55, fits: true, dropVolts: 1.2448, dropPercent: 0.598 }
 */
export function cord(tables: CodeTables, input: CordInput, tell: Tell = SILENT): SizedCord | null {
  const { amps, volts, phases, length, ambientC = tables.cords.ambientC } = input;
  const factor = ambientFactor(tables, tables.cords.column, ambientC);
  const carries = (one: string): number => (tableAmps(tables, one, phases) ?? 0) * factor;
  const sizes = sizesOf(tables);
  const size = input.size ?? sizes.find((one) => carries(one) >= amps * (1 - 1e-9));
  if (size === undefined || !sizes.includes(size) || tableAmps(tables, size, phases) === null) return null;
  const ampacity = carries(size);
  tell(() => ({
    find: 'cord',
    formula: `${input.size === undefined ? 'smallest size whose' : 'of the size,'} amperes with ${phases === 3 ? 'three' : 'two'} conductors that carry current x ambient factor`,
    values: { amperes: measured(amps, 'A'), size, 'ambient factor': factor },
    result: ampacity,
    unit: 'A',
    source: `${cited(tables, 'chargerCord')}, ${tables.cords.source}`,
  }));
  const ohms = resistance(tables, size, 'copper');
  const { dropVolts, dropPercent } = estimatedDrop({
    phases,
    volts,
    amps,
    r: (ohms * length) / 1000,
    x: 0,
    powerFactor: 1,
  });
  tell(() => ({
    find: 'drop of the cord',
    formula: `${phases === 3 ? 'sqrt 3' : '2'} x amperes x length x resistance`,
    values: {
      amperes: measured(amps, 'A'),
      length: measured(length, 'ft'),
      resistance: measured(ohms, 'ohm per 1000 ft'),
    },
    result: dropVolts,
    unit: 'V',
    source: tables.conductors.source,
  }));
  return { size, ampacity, fits: amps <= ampacity * (1 + 1e-9), dropVolts, dropPercent };
}
