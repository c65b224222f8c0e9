import * as v from 'valibot';
import { METAL_SPELLINGS, METHODS, metalOf } from '../../../routing/site/schema/vocabulary.ts';
import { findInsulation } from '../../tables/ampacity-of.ts';
import { BARE, FIXTURE_WIRE } from '../../tables/conductor-of.ts';
import { DEFAULT_TABLES } from '../../tables/editions.ts';
import { isConductorSize, isTradeSize, tradeSizeOf } from '../../tables/sizes.ts';
import { RACEWAY_KINDS, TEMPERATURE_COLUMNS, type TemperatureColumn } from '../../tables/table.ts';

/** The fields that calculations share, each read strictly: what the schema lets through the tables know. */

/** Edition that single calculations go by. */
export const TABLES = DEFAULT_TABLES;

// JSON.parse turns 1e999 into Infinity, and valibot's number() lets that through.
export const finite = v.pipe(v.number(), v.finite());
export const positiveFigure = v.pipe(finite, v.gtValue(0));
export const nonNegativeFigure = v.pipe(finite, v.minValue(0));
export const wholeNumber = v.pipe(finite, v.integer(), v.minValue(0));
export const wholeFigure = v.pipe(finite, v.integer(), v.minValue(1));
export const powerFactor = v.pipe(finite, v.gtValue(0), v.maxValue(1));

export const phases = v.picklist([1, 3]);
export const metal = v.pipe(v.picklist(METAL_SPELLINGS), v.transform(metalOf));
export const method = v.picklist(METHODS);
export const racewayKind = v.picklist(RACEWAY_KINDS);
export const terminalC = v.picklist<readonly TemperatureColumn[]>(TEMPERATURE_COLUMNS);

/** `"8"`, `8`, `"1/0"`, `"250"`, `250`. */
export const size = v.pipe(
  v.union([v.string(), v.number()]),
  v.transform((given) => String(given).trim()),
  v.check(
    isConductorSize,
    ({ input }) => `expected a conductor size such as "8", "1/0" or "250", got ${JSON.stringify(input)}`,
  ),
);

/** `"1-1/4"`, `"1 1/4"` or 1.25. */
export const tradeSize = v.pipe(
  v.union([v.string(), v.number()]),
  v.transform((given) => {
    if (typeof given === 'number') return tradeSizeOf(given) ?? String(given);
    const text = given.trim().replace(/^(\d+)[\s-]+(\d+\/\d+)$/, '$1-$2');
    return isTradeSize(text) ? text : (tradeSizeOf(text === '' ? Number.NaN : Number(text)) ?? text);
  }),
  v.check(isTradeSize, ({ input }) => `expected a trade size such as "3/4" or "1-1/4", got ${JSON.stringify(input)}`),
);

/** An insulation that has an ampacity column. */
export const insulation = v.pipe(
  v.string(),
  v.check(
    (given) => findInsulation(TABLES, given) !== undefined,
    ({ input }) =>
      `expected one of ${TABLES.insulations.rows.map(({ name }) => name).join(', ')}, got ${JSON.stringify(input)}`,
  ),
);

const FIXTURE_WIRES: readonly string[] = [FIXTURE_WIRE, 'TFN', 'TFFN'];

/** Insulations that come with an outer covering and without, of two sizes. */
const TWO_SIZES = /^(RHH|RHW|RHW-2)$/;
const COVERED = /^(?:RHH|RHW|RHW-2) (with|without) covering$/;
const COVERINGS: readonly string[] = ['RHW with covering', 'RHW without covering'];

/**
 * An insulation that takes up room in a raceway: also `"bare"`, `"TFN"` and `"TFFN"`. RHH, RHW and RHW-2 say whether they
 * have their covering: `"RHW-2 with covering"`, `"RHW-2 without covering"`.
 */
export const covering = v.pipe(
  v.string(),
  v.check(
    (given) => !TWO_SIZES.test(given),
    ({ input }) =>
      `${input} comes with an outer covering and without, and they are of two sizes: say "${input} with covering" or "${input} without covering"`,
  ),
  v.transform((given) => given.replace(COVERED, 'RHW $1 covering')),
  v.transform((given) => (FIXTURE_WIRES.includes(given) ? FIXTURE_WIRE : given)),
  v.check(
    (given) =>
      TWO_SIZES.test(given) ||
      given === BARE ||
      given === FIXTURE_WIRE ||
      COVERINGS.includes(given) ||
      findInsulation(TABLES, given) !== undefined,
    ({ input }) =>
      `expected an insulation such as "THWN-2" or "XHHW-2", "TFFN" or "bare", got ${JSON.stringify(input)}`,
  ),
);

export const conductorsOfSize = v.strictObject({ size, count: wholeFigure });
