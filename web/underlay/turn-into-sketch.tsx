import { boxOf } from '../../routing/plane/box.ts';
import { direction } from '../../routing/plane/direction.ts';
import { rectangleAt } from '../../routing/plane/rectangle.ts';
import type { DrawnLine } from '../../routing/site/import/imported.ts';
import type { Turned, TurnKind } from '../../routing/site/import/turn-into.ts';
import { stallRectangle } from '../../routing/site/place/stall-rectangle.ts';
import type { Point2 } from '../../routing/site/site.ts';

/** No more of each are drawn: it is a sketch. */
const MOST = 1500;

interface Shape {
  readonly points: readonly Point2[];
  readonly closed: boolean;
}

/** What lines would become, and in another color what was not understood, before any of it is set. */
export function TurnIntoSketch({ turned, kind }: { readonly turned: Turned; readonly kind: TurnKind }) {
  const made = shapesOf(turned, kind).slice(0, MOST);
  const rest = turned.rest.filter(({ points }) => points.length > 1).slice(0, MOST);
  const all = [...made, ...rest].flatMap(({ points }) => points);
  if (all.length === 0) return null;
  const { minX, minY, maxX, maxY } = boxOf(all);
  const edge = 0.03 * Math.max(maxX - minX, maxY - minY, 1);
  const path = ({ points, closed }: Shape | DrawnLine): string =>
    `M${points.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;
  return (
    <svg
      className="turn-sketch"
      role="img"
      aria-label={`Sketch: ${made.length} found, ${rest.length} lines left over`}
      viewBox={`${minX - edge} ${-maxY - edge} ${maxX - minX + 2 * edge} ${maxY - minY + 2 * edge}`}
    >
      <path className="turn-rest" d={rest.map(path).join('')} />
      <path className="turn-made" d={made.map(path).join('')} />
    </svg>
  );
}

function shapesOf(turned: Turned, kind: TurnKind): readonly Shape[] {
  switch (kind) {
    case 'stalls':
      return turned.stalls.map((stall) => ({ points: stallRectangle({ id: '', ...stall }), closed: true }));
    case 'columns':
      return turned.columns.map(({ at, size, rotation = 0 }) => ({
        points: rectangleAt(at, size, rotation),
        closed: true,
      }));
    case 'keepouts':
      return turned.keepouts.map(({ outline }) => ({ points: outline, closed: true }));
    case 'aisles':
      return turned.aisles.map(({ outline }) => ({ points: outline, closed: true }));
    case 'raceways':
      return turned.raceways.map(({ path }) => ({ points: path.map(([x, y]): Point2 => [x, y]), closed: false }));
    case 'gridlines':
      return gridlineShapes(turned);
  }
}

/** Past the last line that crosses them, feet. */
const PAST = 12;

function gridlineShapes({ gridlines }: Turned): readonly Shape[] {
  if (!gridlines) return [];
  const { x, y, rotation = 0 } = gridlines;
  const [cos, sin] = direction(rotation);
  const span = (of: typeof x, otherwise: typeof x): readonly [number, number] => {
    const at = (of.length > 0 ? of : otherwise).map((each) => each.at);
    return [Math.min(...at) - PAST, Math.max(...at) + PAST];
  };
  const put = (u: number, v: number): Point2 => [u * cos - v * sin, u * sin + v * cos];
  const [[left, right], [low, high]] = [span(x, y), span(y, x)];
  return [
    ...x.map(({ at }) => ({ points: [put(at, low), put(at, high)], closed: false })),
    ...y.map(({ at }) => ({ points: [put(left, at), put(right, at)], closed: false })),
  ];
}
