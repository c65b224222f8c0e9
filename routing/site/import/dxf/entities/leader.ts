import type { Point2 } from '../../../site.ts';
import { asNumber, type DxfRecord, pointsOf } from '../records.ts';
import type { Entity } from './blocks.ts';

/** The line of a leader; the note that it leads to is an entity of its own. */
export function leader(
  record: DxfRecord,
): readonly { readonly points: readonly Point2[]; readonly closed: boolean }[] | null {
  const points = pointsOf(record, 10);
  return points.length > 1 ? [{ points, closed: false }] : null;
}

/** A block that a leader leads to: the handle of its record, where it stands, and the words of its attributes. */
export interface LeaderBlock {
  readonly handle: string;
  readonly insert: DxfRecord;
  /** By the handle of the attribute's definition. */
  readonly words: ReadonlyMap<string, string>;
}

export interface LeaderParts {
  readonly lines: readonly (readonly Point2[])[];
  /** The filled heads of its lines. */
  readonly heads: readonly (readonly Point2[])[];
  /** Its note as a paragraph of its own. */
  readonly note: Entity | null;
  readonly block: LeaderBlock | null;
}

/** Group codes that open and close the parts of a leader with several lines. */
const OPENS_LEADER = 302;
const OPENS_LINE = 304;
const CLOSES_LEADER = 303;
const CLOSES_LINE = 305;
const CLOSES_CONTEXT = 301;

/**
 * What a leader with several lines comes to. Its record holds a context with the note or block, in which each leader
 * stands with the point where it meets the landing (10), the landing's direction and length (11, 40) and its lines (10).
 */
export function leaderParts(record: DxfRecord): LeaderParts {
  const context: [code: number, value: string][] = [];
  const tail: [code: number, value: string][] = [];
  const leaders: [code: number, value: string][][] = [];
  let within: 'head' | 'context' | 'leader' | 'line' | 'end' = 'head';
  record.codes.forEach((code, i) => {
    const value = record.values[i]!;
    if (within === 'head') {
      if (code === 300) within = 'context';
    } else if (within === 'context') {
      if (code === OPENS_LEADER && value.startsWith('LEADER')) {
        within = 'leader';
        leaders.push([]);
      } else if (code === CLOSES_CONTEXT) within = 'end';
      else context.push([code, value]);
    } else if (within === 'leader') {
      if (code === OPENS_LINE) {
        within = 'line';
        leaders.at(-1)!.push([code, value]);
      } else if (code === CLOSES_LEADER) within = 'context';
      else leaders.at(-1)!.push([code, value]);
    } else if (within === 'line') {
      if (code === CLOSES_LINE) within = 'leader';
      leaders.at(-1)!.push([code, value]);
    } else tail.push([code, value]);
  });
  const dogleg = saidUnder(tail, 291) !== '0';
  const size = asNumber(saidUnder(context, 140) ?? '0');
  const whole = leaders.flatMap((pairs) => linesOf(pairs, dogleg)).filter((points) => points.length > 1);
  const heads = whole.map((points) => headOf(points, size));
  return {
    // A line begins behind its head.
    lines: whole.map((points, i) => (heads[i] ? [heads[i].behind, ...points.slice(1)] : points)),
    heads: heads.flatMap((head) => (head ? [head.corners] : [])),
    note: noteOf(record, context),
    block: blockOf(record, context, tail),
  };
}

function linesOf(pairs: readonly (readonly [code: number, value: string])[], dogleg: boolean): Point2[][] {
  let [x, y, dx, dy, length] = [Number.NaN, Number.NaN, 1, 0, 0];
  const lines: [number, number][][] = [];
  let open = false;
  for (const [code, text] of pairs) {
    const value = asNumber(text);
    if (code === OPENS_LINE) {
      open = true;
      lines.push([]);
    } else if (code === CLOSES_LINE) open = false;
    else if (open && code === 10) lines.at(-1)!.push([value, 0]);
    else if (open && code === 20 && lines.at(-1)!.length > 0) lines.at(-1)!.at(-1)![1] = value;
    else if (open) continue;
    else if (code === 10) x = value;
    else if (code === 20) y = value;
    else if (code === 11) dx = value;
    else if (code === 21) dy = value;
    else if (code === 40) length = value;
  }
  const end: Point2 = [x, y];
  const along = Math.hypot(dx, dy);
  const landing: Point2[] =
    dogleg && length > 0 && along > 0 ? [[x + (dx / along) * length, y + (dy / along) * length]] : [];
  return lines.map((points) => [...points, end, ...landing]);
}

