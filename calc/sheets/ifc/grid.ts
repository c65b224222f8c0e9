import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import { gridlineReach } from '../../../routing/site/place/gridline-reach.ts';
import type { Gridline, Point2, Site } from '../../../routing/site/site.ts';
import { guidOf } from './guid.ts';
import { placedIn, polyline, type ShapeRoom, shape } from './shapes.ts';
import { of, stepText, word } from './step.ts';

/** Gridlines run this far past the structure, feet: an inch of paper at 1/8 in = 1 ft. */
const PAST = 8;
/** Half of a gridline where there is no structure to tell how long it is, feet. */
const ALONE = 50;

interface Axis {
  readonly label: string;
  readonly from: Point2;
  readonly to: Point2;
}

/**
 * The gridlines as an IfcGrid: its placement has their origin and turn, its axes lie square in it; U those that measure
 * x, V those that measure y. The standard wants both, so that lines of one way alone are left as annotations. The
 * record, or those of the annotations, for the site to contain.
 */
export function gridRecords(room: ShapeRoom, site: Site): readonly number[] {
  const { writer } = room;
  const [us, vs] = axesOf(site);
  if (us.length + vs.length === 0) return [];
  const placement = placedIn(room, offGrid(site.gridlines, [0, 0]), site.gridlines.rotation ?? 0);
  const drawn = (axes: readonly Axis[]) => axes.map((axis) => ({ axis, curve: curveOf(room, axis) }));
  const [u, v] = [drawn(us), drawn(vs)];
  if (u.length === 0 || v.length === 0)
    return [...u, ...v].map(({ axis: { label }, curve }, i) =>
      writer.add(
        'IFCANNOTATION',
        stepText(guidOf(`gridline ${i} ${label}`)),
        null,
        stepText(label),
        null,
        stepText('gridline'),
        of(placement),
        of(shape(room, 'Annotation', 'GeometricCurveSet', curveSet(room, [curve]))),
      ),
    );
  const tagged = (lines: typeof u) =>
    lines.map(({ axis, curve }) => of(writer.add('IFCGRIDAXIS', stepText(axis.label), of(curve), word('T'))));
  const curves = [...u, ...v].map(({ curve }) => curve);
  return [
    writer.add(
      'IFCGRID',
      stepText(guidOf(`gridlines ${site.name}`)),
      null,
      stepText('Gridlines'),
      null,
      null,
      of(placement),
      of(shape(room, 'FootPrint', 'GeometricCurveSet', curveSet(room, curves))),
      tagged(u),
      tagged(v),
      null,
      word('RECTANGULAR'),
    ),
  ];
}

/** Lines that measure x, and those that measure y, from end to end, feet, as they lie in their own frame. */
function axesOf(site: Site): readonly [readonly Axis[], readonly Axis[]] {
  const { x, y } = site.gridlines;
  const across = (lines: readonly Gridline[]): readonly [number, number] => {
    const places = lines.map(({ at }) => at);
    return places.length === 0 ? [0, 0] : [Math.min(...places), Math.max(...places)];
  };
  const [[minX, maxX], [minY, maxY]] = [across(x), across(y)];
  const reach = gridlineReach(site);
  const by = reach === null ? ALONE : PAST;
  const box = reach ?? { minX, minY, maxX, maxY };
  return [
    x.map(({ label, at }) => ({ label, from: [at, box.minY - by], to: [at, box.maxY + by] })),
    y.map(({ label, at }) => ({ label, from: [box.minX - by, at], to: [box.maxX + by, at] })),
  ];
}

const curveOf = (room: ShapeRoom, { from, to }: Axis): number => polyline(room, [from, to]);

const curveSet = ({ writer }: ShapeRoom, curves: readonly number[]): number =>
  writer.add('IFCGEOMETRICCURVESET', curves.map(of));
