import { BUDGET } from '../../imported.ts';
import { asNumber, type DxfRecord, numberOf, pointsOf } from '../records.ts';
import { raised, type TextLines } from './text-lines.ts';
import { brokenWords, formattedLines, NEW_COLUMN } from './words.ts';

/** From line to line, heights (open DXF reference: 5/3). */
const LINE_STEP = 5 / 3;

interface Columns {
  readonly width: number;
  readonly gutter: number;
  readonly count: number;
  /** Height of each; the last of them holds for those that follow. */
  readonly heights: readonly number[];
}

/** The columns of a paragraph, which an object embedded in it describes; null where it has one alone. */
function columnsOf({ embedded }: DxfRecord): Columns | null {
  if (!embedded) return null;
  const all = (code: number): readonly number[] =>
    embedded.values.filter((_, i) => embedded.codes[i] === code).map(asNumber);
  const one = (code: number): number => all(code)[0] ?? 0;
  const [width, gutter] = [one(44), one(45)];
  if (one(71) === 0 || !(width > 0)) return null;
  const told = Math.trunc(one(72));
  const count = told > 0 ? told : Math.round((one(42) + gutter) / (width + gutter));
  const heights = all(46).filter((height) => height > 0);
  return count > 1 && count <= 100
    ? { width, gutter, count, heights: heights.length > 0 ? heights : [one(41)].filter((height) => height > 0) }
    : null;
}

/**
 * The lines of an MTEXT: broken at its width (41), in as many columns as it has, about the point that it hangs from or
 * stands on. Null where it is damaged.
 */
export function paragraph(record: DxfRecord): readonly TextLines[] | null {
  const [at] = pointsOf(record, 10);
  const height = numberOf(record, 40, Number.NaN);
  if (!at || !(height > 0)) return null;
  const [way] = pointsOf(record, 11);
  const turn = way ? (Math.atan2(way[1], way[0]) * 180) / Math.PI : numberOf(record, 50, 0);
  const parts = record.values.filter((_, i) => record.codes[i] === 3 || record.codes[i] === 1);
  const columns = columnsOf(record);
  const width = columns?.width ?? numberOf(record, 41, 0);
  const factor = numberOf(record, 44, 1);
  const step = height * LINE_STEP * (factor > 0 ? factor : 1);
  const lines = formattedLines(parts.join('').slice(0, BUDGET.note)).flatMap((line) =>
    line.startsWith(NEW_COLUMN)
      ? brokenWords(line.slice(1), width / height).map((each, i) => (i === 0 ? NEW_COLUMN + each : each))
      : brokenWords(line, width / height),
  );
  // 1 to 3 hang from the top, 4 to 6 stand about the middle, 7 to 9 on the base; in each left, middle, right.
  const attachment = Math.min(9, Math.max(1, Math.trunc(numberOf(record, 71, 1)) || 1));
  const anchor = (['left', 'middle', 'right'] as const)[(attachment - 1) % 3]!;
  const shared = { height, turn, anchor, step, ...(width > 0 && { width }) };
  if (columns) {
    const along = (turn * Math.PI) / 180;
    return inColumns(lines, columns, height, step).map((own, i) => {
      const right = i * (columns.width + columns.gutter);
      const from = [at[0] + right * Math.cos(along), at[1] + right * Math.sin(along)] as const;
      return { ...shared, at: raised(from, turn, -height), lines: own };
    });
  }
  const whole = height + (lines.length - 1) * step;
  const down = attachment <= 3 ? height : attachment <= 6 ? height - whole / 2 : height - whole;
  return [{ ...shared, at: raised(at, turn, -down), lines: lines.map((line) => line.replace(NEW_COLUMN, '')) }];
}

function inColumns(
  lines: readonly string[],
  { count, heights }: Columns,
  height: number,
  step: number,
): readonly (readonly string[])[] {
  const all: string[][] = [[]];
  for (const line of lines) {
    const room = heights[all.length - 1] ?? heights.at(-1) ?? Number.POSITIVE_INFINITY;
    const fits = Math.max(1, Math.floor((room - height) / step + 1 + 1e-6));
    const begins = line.startsWith(NEW_COLUMN);
    if ((begins || all.at(-1)!.length >= fits) && all.length < count) all.push([]);
    all.at(-1)!.push(line.replace(NEW_COLUMN, ''));
  }
  return all;
}
