import { gridWays, offGrid, onGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { nearestOnSegment } from '../scene/near.ts';
import type { TargetLine, Targets } from './aims.ts';
import type { Guide } from './guide.ts';
import type { SnapKind } from './kinds.ts';
import { toStep } from './step.ts';

export interface SnapTo {
  /** How far off, feet, something draws the hand to it. */
  readonly near: number;
  readonly step: number;
  readonly gridlines: Site['gridlines'];
  /** What lies about the hand. */
  readonly close: Targets;
  /** What lies farther off and may be lined up with. */
  readonly around: Targets;
  /** Where the line that is being drawn comes from, and the way it came, for right angles and perpendiculars. */
  readonly from: Point2 | null;
  readonly before: Point2 | null;
  /** What the person has switched off. */
  readonly off: ReadonlySet<SnapKind>;
}

export interface Snapped {
  readonly at: Point2;
  /** Elevation of what it lies on, feet; null where that has none. */
  readonly z: number | null;
  /** The element it lies on. */
  readonly ref: Ref | null;
  readonly guides: readonly Guide[];
}

/** A straight line through a point in a direction, which holds the hand to itself. */
interface Rail {
  readonly through: Point2;
  readonly way: Point2;
  readonly line: TargetLine | null;
  readonly guide: (at: Point2) => Guide;
  /** A lesser rail gives way to a stronger one of the same direction. */
  readonly weight: number;
  /** The step counts along it from `through`, though it is slanting. */
  readonly stepped?: true;
}

/**
 * Where a pointed place comes to lie: on a place that is near (an end, a middle, a crossing, the foot of a
 * perpendicular), else on one line or where two meet (gridlines, raceways and members, right angles, places lined up
 * with), else on the step.
 */
export function snapped(at: Point2, to: SnapTo): Snapped {
  return onPoint(at, to) ?? onRails(at, to) ?? onStep(at, to);
}

const on = (to: SnapTo, kind: SnapKind): boolean => !to.off.has(kind);

function onPoint(at: Point2, to: SnapTo): Snapped | null {
  let best: Snapped | null = null;
  let least = to.near;
  const offer = (place: Point2, z: number | null, label: string, handicap: number, ref: Ref | null): void => {
    const away = Math.hypot(place[0] - at[0], place[1] - at[1]) + handicap * to.near;
    if (away > least || Math.hypot(place[0] - at[0], place[1] - at[1]) > to.near) return;
    least = away;
    best = { at: place, z, ref, guides: [{ kind: 'point', at: place, label }] };
  };
  for (const { kind, at: place, z, label, ref } of to.close.points)
    if (on(to, kind)) offer(place, z, label, kind === 'ends' ? 0 : 0.35, ref);
  if (on(to, 'crossings')) for (const { place, z, label, ref } of crossings(to)) offer(place, z, label, 0.1, ref);
  if (on(to, 'perpendiculars') && to.from)
    for (const line of to.close.lines) {
      const foot = footOf(to.from, line);
      if (foot) offer(foot, elevation(line, foot), `square to ${line.label}`, 0.35, line.ref);
    }
  return best;
}

interface Crossing {
  readonly place: Point2;
  readonly z: number | null;
  readonly label: string;
  readonly ref: Ref | null;
}

function crossings(to: SnapTo): Crossing[] {
  const { lines } = to.close;
  const found: Crossing[] = [];
  for (let i = 0; i < lines.length; i++)
    for (let j = 0; j < i; j++) {
      const a = lines[i]!;
      const b = lines[j]!;
      const place = meeting([a.from[0], a.from[1]], ways(a), [b.from[0], b.from[1]], ways(b));
      if (!place || !within(a, place) || !within(b, place)) continue;
      const [za, zb] = [elevation(a, place), elevation(b, place)];
      // Of a raceway under a beam it is the raceway that one joins; of two beams one hangs under the lower.
      const upper = za > zb ? a : b;
      const lower = upper === a ? b : a;
      const own = [lower, upper].find(({ ref }) => ref.list === 'raceways') ?? lower;
      found.push({ place, z: own === a ? za : zb, ref: own.ref, label: `${a.label} and ${b.label} cross` });
    }
  for (const x of to.gridlines.x)
    for (const y of to.gridlines.y)
      found.push({
        place: offGrid(to.gridlines, [x.at, y.at]),
        z: null,
        ref: null,
        label: `${x.label} and ${y.label}`,
      });
  return found;
}

const ways = ({ from, to }: TargetLine): Point2 => [to[0] - from[0], to[1] - from[1]];

const within = ({ from, to }: TargetLine, [x, y]: Point2): boolean =>
  Math.min(from[0], to[0]) - 1e-6 <= x &&
  x <= Math.max(from[0], to[0]) + 1e-6 &&
  Math.min(from[1], to[1]) - 1e-6 <= y &&
  y <= Math.max(from[1], to[1]) + 1e-6;

function elevation({ from, to }: TargetLine, [x, y]: Point2): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return from[2] + (to[2] - from[2]) * (length > 0 ? Math.hypot(x - from[0], y - from[1]) / length : 0);
}

