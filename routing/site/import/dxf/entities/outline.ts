import type { Point2 } from '../../../site.ts';
import { alongBulge, alongEllipse, alongSpline, pointsAlongBulge } from '../../curves.ts';
import { BUDGET } from '../../imported.ts';
import { extrusionOf } from '../placing.ts';
import { asNumber, type DxfRecord, flagsOf, numberOf, numbersOf, pointsOf } from '../records.ts';
import { hatchOutlines } from './hatch.ts';
import { leader } from './leader.ts';
import { faceEdges, mesh, polyMesh } from './mesh.ts';
import { multiLine } from './multi-line.ts';

/** A line that an entity draws, in its own coordinates. */
export interface Outline {
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** Width of the line in the units of the drawing; absent for a line without one. */
  readonly width?: number;
  /** What it encloses is filled. */
  readonly filled?: boolean;
  /** How many points it would have, where that is past what is read: it has none then. */
  readonly past?: number;
}

const RAD = Math.PI / 180;

/** The lines of an entity, none of its chords farther off than the sagitta; null where it is damaged. */
type Draw = (record: DxfRecord, parts: readonly DxfRecord[], sagitta: number) => readonly Outline[] | null;

const open = (points: readonly Point2[]): readonly Outline[] => [{ points, closed: false }];
const shut = (points: readonly Point2[]): readonly Outline[] => [{ points, closed: true }];

const line: Draw = (record) => {
  const [from] = pointsOf(record, 10);
  const [to] = pointsOf(record, 11);
  return from && to ? open([from, to]) : null;
};

const point: Draw = (record) => {
  const [at] = pointsOf(record, 10);
  return at ? open([at]) : null;
};

const arc: Draw = (record, _, sagitta) => {
  const [centre] = pointsOf(record, 10);
  const radius = numberOf(record, 40, Number.NaN);
  if (!centre || !(radius > 0)) return null;
  const [a, b]: [Point2, Point2] = [
    [radius, 0],
    [0, radius],
  ];
  if (record.kind === 'CIRCLE') return shut(alongEllipse(centre, a, b, 0, 2 * Math.PI, sagitta).slice(0, -1));
  const from = numberOf(record, 50, 0) * RAD;
  return open(alongEllipse(centre, a, b, from, sweepBetween(from, numberOf(record, 51, 360) * RAD), sagitta));
};

/** Its shorter axis is its extrusion crossed with the longer: seen from below it runs the other way. */
const ellipse: Draw = (record, _, sagitta) => {
  const [centre] = pointsOf(record, 10);
  const [a] = pointsOf(record, 11);
  const ratio = numberOf(record, 40, Number.NaN);
  const normal = extrusionOf(record);
  if (!centre || !a || !normal || !(ratio > 0)) return null;
  const from = numberOf(record, 41, 0);
  const sweep = sweepBetween(from, numberOf(record, 42, 2 * Math.PI));
  const [nx, ny, nz] = normal;
  const az = numberOf(record, 31, 0);
  const b: Point2 = [(ny * az - nz * a[1]) * ratio, (nz * a[0] - nx * az) * ratio];
  const points = alongEllipse(centre, a, b, from, sweep, sagitta);
  return sweep > 2 * Math.PI - 1e-6 ? shut(points.slice(0, -1)) : open(points);
};

/** Counter-clockwise from one angle to another; all the way round where they are the same. */
function sweepBetween(from: number, to: number): number {
  const turn = 2 * Math.PI;
  const sweep = (((to - from) % turn) + turn) % turn;
  return sweep < 1e-9 ? turn : sweep;
}

interface Vertex {
  readonly at: Point2;
  readonly bulge: number;
}

const lightPolyline: Draw = (record, _, sagitta) => {
  const vertices: { at: [number, number]; bulge: number }[] = [];
  let width = numberOf(record, 43, 0);
  for (let i = 0; i < record.codes.length; i++) {
    const value = asNumber(record.values[i]!);
    const last = vertices.at(-1);
    if (record.codes[i] === 10) vertices.push({ at: [value, 0], bulge: 0 });
    else if (record.codes[i] === 20 && last) last.at[1] = value;
    else if (record.codes[i] === 42 && last) last.bulge = value;
    else if ((record.codes[i] === 40 || record.codes[i] === 41) && last) width = Math.max(width, value);
  }
  return throughVertices(vertices, (flagsOf(record) & 1) === 1, width, sagitta);
};