/** A head at the start of a line, three times as long as it is wide; null where the line is too short for one. */
function headOf(
  [tip, next]: readonly Point2[],
  size: number,
): { readonly corners: readonly Point2[]; readonly behind: Point2 } | null {
  if (!tip || !next || !(size > 0)) return null;
  const [dx, dy] = [next[0] - tip[0], next[1] - tip[1]];
  const length = Math.hypot(dx, dy);
  if (!(length > size)) return null;
  const [ux, uy] = [(dx / length) * size, (dy / length) * size];
  const behind: Point2 = [tip[0] + ux, tip[1] + uy];
  const corners: readonly Point2[] = [
    tip,
    [behind[0] - uy / 6, behind[1] + ux / 6],
    [behind[0] + uy / 6, behind[1] - ux / 6],
  ];
  return { corners, behind };
}

type Pairs = readonly (readonly [code: number, value: string])[];

/** The values that stand after the word that a note, or a block, is there. */
function after(pairs: Pairs, sign: number): Pairs | null {
  const at = pairs.findIndex(([code, value]) => code === sign && value.trim() === '1');
  return at < 0 ? null : pairs.slice(at + 1);
}

const saidUnder = (pairs: Pairs, code: number): string | undefined => pairs.find(([each]) => each === code)?.[1];

function recordFrom(record: DxfRecord, kind: string, pairs: Pairs): DxfRecord {
  const told = pairs.filter(([, value]) => value !== '');
  const from = ['8', '62', '370', '60', '67'].flatMap((code): [number, string][] => {
    const value = record.values[record.codes.indexOf(Number(code))];
    return value === undefined ? [] : [[Number(code), value]];
  });
  const all = [...from, ...told];
  return { kind, line: record.line, codes: all.map(([code]) => code), values: all.map(([, value]) => value) };
}

/** Left, middle and right of a note at its top, as the places of a paragraph are counted. */
const TOP = ['1', '2', '3'] as const;

function noteOf(record: DxfRecord, own: Pairs): Entity | null {
  const note = after(own, 290);
  if (!note) return null;
  const pick = (code: number, as: number, from: Pairs = note): [number, string][] => {
    const value = saidUnder(from, code);
    return value === undefined ? [] : [[as, value]];
  };
  const made = recordFrom(record, 'MTEXT', [
    ...pick(304, 1),
    ...pick(12, 10),
    ...pick(22, 20),
    ...pick(13, 11),
    ...pick(23, 21),
    ...pick(41, 40, own),
    ...pick(43, 41),
    ...pick(45, 44),
    [71, TOP[Number(saidUnder(note, 171) ?? 1) - 1] ?? '1'],
  ]);
  return { record: made, parts: [] };
}

function blockOf(record: DxfRecord, own: Pairs, tail: Pairs): LeaderBlock | null {
  const block = after(own, 296);
  const handle = block && saidUnder(block, 341);
  if (!block || !handle) return null;
  const pick = (code: number, as: number): [number, string][] => {
    const value = saidUnder(block, code);
    return value === undefined ? [] : [[as, value]];
  };
  const turn = (asNumber(saidUnder(block, 46) ?? '0') * 180) / Math.PI;
  const insert = recordFrom(record, 'INSERT', [
    ...pick(15, 10),
    ...pick(25, 20),
    ...pick(16, 41),
    ...pick(26, 42),
    [50, String(turn)],
  ]);
  const words = new Map<string, string>();
  let definition = '';
  for (const [code, value] of tail) {
    if (code === 330) definition = value;
    else if (code === 302 && definition !== '') words.set(definition, value);
  }
  return { handle, insert, words };
}
