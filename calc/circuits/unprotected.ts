import type { Metal, TapCondition } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import type { UnprotectedRow } from '../tables/conductor-rows.ts';
import { cited } from '../tables/sections.ts';
import { compareSizes } from '../tables/sizes.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/** Conductors that have no overcurrent device where they start. */
export interface UnprotectedInput {
  readonly of: UnprotectedRow['of'];
  /** Of all sets, where they lie. */
  readonly ampacity: number;
  /** From where they start to the device that they end in, ft; null where it is not known. */
  readonly length: number | null;
  /** The device that they end in, or several together, A; null where it is not known, and of what ends in none. */
  readonly deviceAmps: number | null;
  /** The device ahead, A at its own volts; null where it is not known. */
  readonly aheadAmps: number | null;
  /** Volts of the device ahead over those of the conductors; 1 for a tap. */
  readonly ratio: number;
  /** True where they lie outdoors all the way but for their end. */
  readonly outdoors: boolean;
  /** What is said of them that no drawing shows. */
  readonly condition?: TapCondition;
  /** How far they run on the level, ft; null where it is not known. Asked in a high bay. */
  readonly level?: number | null;
  /** Of one set. Asked in a high bay. */
  readonly conductor?: { readonly size: string; readonly metal: Metal };
  /** Rated secondary current of the transformer, A; null where it is not known. Asked in an industrial installation. */
  readonly ratedAmps?: number | null;
  /** Feet of the tap ahead of a transformer that is not protected at its ampacity; null where it is not known. */
  readonly primaryLength?: number | null;
}

/** One condition of the rule that was held against the conductors. */
export interface Ask {
  readonly section: string;
  readonly holds: boolean;
  readonly says: string;
  /** What is compared: `value` is to be at most `limit`. */
  readonly what: 'length' | 'device' | 'ahead' | 'level' | 'size' | 'rated';
  readonly value: number;
  readonly limit: number;
}

export interface Unprotected {
  readonly ok: boolean;
  readonly asks: readonly Ask[];
}

const SAME = 1e-9;

/**
 * Whether conductors may start without an overcurrent device: by the first of the code's rules, the shortest length first,
 * whose conditions all hold; where none does, by the one for their length and place. The device that they end in is no
 * larger than what they carry: the next standard rating up is not for them. What is not known is not asked.
 * @example
 * // NEC 2023 240.21(C)(6): 25 ft, a third of 125 A x 480 / 208, which is 96 A; 4/0 copper has 230 A at 75 °C
 * unprotected(NEC, {
 *   of: 'secondary',
 *   ampacity: 230,
 *   length: 20,
 *   deviceAmps: 225,
 *   aheadAmps: 125,
 *   ratio: 480 / 208,
 *   outdoors: false,
 * }).ok // true
 */
export function unprotected(tables: CodeTables, input: UnprotectedInput, tell: Tell = SILENT): Unprotected {
  const rows = tables.unprotected.rows.filter(
    ({ of, outdoors, condition }) =>
      of === input.of && (!outdoors || input.outdoors) && (condition === undefined || condition === input.condition),
  );
  const tried = rows.map((row) => asksOf(tables, row, input));
  const asks = tried.find(allHold) ?? tried[nearest(rows, input)]!;
  for (const { section, says, holds } of asks)
    tell(() => ({
      find: `asked by ${section}`,
      formula: says,
      values: {
        ampacity: measured(input.ampacity, 'A'),
        ...(input.deviceAmps === null ? {} : { 'device at the end': measured(input.deviceAmps, 'A') }),
        ...(input.length === null ? {} : { length: measured(input.length, 'ft') }),
        ...(input.aheadAmps === null ? {} : { 'device ahead': measured(input.aheadAmps, 'A') }),
        'ratio of volts': Number(input.ratio.toPrecision(6)),
      },
      result: holds ? 'holds' : 'does not hold',
      source: tables.unprotected.source,
    }));
  return { ok: allHold(asks), asks };
}

const allHold = (asks: readonly Ask[]): boolean => asks.every(({ holds }) => holds);

/** Place of the rule that comes nearest: the one whose condition is said, else the shortest that they are not too long for, else the last. */
function nearest(rows: readonly UnprotectedRow[], { length }: UnprotectedInput): number {
  const said = rows.findIndex(({ condition }) => condition !== undefined);
  if (said >= 0) return said;
  const fits = rows.findIndex(({ lengthFt }) => lengthFt === null || (length ?? 0) <= lengthFt * (1 + SAME));
  return fits < 0 ? rows.length - 1 : fits;
}

function asksOf(tables: CodeTables, row: UnprotectedRow, input: UnprotectedInput): readonly Ask[] {
  const { section, lengthFt, share, of } = row;
  const { ampacity, length, deviceAmps, aheadAmps, ratio } = input;
  const asks: Ask[] = [];
  const ask = (what: Ask['what'], value: number, limit: number, says: string): void => {
    asks.push({ section, holds: value <= limit * (1 + SAME), says, what, value, limit });
  };
  const ahead = row.withPrimary === true ? (input.primaryLength ?? null) : 0;
  if (lengthFt !== null && length !== null && ahead !== null) {
    const both = ahead === 0 ? '' : ` with ${measured(ahead, 'ft')} of the tap ahead of the transformer`;
    ask('length', length + ahead, lengthFt, `${measured(length, 'ft')} long${both}, ${lengthFt} ft at most`);
  }
  const { level = null } = input;
  if (row.levelFt !== undefined && level !== null)
    ask('level', level, row.levelFt, `${measured(level, 'ft')} of it on the level, ${row.levelFt} ft at most`);
  if (row.leastSize !== undefined && input.conductor !== undefined) {
    const { size, metal } = input.conductor;
    const least = row.leastSize[metal];
    const short = compareSizes(size, least) < 0;
    ask('size', short ? 1 : 0, 0, `of ${size} ${metal}, ${least} or larger`);
  }
  if (share !== null && aheadAmps !== null) {
    const least = share * ratio * aheadAmps;
    const counted =
      of === 'tap' || of === 'transformer tap'
        ? `${measured(aheadAmps, 'A')} ahead of them`
        : `${measured(aheadAmps, 'A')} x ${Number(ratio.toPrecision(4))} of the ${of === 'secondary' ? 'primary' : 'feeder that is tapped'}`;
    const part = `1/${Math.round(1 / share)}`;
    ask('ahead', least, ampacity, `carry ${measured(ampacity, 'A')}, at least ${part} of the ${counted}`);
  }
  const { ratedAmps = null } = input;
  if (row.ratedCurrent === true && ratedAmps !== null)
    ask(
      'rated',
      ratedAmps,
      ampacity,
      `carry ${measured(ampacity, 'A')}, at least the ${measured(ratedAmps, 'A')} of the transformer`,
    );
  if (deviceAmps !== null)
    ask(
      'device',
      deviceAmps,
      ampacity,
      `end in ${measured(deviceAmps, 'A')}, at most the ${measured(ampacity, 'A')} that they carry; not the next rating up of ${cited(tables, 'nextRating')}`,
    );
  return asks;
}
