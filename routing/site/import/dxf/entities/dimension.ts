import type { Point2 } from '../../../site.ts';
import { type DxfRecord, flagsOf, numberOf, pointsOf, recordText } from '../records.ts';

const ALIGNED = 1;
const KIND = 7;

export interface DrawnDimension {
  readonly lines: readonly (readonly Point2[])[];
  readonly words: { readonly at: Point2; readonly turn: number; readonly text: string };
}

/**
 * A linear dimension that has no block of lines: from each measured point (13, 14) to the dimension line, which runs
 * through 10; its text, else what it measures. Null for other kinds of dimensions.
 */
export function bareDimension(record: DxfRecord): DrawnDimension | null {
  const [[through], [a], [b], [middle]] = [10, 13, 14, 11].map((code) => pointsOf(record, code)) as [
    Point2[],
    Point2[],
    Point2[],
    Point2[],
  ];
  const kind = flagsOf(record) & KIND;
  if (kind > ALIGNED || !through || !a || !b) return null;
  const turn = kind === ALIGNED ? Math.atan2(b[1] - a[1], b[0] - a[0]) : (numberOf(record, 50, 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  // Where a measured point comes down square on the dimension line.
  const foot = ([x, y]: Point2): Point2 => {
    const along = (x - through[0]) * cos + (y - through[1]) * sin;
    return [through[0] + along * cos, through[1] + along * sin];
  };
  const [from, to] = [foot(a), foot(b)];
  const measured = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const own = recordText(record, 1) ?? '';
  const said = numberOf(record, 42, measured);
  const number = String(Number((said > 0 ? said : measured).toFixed(2)));
  return {
    lines: [
      [a, from],
      [from, to],
      [b, to],
    ],
    words: {
      at: middle ?? [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
      turn: (turn * 180) / Math.PI,
      text: own === '' ? number : own.replaceAll('<>', number),
    },
  };
}

/** The words of a dimension as a paragraph of its own. */
export function dimensionWords(record: DxfRecord, { at, turn, text }: DrawnDimension['words']): DxfRecord {
  const height = numberOf(record, 140, 0.18);
  return {
    kind: 'MTEXT',
    line: record.line,
    codes: [10, 20, 40, 50, 71, 1],
    values: [String(at[0]), String(at[1]), String(height), String(turn), '5', text],
  };
}
