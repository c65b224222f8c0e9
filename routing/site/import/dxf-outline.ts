import type { Point2 } from '../site.ts';
import { alongBulge, alongEllipse, alongSpline, pointsAlongBulge } from './curves.ts';
import { asNumber, type DxfRecord, flagsOf, numberOf, pointsOf } from './dxf-records.ts';
import { BUDGET } from './imported.ts';

/** The line that an entity draws in the plan, in its own coordinates. */
export interface Outline {
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** How many points it would have, where that is past what is read: it has none then. */
  readonly past?: number;
}

const RAD = Math.PI / 180;

type Draw = (record: DxfRecord, vertices: readonly DxfRecord[]) => Outline | null;

const open = (points: readonly Point2[]): Outline => ({ points, closed: false });
const shut = (points: readonly Point2[]): Outline => ({ points, closed: true });

const line: Draw = (record) => {
  const [from] = pointsOf(record, 10);
  const [to] = pointsOf(record, 11);
  return from && to ? open([from, to]) : null;
};

const arc: Draw = (record) => {
  const [centre] = pointsOf(record, 10);
  const radius = numberOf(record, 40, Number.NaN);
  if (!centre || !(radius > 0)) return null;
  const [a, b]: [Point2, Point2] = [
    [radius, 0],
    [0, radius],
  ];
  if (record.kind === 'CIRCLE') return shut(alongEllipse(centre, a, b, 0, 2 * Math.PI).slice(0, -1));
  const from = numberOf(record, 50, 0) * RAD;
  return open(alongEllipse(centre, a, b, from, sweepBetween(from, numberOf(record, 51, 360) * RAD)));
};

const ellipse: Draw = (record) => {
  const [centre] = pointsOf(record, 10);
  const [a] = pointsOf(record, 11);
  const ratio = numberOf(record, 40, Number.NaN);
  if (!centre || !a || !(ratio > 0 && ratio <= 1)) return null;
  const from = numberOf(record, 41, 0);
  const sweep = sweepBetween(from, numberOf(record, 42, 2 * Math.PI));
  const points = alongEllipse(centre, a, [-a[1] * ratio, a[0] * ratio], from, sweep);
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

const lightPolyline: Draw = (record) => {
  const vertices: { at: [number, number]; bulge: number }[] = [];
  for (let i = 0; i < record.codes.length; i++) {
    const value = asNumber(record.values[i]!);
    const last = vertices.at(-1);
    if (record.codes[i] === 10) vertices.push({ at: [value, 0], bulge: 0 });
    else if (record.codes[i] === 20 && last) last.at[1] = value;
    else if (record.codes[i] === 42 && last) last.bulge = value;
  }
  return throughVertices(vertices, (flagsOf(record) & 1) === 1);
};

/** Vertices that only steer a spline. */
const SPLINE_FRAME = 16;
/** Meshes of faces. */
const MESH = 16 | 64;

const heavyPolyline: Draw = (record, records) => {
  if (flagsOf(record) & MESH) return null;
  const vertices = records
    .filter((vertex) => (flagsOf(vertex) & SPLINE_FRAME) === 0)
    .flatMap((vertex): Vertex[] => {
      const [at] = pointsOf(vertex, 10);
      return at ? [{ at, bulge: numberOf(vertex, 42, 0) }] : [];
    });
  return throughVertices(vertices, (flagsOf(record) & 1) === 1);
};

function throughVertices(vertices: readonly Vertex[], closed: boolean): Outline | null {
  if (vertices.length < 2) return null;
  // Counted before any arc is drawn out: a text of 10 MB holds arcs of 33 million points.
  const past = vertices.reduce((sum, { bulge }) => sum + 1 + pointsAlongBulge(bulge), 0);
  if (past > BUDGET.points) return { points: [], closed, past };
  const points: Point2[] = [];
  vertices.forEach(({ at, bulge }, i) => {
    points.push(at);
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (next) points.push(...alongBulge(at, next.at, bulge));
  });
  return { points, closed };
}

const spline: Draw = (record) => {
  const control = pointsOf(record, 10);
  const fit = pointsOf(record, 11);
  const values = (code: number): number[] => record.values.filter((_, i) => record.codes[i] === code).map(asNumber);
  const points = alongSpline(numberOf(record, 71, 3), values(40), control, values(41)) ?? (fit.length > 1 ? fit : null);
  return points && open(points);
};

/** Corners of a filled face; a solid gives its last two crosswise. */
const face: Draw = (record) => {
  const [a, b, c, d] = [10, 11, 12, 13].map((code) => pointsOf(record, code)[0]);
  if (!a || !b || !c) return null;
  const fourth = d && (d[0] !== c[0] || d[1] !== c[1]) ? d : null;
  if (!fourth) return shut([a, b, c]);
  return shut(record.kind === '3DFACE' ? [a, b, c, fourth] : [a, b, fourth, c]);
};

const DRAW = new Map<string, Draw>([
  ['LINE', line],
  ['ARC', arc],
  ['CIRCLE', arc],
  ['ELLIPSE', ellipse],
  ['LWPOLYLINE', lightPolyline],
  ['POLYLINE', heavyPolyline],
  ['SPLINE', spline],
  ['SOLID', face],
  ['TRACE', face],
  ['3DFACE', face],
]);

/** Kinds whose points lie in the plane that their extrusion names; those of the others lie in the drawing's own. */
const IN_OWN_PLANE = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'SOLID', 'TRACE', 'INSERT', 'HATCH']);

/** Whether an entity is seen from below, so that its x runs the other way; null where it stands aslant to the plan. */
export function isMirrored(record: DxfRecord): boolean | null {
  if (!IN_OWN_PLANE.has(record.kind)) return false;
  const [x, y, z] = [numberOf(record, 210, 0), numberOf(record, 220, 0), numberOf(record, 230, 1)];
  if (!(Math.hypot(x, y) <= 1e-6 * Math.abs(z))) return null;
  return z < 0;
}

/**
 * The line that an entity draws, arcs as chords; null where its kind is not read or
 * it is damaged. `vertices` are the records of a polyline that follow it.
 */
export function outlineOf(record: DxfRecord, vertices: readonly DxfRecord[]): Outline | null {
  const mirrored = isMirrored(record);
  const outline = mirrored === null ? null : (DRAW.get(record.kind)?.(record, vertices) ?? null);
  if (!outline?.points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y))) return null;
  return mirrored ? { ...outline, points: outline.points.map(([x, y]): Point2 => [-x, y]) } : outline;
}