/** Vertices that only steer a spline. */
const SPLINE_FRAME = 16;
/** Meshes of faces. */
const MESH = 16 | 64;

const heavyPolyline: Draw = (record, parts, sagitta) => {
  if (flagsOf(record) & MESH) return polyMesh(record, parts);
  const vertices = parts
    .filter((vertex) => (flagsOf(vertex) & SPLINE_FRAME) === 0)
    .flatMap((vertex): Vertex[] => {
      const [at] = pointsOf(vertex, 10);
      return at ? [{ at, bulge: numberOf(vertex, 42, 0) }] : [];
    });
  return throughVertices(vertices, (flagsOf(record) & 1) === 1, numberOf(record, 40, 0), sagitta);
};

function throughVertices(
  vertices: readonly Vertex[],
  closed: boolean,
  width: number,
  sagitta: number,
): readonly Outline[] | null {
  if (vertices.length < 2) return null;
  const after = (i: number): Point2 | undefined => (vertices[i + 1] ?? (closed ? vertices[0] : undefined))?.at;
  // Counted before any arc is drawn out: a text of 10 MB holds arcs of 33 million points.
  let past = 0;
  for (const [i, { at, bulge }] of vertices.entries()) {
    const next = after(i);
    past += 1 + (next ? pointsAlongBulge(at, next, bulge, sagitta) : 0);
  }
  if (past > BUDGET.points) return [{ points: [], closed, past }];
  const points: Point2[] = [];
  for (const [i, { at, bulge }] of vertices.entries()) {
    points.push(at);
    const next = after(i);
    if (next) points.push(...alongBulge(at, next, bulge, sagitta));
  }
  return [{ points, closed, ...(width > 0 && { width }) }];
}

const spline: Draw = (record, _, sagitta) => {
  const control = pointsOf(record, 10);
  const fit = pointsOf(record, 11);
  const points =
    alongSpline(numberOf(record, 71, 3), numbersOf(record, 40), control, numbersOf(record, 41), sagitta) ??
    (fit.length > 1 ? fit : null);
  return points && open(points);
};

/** Corners of a filled face; it gives its last two crosswise. */
const solid: Draw = (record) => {
  const [a, b, c, d] = [10, 11, 12, 13].map((code) => pointsOf(record, code)[0]);
  if (!a || !b || !c) return null;
  const fourth = d && (d[0] !== c[0] || d[1] !== c[1]) ? d : null;
  return [{ points: fourth ? [a, b, fourth, c] : [a, b, c], closed: true, filled: true }];
};

/** The boundaries of a hatch; a plain one that is filled is filled. */
const hatch: Draw = (record, _, sagitta) => {
  const outlines = hatchOutlines(record, sagitta);
  const [only] = outlines ?? [];
  return outlines?.length === 1 && only && flagsOf(record) === 1 ? [{ ...only, filled: true }] : outlines;
};

const DRAW: ReadonlyMap<string, Draw> = new Map<string, Draw>([
  ['LINE', line],
  ['POINT', point],
  ['ARC', arc],
  ['CIRCLE', arc],
  ['ELLIPSE', ellipse],
  ['LWPOLYLINE', lightPolyline],
  ['POLYLINE', heavyPolyline],
  ['SPLINE', spline],
  ['HELIX', spline],
  ['SOLID', solid],
  ['TRACE', solid],
  ['3DFACE', faceEdges],
  ['MESH', mesh],
  ['MLINE', multiLine],
  ['LEADER', leader],
  ['HATCH', hatch],
  ['MPOLYGON', hatch],
]);

/** The lines of an entity; null where its kind is not read or it is damaged. `parts` are the records that follow it. */
export function outlinesOf(record: DxfRecord, parts: readonly DxfRecord[], sagitta: number): readonly Outline[] | null {
  const outlines = DRAW.get(record.kind)?.(record, parts, sagitta) ?? null;
  return outlines?.every(({ points }) => points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y)))
    ? outlines
    : null;
}

/** Whether a kind of entity is one whose lines are read. */
export const isReadableEntity = (kind: string): boolean => DRAW.has(kind);
