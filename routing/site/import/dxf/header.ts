import { METRES_PER_FOOT } from '../../numbers/units.ts';
import { asNumber, type DxfRecord } from './records.ts';

/** Feet in a unit by $INSUNITS and its name (open DXF reference, header variables); a US survey foot is 1200/3937 m. */
const UNITS: ReadonlyMap<number, readonly [feet: number, name: string]> = new Map([
  [1, [1 / 12, 'inches']],
  [2, [1, 'feet']],
  [3, [5280, 'miles']],
  [4, [0.001 / METRES_PER_FOOT, 'millimeters']],
  [5, [0.01 / METRES_PER_FOOT, 'centimeters']],
  [6, [1 / METRES_PER_FOOT, 'meters']],
  [7, [1000 / METRES_PER_FOOT, 'kilometers']],
  [8, [1e-6 / 12, 'microinches']],
  [9, [0.001 / 12, 'mils']],
  [10, [3, 'yards']],
  [14, [0.1 / METRES_PER_FOOT, 'decimeters']],
  [21, [1200 / 3937 / METRES_PER_FOOT, 'US survey feet']],
]);
const ENGINEERING = 3;
const ARCHITECTURAL = 4;

export interface DrawingUnit {
  /** Feet in a unit; null where the file does not say. */
  readonly feetPerUnit: number | null;
  /** "in inches, by its header". */
  readonly says: string;
}

/** A variable of the header as a number; NaN where it has none. */
export function headerNumber(header: DxfRecord | undefined, name: string, code?: number): number {
  const at = header?.values.indexOf(name) ?? -1;
  if (!header || at < 0 || header.codes[at] !== 9) return Number.NaN;
  for (let i = at + 1; i < header.codes.length && header.codes[i] !== 9; i++)
    if (code === undefined || header.codes[i] === code) return asNumber(header.values[i]!);
  return Number.NaN;
}

/**
 * The unit of a drawing. Lengths shown in feet and inches ($LUNITS 3, 4) are inches whatever $INSUNITS says: that
 * variable is often left as a template had it. Without either, $MEASUREMENT tells inches and feet from metric.
 */
export function unitOf(header: DxfRecord | undefined): DrawingUnit {
  const named = UNITS.get(headerNumber(header, '$INSUNITS'));
  const shown = headerNumber(header, '$LUNITS');
  if (shown === ENGINEERING || shown === ARCHITECTURAL) {
    const other = named && named[1] !== 'inches' ? `, though its header also names ${named[1]}` : '';
    return { feetPerUnit: 1 / 12, says: `in inches, for it shows its lengths in feet and inches${other}` };
  }
  if (named) return { feetPerUnit: named[0], says: `in ${named[1]}, by its header` };
  const measurement = headerNumber(header, '$MEASUREMENT');
  const hint =
    measurement === 1
      ? ', only that they are metric'
      : measurement === 0
        ? ', only that they are of feet and inches'
        : '';
  return { feetPerUnit: null, says: `it does not say its units${hint}` };
}

/** Farthest that a chord lies off its curve, feet. */
const SAGITTA_FT = 0.01;
/** Where no unit is told, a share of what the header says the drawing covers. */
const SAGITTA_SHARE = 1e-5;

/** Farthest that a chord lies off its curve, in units of the drawing. */
export function sagittaOf(header: DxfRecord | undefined, feetPerUnit: number | null): number {
  if (feetPerUnit !== null) return SAGITTA_FT / feetPerUnit;
  const side = (code: number): number => headerNumber(header, '$EXTMAX', code) - headerNumber(header, '$EXTMIN', code);
  const size = Math.max(side(10), side(20));
  return size > 0 && size < 1e9 ? size * SAGITTA_SHARE : SAGITTA_FT;
}