function footOf(from: Point2, line: TargetLine): Point2 | null {
  const foot = nearestOnSegment(from, [line.from[0], line.from[1]], [line.to[0], line.to[1]]);
  const [ux, uy] = ways(line);
  // At an end of the line the nearest point is no foot of a perpendicular.
  return Math.abs((foot[0] - from[0]) * ux + (foot[1] - from[1]) * uy) < 1e-6 ? foot : null;
}

/** Where two lines meet; null where they hardly do. */
function meeting(p: Point2, u: Point2, q: Point2, v: Point2): Point2 | null {
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 0.02 * Math.hypot(...u) * Math.hypot(...v)) return null;
  const s = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / cross;
  return [p[0] + s * u[0], p[1] + s * u[1]];
}

function railsOf(at: Point2, to: SnapTo): Rail[] {
  const rails: Rail[] = [];
  const upright = (x: number, y: number, weight: number, guide: Rail['guide']): void => {
    rails.push({ through: [x, y], way: [0, 1], line: null, guide, weight });
  };
  const level = (x: number, y: number, weight: number, guide: Rail['guide']): void => {
    rails.push({ through: [x, y], way: [1, 0], line: null, guide, weight });
  };
  const turned = to.gridlines.rotation !== undefined || to.gridlines.origin !== undefined;
  if (on(to, 'gridlines') && turned) rails.push(...turnedGridRails(to.gridlines));
  else if (on(to, 'gridlines')) {
    for (const line of to.gridlines.x)
      upright(line.at, at[1], 3, () => ({ kind: 'x', at: line.at, label: `on ${line.label}` }));
    for (const line of to.gridlines.y)
      level(at[0], line.at, 3, () => ({ kind: 'y', at: line.at, label: `on ${line.label}` }));
  }
  if (on(to, 'members'))
    for (const line of to.close.lines)
      rails.push({
        through: [line.from[0], line.from[1]],
        way: ways(line),
        line,
        guide: () => ({
          kind: 'segment',
          from: [line.from[0], line.from[1]],
          to: [line.to[0], line.to[1]],
          label: `on ${line.label}`,
        }),
        weight: 4,
      });
  if (on(to, 'right angles') && to.from) for (const way of squareWays(to)) rails.push(angleRail(to.from, way));
  if (on(to, 'alignment'))
    for (const { kind, at: other, label } of to.around.points) {
      if (kind !== 'ends') continue;
      upright(other[0], at[1], 1, (place) => ({
        kind: 'segment',
        from: other,
        to: place,
        label: `in line with ${label}`,
      }));
      level(at[0], other[1], 1, (place) => ({
        kind: 'segment',
        from: other,
        to: place,
        label: `in line with ${label}`,
      }));
      // In a lot that lies aslant, things are in line along its gridlines rather than along the axes.
      if (isAslant(to.gridlines))
        for (const way of gridWays(to.gridlines))
          rails.push({
            through: other,
            way,
            line: null,
            guide: (place) => ({ kind: 'segment', from: other, to: place, label: `in line with ${label}` }),
            weight: 1.5,
          });
    }
  return rails;
}

