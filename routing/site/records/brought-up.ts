import { kept } from '../../kept/kept.ts';
import { direction } from '../../plane/direction.ts';
import type { Point3 } from '../../plane/point.ts';
import { tidy } from '../file/tidy.ts';
import type { Mark } from '../site.ts';
import { compareMarks } from './merge.ts';

/** What one edit did to the names and places that marks made before it speak of. */
interface Redrawn {
  readonly names: ReadonlyMap<string, string>;
  readonly motion?: NonNullable<Mark['motion']>;
}

/** Marks that tell of the drawing, not of the work. */
export const isOfDrawing = ({ what }: Mark): boolean => what === 'renamed' || what === 'moved';

/** How many renamings and moves of the whole lot a list of marks knows of. */
export const drawingOf = (marks: readonly Mark[]): number =>
  marks.reduce((most, mark) => (isOfDrawing(mark) ? Math.max(most, (mark.drawing ?? 0) + 1) : most), 0);

/**
 * The marks of the work as the drawing names and places things now: each is brought through every renaming and every move
 * of the whole lot that its author did not know of. Who recorded against an older drawing loses nothing by it.
 */
export const broughtUp = kept((marks: readonly Mark[]): readonly Mark[] => {
  const redrawn = redrawnBy(marks);
  const work = marks.filter((mark) => !isOfDrawing(mark));
  return redrawn.length === 0 ? work : work.map((mark) => redrawn.slice(mark.drawing ?? 0).reduce(through, mark));
});

function redrawnBy(marks: readonly Mark[]): readonly Redrawn[] {
  const steps: { names: Map<string, string>; motion?: NonNullable<Mark['motion']> }[] = [];
  for (const mark of marks.filter(isOfDrawing).sort(compareMarks)) {
    // As many as there may be: a number out of a damaged file makes no list of millions.
    const at = Math.min(mark.drawing ?? 0, marks.length);
    while (steps.length <= at) steps.push({ names: new Map() });
    const step = steps[at]!;
    if (mark.to !== undefined) step.names.set(mark.of, mark.to);
    if (mark.motion) step.motion = mark.motion;
  }
  return steps;
}

function through(mark: Mark, { names, motion }: Redrawn): Mark {
  const of = names.get(mark.of) ?? mark.of;
  if (of === mark.of && !(motion && (mark.place || mark.line))) return mark;
  const moved = (at: Point3): Point3 => (motion ? movedBy(motion, at) : at);
  return {
    ...mark,
    of,
    ...(mark.place && { place: moved(mark.place) }),
    ...(mark.line && {
      line: { axis: motion ? axisAfter(motion, mark.line.axis) : mark.line.axis, at: moved(mark.line.at) },
    }),
  };
}

function movedBy({ to, rotation, mirrored }: NonNullable<Mark['motion']>, [x, y, z]: Point3): Point3 {
  const [cos, sin] = direction(rotation);
  const up = mirrored ? -y : y;
  return [tidy(to[0] + x * cos - up * sin), tidy(to[1] + x * sin + up * cos), z];
}

/** Lines that turn by an eighth of a turn or more change axes, as gridlines do. */
function axisAfter({ rotation }: NonNullable<Mark['motion']>, axis: 'x' | 'y'): 'x' | 'y' {
  return Math.abs(Math.round(rotation / 90)) % 2 === 0 ? axis : axis === 'x' ? 'y' : 'x';
}
