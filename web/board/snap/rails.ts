import { gridWays, offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { TargetLine } from './aims.ts';
import { elevation, isWithinLine, meeting, ways } from './crossings.ts';
import type { Guide } from './guide.ts';
import { on, type Snapped, type SnapTo } from './snap-to.ts';
import { toStep } from './step.ts';

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
export const isAslant = ({ x, y, rotation = 0 }: SnapTo['gridlines']): boolean =>
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

export function onRails(at: Point2, to: SnapTo): Snapped | null {
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
  for (const { line } of rails) if (line && isWithinLine(line, at)) return { z: elevation(line, at), ref: line.ref };
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