/** Gridlines of their own turn or origin. The step counts along them from that origin. */
function turnedGridRails(gridlines: SnapTo['gridlines']): Rail[] {
  const [wayX, wayY] = gridWays(gridlines);
  const rail = (through: Point2, way: Point2, label: string): Rail => ({
    through,
    way,
    line: null,
    guide: (place) => ({ kind: 'line', through: place, way, label: `on ${label}` }),
    weight: 3,
    stepped: true,
  });
  return [
    ...gridlines.x.map(({ at, label }) => rail(offGrid(gridlines, [at, 0]), wayY, label)),
    ...gridlines.y.map(({ at, label }) => rail(offGrid(gridlines, [0, at]), wayX, label)),
  ];
}

/** Gridlines stand that are not square to the axes. */
const isAslant = ({ x, y, rotation = 0 }: SnapTo['gridlines']): boolean =>
  x.length + y.length > 0 && rotation % 90 !== 0;

/** Along the axes and slanting gridlines, and straight on from or square to the last leg where that is slanting. */
function squareWays({ from, before, gridlines }: SnapTo): Point2[] {
  const axes: Point2[] = [[1, 0], [0, 1], ...(isAslant(gridlines) ? gridWays(gridlines) : [])];
  if (!from || !before) return axes;
  const dx = from[0] - before[0];
  const dy = from[1] - before[1];
  const length = Math.hypot(dx, dy);
  if (length < 1e-6 || Math.abs(dx * dy) < 1e-6 * length) return axes;
  return [...axes, [dx / length, dy / length], [-dy / length, dx / length]];
}

const angleRail = (from: Point2, way: Point2): Rail => ({
  through: from,
  way,
  line: null,
  guide: (place) => ({
    kind: 'segment',
    from,
    to: place,
    label: way[0] === 0 ? 'straight up' : way[1] === 0 ? 'level' : 'square',
  }),
  weight: 2,
});

const offRail = (at: Point2, { through, way }: Rail): number =>
  Math.abs((at[0] - through[0]) * way[1] - (at[1] - through[1]) * way[0]) / Math.hypot(...way);

function onRails(at: Point2, to: SnapTo): Snapped | null {
  const near = railsOf(at, to)
    .map((rail) => ({ rail, off: offRail(at, rail) }))
    .filter(({ off }) => off <= to.near)
    .sort((a, b) => b.rail.weight - a.rail.weight || a.off - b.off)
    .map(({ rail }) => rail);
  const [first] = near;
  if (!first) return null;
  for (const second of near.slice(1)) {
    const both = meeting(first.through, first.way, second.through, second.way);
    if (!both || Math.hypot(both[0] - at[0], both[1] - at[1]) > to.near * 1.6) continue;
    return { at: both, ...onLine([first, second], both), guides: [first.guide(both), second.guide(both)] };
  }
  const place = alongRail(at, first, to);
  return { at: place, ...onLine([first], place), guides: [first.guide(place)] };
}

function onLine(rails: readonly Rail[], at: Point2): Pick<Snapped, 'z' | 'ref'> {
  // On past the end of a raceway or member one is in line with it, and no longer on it.
  for (const { line } of rails) if (line && within(line, at)) return { z: elevation(line, at), ref: line.ref };
  return { z: null, ref: null };
}

/** The place on a rail: along one that is square to the axes the step still counts. */
function alongRail([x, y]: Point2, { through, way, stepped: isStepped }: Rail, to: SnapTo): Point2 {
  const step = on(to, 'grid') ? to.step : 0;
  const stepped = (value: number): number => (step > 0 ? toStep(value, step) : value);
  if (!isStepped && Math.abs(way[1]) < 1e-9) return [stepped(x), through[1]];
  if (!isStepped && Math.abs(way[0]) < 1e-9) return [through[0], stepped(y)];
  const along = ((x - through[0]) * way[0] + (y - through[1]) * way[1]) / (way[0] ** 2 + way[1] ** 2);
  const t = isStepped ? stepped(along) : along;
  return [through[0] + t * way[0], through[1] + t * way[1]];
}

function onStep(at: Point2, to: SnapTo): Snapped {
  const stepped = ([x, y]: Point2): Point2 => [toStep(x, to.step), toStep(y, to.step)];
  // Where gridlines stand aslant the steps count along them: setting out is from them.
  const place = isAslant(to.gridlines) ? offGrid(to.gridlines, stepped(onGrid(to.gridlines, at))) : stepped(at);
  return { at: on(to, 'grid') ? place : at, z: null, ref: null, guides: [] };
}
