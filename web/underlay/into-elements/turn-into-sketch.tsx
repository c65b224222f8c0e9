import { direction } from '../../../routing/plane/direction.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Turned, TurnKind } from '../../../routing/site/import/turn-into.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { Sketch, type SketchShape } from './sketch.tsx';

/** What lines would become, and in another color what was not understood, before any of it is set. */
export function TurnIntoSketch({ turned, kind }: { readonly turned: Turned; readonly kind: TurnKind }) {
  const made = shapesOf(turned, kind);
  return (
    <Sketch
      says={`Sketch: ${made.length} found, ${counted(turned.rest.length, 'line')} left over`}
      made={made}
      rest={turned.rest}
    />
  );
}

function shapesOf(turned: Turned, kind: TurnKind): readonly SketchShape[] {
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
      return turned.raceways.map(({ path }) => ({ points: path.map(inPlan), closed: false }));
    case 'gridlines':
      return gridlineShapes(turned);
  }
}

/** Past the last line that crosses them, feet. */
const PAST = 12;

function gridlineShapes({ gridlines }: Turned): readonly SketchShape[] {
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
