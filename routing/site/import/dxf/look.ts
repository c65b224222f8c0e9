import type { LineLook } from '../imported.ts';
import { indexColor } from './color.ts';
import { nameKey, plainName } from './names.ts';
import { asNumber, type DxfRecord, flagsOf, numberOf, numbersOf, recordText } from './records.ts';

/** What an entity takes from its layer, or from the block that it is put in with. */
export interface DxfLook {
  readonly color: number | null;
  /** Millimetres; 0 where nothing is said. */
  readonly weight: number;
  readonly dash: readonly number[];
}

export interface ImportedLayer {
  readonly name: string;
  /** Nothing on it is drawn; what is put in on it may have parts on other layers. */
  readonly off: boolean;
  /** Nothing on it is drawn, nor what is put in on it. */
  readonly frozen: boolean;
  readonly look: DxfLook;
}

const PLAIN: DxfLook = { color: null, weight: 0, dash: [] };
const BY_BLOCK = 0;
const BY_LAYER = 256;
const FROZEN = 1;
/** Codes of line type, color and weight. */
const OF_ITS_OWN: ReadonlySet<number> = new Set([6, 62, 370, 420]);

export interface Looks {
  readonly layer: (name: string) => ImportedLayer;
  /** How an entity looks on a layer, within a block that looks so. */
  readonly of: (record: DxfRecord, layer: ImportedLayer, block: DxfLook) => DxfLook;
  /** One object for all lines that look alike. */
  readonly line: (look: DxfLook, width: number, filled: boolean) => LineLook;
}

/** Layers, colors, weights and line types of a drawing; `scale` is that of its line types ($LTSCALE). */
export function looksOf(tables: readonly DxfRecord[], scale: number): Looks {
  const dashes = new Map<string, readonly number[]>();
  for (const record of tables)
    if (record.kind === 'LTYPE') dashes.set(nameKey(recordText(record, 2) ?? ''), dashOf(record, scale));
  const layers = new Map<string, ImportedLayer>();
  for (const record of tables) {
    if (record.kind !== 'LAYER') continue;
    const name = plainName(recordText(record, 2) ?? '');
    const color = numberOf(record, 62, 7);
    layers.set(nameKey(name), {
      name,
      off: color < 0,
      frozen: (flagsOf(record) & FROZEN) === FROZEN,
      look: {
        color: trueColor(record) ?? indexColor(Math.abs(color)),
        weight: weightOf(numberOf(record, 370, -3)),
        dash: dashes.get(nameKey(recordText(record, 6) ?? '')) ?? [],
      },
    });
  }
  const lines = new Map<string, LineLook>();
  const plain = new WeakMap<DxfLook, LineLook>();
  const byName = new Map<string, ImportedLayer>();
  const line = ({ color, weight, dash }: DxfLook, width: number, filled: boolean): LineLook => {
    const key = `${color} ${weight} ${width} ${filled} ${dash.join(' ')}`;
    const known = lines.get(key) ?? { color, weight, width, dash, filled };
    lines.set(key, known);
    return known;
  };
  return {
    layer: (name) => {
      const met = byName.get(name);
      if (met) return met;
      const key = nameKey(name);
      const known = layers.get(key) ?? { name: plainName(name), off: false, frozen: false, look: PLAIN };
      layers.set(key, known);
      byName.set(name, known);
      return known;
    },
    of: (record, layer, block) => {
      // Most take all from their layer.
      if (!record.codes.some((code) => OF_ITS_OWN.has(code))) return layer.look;
      const index = numberOf(record, 62, BY_LAYER);
      const weight = numberOf(record, 370, -1);
      const type = nameKey(recordText(record, 6) ?? 'bylayer');
      return {
        color:
          trueColor(record) ??
          (index === BY_LAYER ? layer.look.color : index === BY_BLOCK ? block.color : indexColor(index)),
        weight: weight === -1 ? layer.look.weight : weight === -2 ? block.weight : weightOf(weight),
        dash: type === 'bylayer' ? layer.look.dash : type === 'byblock' ? block.dash : (dashes.get(type) ?? []),
      };
    },
    line: (look, width, filled) => {
      if (width > 0 || filled) return line(look, width, filled);
      const known = plain.get(look) ?? line(look, 0, false);
      plain.set(look, known);
      return known;
    },
  };
}

export const PLAIN_LOOK = PLAIN;

function trueColor(record: DxfRecord): number | null {
  const value = recordText(record, 420);
  return value === undefined ? null : asNumber(value) & 0xffffff;
}

/** Hundredths of a millimetre as millimetres; what is below zero says where else to look, or nothing. */
const weightOf = (hundredths: number): number => (hundredths > 0 && hundredths <= 211 ? hundredths / 100 : 0);

/** Dashes (49) above zero, gaps below, dots at zero; in turn, beginning with a dash. None where it is no such row. */
function dashOf(record: DxfRecord, scale: number): readonly number[] {
  const parts = numbersOf(record, 49).map((part) => part * scale);
  const sound = parts.length >= 2 && parts.length <= 12 && parts.every(Number.isFinite) && parts[0]! >= 0;
  const inTurn = parts.every((part, i) => (i % 2 === 0 ? part >= 0 : part < 0));
  return sound && inTurn && parts.length % 2 === 0 ? parts.map(Math.abs) : [];
}
