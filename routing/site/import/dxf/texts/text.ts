import { BUDGET } from '../../imported.ts';
import { type DxfRecord, flagsOf, numberOf, pointsOf, recordText } from '../records.ts';
import { paragraph } from './paragraph.ts';
import { raised, type TextLines } from './text-lines.ts';
import { plainWords } from './words.ts';

/** The words of a TEXT, an ATTRIB or an MTEXT: none where it says nothing or hides; null for other kinds or damage. */
export function textLines(record: DxfRecord): readonly TextLines[] | null {
  const made = record.kind === 'MTEXT' ? paragraph(record) : ONE_LINE.has(record.kind) ? oneLine(record) : null;
  if (!made?.every(isSound)) return null;
  return made.filter(({ lines }) => lines.some((line) => line !== ''));
}

const isSound = ({ at, height, turn, step, width = 0 }: TextLines): boolean =>
  [...at, height, turn, step, width].every(Number.isFinite) && height > 0;

const ONE_LINE = new Set(['TEXT', 'ATTRIB']);
const INVISIBLE = 1;
/** Text between two points: the letters keep their shape, or their height. */
const ALIGNED = 3;
const FIT = 5;

function oneLine(record: DxfRecord): readonly TextLines[] | null {
  if (record.kind === 'ATTRIB' && flagsOf(record) & INVISIBLE) return [];
  const across = numberOf(record, 72, 0);
  const up = numberOf(record, record.kind === 'ATTRIB' ? 74 : 73, 0);
  const height = numberOf(record, 40, Number.NaN);
  const [first] = pointsOf(record, 10);
  const [second] = pointsOf(record, 11);
  if (!first) return null;
  const lines = [plainWords(recordText(record, 1) ?? '').slice(0, BUDGET.note)];
  const step = height;
  if ((across === ALIGNED || across === FIT) && second) {
    const [dx, dy] = [second[0] - first[0], second[1] - first[1]];
    const width = Math.hypot(dx, dy);
    const turn = width > 0 ? (Math.atan2(dy, dx) * 180) / Math.PI : numberOf(record, 50, 0);
    return [{ at: first, height, turn, anchor: 'left', step, lines, ...(width > 0 && { width }) }];
  }
  // Anything but "left on the base line" stands by its second point.
  const at = across !== 0 || up !== 0 ? (second ?? first) : first;
  const turn = numberOf(record, 50, 0);
  // 4 is the middle of the letters.
  const anchor = across === 1 || across === 4 ? 'middle' : across === 2 ? 'right' : 'left';
  const down = up === 3 ? 1 : up === 2 || across === 4 ? 0.5 : 0;
  return [{ at: raised(at, turn, -down * height), height, turn, anchor, step, lines }];
}
