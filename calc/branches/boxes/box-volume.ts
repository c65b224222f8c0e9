import type { CodeTables } from '../../tables/code-tables.ts';
import { indexed } from '../../tables/indexed.ts';
import type { BoxAllowanceRow } from '../../tables/raceway-rows.ts';
import { cited } from '../../tables/sections.ts';
import { compareSizes } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

export interface Counted {
  readonly size: string;
  readonly count: number;
}

export interface BoxInput {
  /** Conductors that end, are spliced or pass through, each once; pigtails that stay in the box do not count. */
  readonly conductors: readonly Counted[];
  /** Device yokes, by the largest conductor on each. */
  readonly devices?: readonly Counted[] | undefined;
  /** Clamps inside the box. */
  readonly clamps?: boolean | undefined;
  /** Equipment grounding conductors. */
  readonly groundings?: readonly Counted[] | undefined;
}

const allowanceRow = indexed<BoxAllowanceRow>((row) => row.size);

/** True for conductors that 314.16 sizes boxes for, to 6 AWG; 4 AWG and larger are a pull box's. */
export const isBoxConductor = (tables: CodeTables, size: string): boolean =>
  allowanceRow(tables.boxAllowances.rows, size) !== undefined;

/**
 * Least volume of a box, cubic inches (314.16(B)). RangeError for a conductor larger than 6 AWG.
 * @example
 * // NEC 2023 Table 314.16(B)(1): 3 in³ for 8 AWG, 2.5 in³ for 10 AWG; 4 x 3 + 2.5, the two grounds counting as one
 * boxVolume(NEC, { conductors: [{ size: '8', count: 4 }], groundings: [{ size: '10', count: 2 }] }).volume // 14.5
 */
export function boxVolume(tables: CodeTables, input: BoxInput, tell: Tell = SILENT): { readonly volume: number } {
  const { conductors, devices = [], clamps = false, groundings = [] } = input;
  const allowances = tables.boxAllowances;
  const each = (size: string): number => {
    const row = allowanceRow(allowances.rows, size);
    if (row === undefined) throw new RangeError(`${cited(tables, 'boxVolume')} has no volume for size ${size}`);
    return row.volume;
  };
  const sum = (parts: readonly Counted[], times: number): number =>
    parts.reduce((total, { size, count }) => total + times * count * each(size), 0);
  const largestOf = (parts: readonly Counted[]): string | undefined =>
    parts
      .filter(({ count }) => count > 0)
      .map(({ size }) => size)
      .sort(compareSizes)
      .at(-1);

  const largest = largestOf([...conductors, ...groundings]);
  const largestGrounding = largestOf(groundings);
  const groundingCount = groundings.reduce((total, { count }) => total + count, 0);
  const shares = 1 + allowances.groundingBeyond * Math.max(0, groundingCount - allowances.groundings);
  const parts = {
    conductors: sum(conductors, 1),
    devices: sum(devices, allowances.yoke),
    clamps: clamps && largest !== undefined ? allowances.clamps * each(largest) : 0,
    groundings: largestGrounding === undefined ? 0 : shares * each(largestGrounding),
  };
  const volume = parts.conductors + parts.devices + parts.clamps + parts.groundings;
  tell(() => ({
    find: 'box volume',
    formula:
      'one allowance per conductor + two per device yoke + one for all clamps by the largest conductor + one for up to four grounding conductors, a quarter for each more, by the largest of them',
    values: Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, measured(part, 'in³')])),
    result: volume,
    unit: 'in³',
    source: allowances.source,
  }));
  return { volume };
}
