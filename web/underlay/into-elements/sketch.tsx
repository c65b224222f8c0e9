import { boxOf } from '../../../routing/plane/box.ts';
import type { Point2 } from '../../../routing/site/site.ts';

/** No more of each are drawn: it is a sketch. */
const MOST = 1500;

export interface SketchShape {
  readonly points: readonly Point2[];
  readonly closed: boolean;
}

interface Props {
  readonly says: string;
  /** What would be set. */
  readonly made: readonly SketchShape[];
  /** What would not, in another color. */
  readonly rest: readonly SketchShape[];
}

/** Shapes of the site as they would come to lie, before any of them is set. */
export function Sketch({ says, made: all, rest: others }: Props) {
  const made = all.slice(0, MOST);
  const rest = others.filter(({ points }) => points.length > 1).slice(0, MOST);
  const points = [...made, ...rest].flatMap((shape) => shape.points);
  if (points.length === 0) return null;
  const { minX, minY, maxX, maxY } = boxOf(points);
  const edge = 0.03 * Math.max(maxX - minX, maxY - minY, 1);
  const path = (shape: SketchShape): string =>
    `M${shape.points.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}${shape.closed ? 'Z' : ''}`;
  return (
    <svg
      className="turn-sketch"
      role="img"
      aria-label={says}
      viewBox={`${minX - edge} ${-maxY - edge} ${maxX - minX + 2 * edge} ${maxY - minY + 2 * edge}`}
    >
      <path className="turn-rest" d={rest.map(path).join('')} />
      <path className="turn-made" d={made.map(path).join('')} />
    </svg>
  );
}
