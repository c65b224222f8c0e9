import type { Point2 } from '../../../site.ts';
import { asNumber, type DxfRecord, flagsOf, numberOf, pointsOf } from '../records.ts';

interface Edge {
  readonly points: readonly Point2[];
  readonly closed: boolean;
}

const edge = (a: Point2, b: Point2): Edge => ({ points: [a, b], closed: false });

/** A face of three or four corners; its edges that are said to be unseen (flags 1, 2, 4, 8) are left out. */
export function faceEdges(record: DxfRecord): readonly Edge[] | null {
  const [a, b, c, d] = [10, 11, 12, 13].map((code) => pointsOf(record, code)[0]);
  if (!a || !b || !c) return null;
  const corners = d && (d[0] !== c[0] || d[1] !== c[1]) ? [a, b, c, d] : [a, b, c];
  const unseen = flagsOf(record) & 15;
  if (unseen === 0) return [{ points: corners, closed: true }];
  // The fourth flag is that of the way back to the first corner, also where there are three.
  return corners.flatMap((corner, i) => {
    const last = i === corners.length - 1;
    const flag = last && corners.length === 4 ? 8 : 1 << i;
    const hides = (unseen & flag) !== 0 || (last && corners.length === 3 && (unseen & 12) !== 0);
    return hides ? [] : [edge(corner, corners[(i + 1) % corners.length]!)];
  });
}

const POLYFACE = 64;
const CLOSED_ALONG = 1;
const CLOSED_ACROSS = 32;
const SPLINE_FRAME = 16;
const IS_POINT = 64;

/** The edges of a polyline that is a net of rows and columns, or a set of faces. */
export function polyMesh(record: DxfRecord, parts: readonly DxfRecord[]): readonly Edge[] | null {
  return flagsOf(record) & POLYFACE ? faces(parts) : net(record, parts);
}

function net(record: DxfRecord, parts: readonly DxfRecord[]): readonly Edge[] | null {
  const smooth = numberOf(record, 75, 0) !== 0;
  const [m, n] = (smooth ? [73, 74] : [71, 72]).map((code) => Math.trunc(numberOf(record, code, 0))) as [
    number,
    number,
  ];
  const points = parts
    .filter((vertex) => !smooth || (flagsOf(vertex) & SPLINE_FRAME) === 0)
    .flatMap((vertex) => pointsOf(vertex, 10).slice(0, 1));
  if (!(m >= 2 && n >= 2 && m * n <= points.length)) return null;
  const rows = Array.from({ length: m }, (_, i) => ({
    points: points.slice(i * n, i * n + n),
    closed: (flagsOf(record) & CLOSED_ACROSS) !== 0,
  }));
  const columns = Array.from({ length: n }, (_, j) => ({
    points: Array.from({ length: m }, (_, i) => points[i * n + j]!),
    closed: (flagsOf(record) & CLOSED_ALONG) !== 0,
  }));
  return [...rows, ...columns];
}

function faces(parts: readonly DxfRecord[]): readonly Edge[] | null {
  const points = parts
    .filter((vertex) => (flagsOf(vertex) & IS_POINT) !== 0)
    .map((vertex) => pointsOf(vertex, 10)[0] ?? ([Number.NaN, Number.NaN] as const));
  const drawn: Edge[] = [];
  for (const face of parts) {
    if ((flagsOf(face) & IS_POINT) !== 0) continue;
    const corners = [71, 72, 73, 74].map((code) => Math.trunc(numberOf(face, code, 0))).filter((index) => index !== 0);
    corners.forEach((index, i) => {
      const [a, b] = [points[Math.abs(index) - 1], points[Math.abs(corners[(i + 1) % corners.length]!) - 1]];
      // An edge whose first corner is counted below zero is not seen.
      if (index > 0 && a && b) drawn.push(edge(a, b));
    });
  }
  return drawn.length > 0 ? drawn : null;
}

/** The faces of a mesh (group codes 92 and 93 begin its corners and its lists of faces). */
export function mesh({ codes, values }: DxfRecord): readonly Edge[] | null {
  const points: [number, number][] = [];
  const begin = codes.indexOf(92);
  let at = begin + 1;
  if (begin < 0) return null;
  for (; at < codes.length && codes[at] !== 93; at++) {
    if (codes[at] === 10) points.push([asNumber(values[at]!), 0]);
    else if (codes[at] === 20 && points.length > 0) points.at(-1)![1] = asNumber(values[at]!);
  }
  const end = at + 1 + Math.trunc(Number(values[at] ?? 0));
  const drawn: Edge[] = [];
  for (at += 1; at < end && codes[at] === 90; ) {
    const count = Math.trunc(Number(values[at]));
    if (!(count >= 3 && at + count < end)) return null;
    const corners = values.slice(at + 1, at + 1 + count).map((index) => points[Math.trunc(Number(index))]);
    if (!corners.every((corner) => corner !== undefined)) return null;
    drawn.push({ points: corners, closed: true });
    at += count + 1;
  }
  return drawn.length > 0 ? drawn : null;
}
