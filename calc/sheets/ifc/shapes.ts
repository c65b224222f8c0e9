import { direction } from '../../../routing/plane/direction.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import { of, real, type StepValue, type StepWriter, stepText, word } from './step.ts';

/** What every shape needs: the writer, the context it stands in, and how long a foot is in the file's unit. */
export interface ShapeRoom {
  readonly writer: StepWriter;
  readonly context: number;
  /** That of the site, which all others refer to. */
  readonly placement: number;
  readonly scaled: (feet: number) => number;
}

const point = ({ writer, scaled }: ShapeRoom, at: readonly number[]): number =>
  writer.add(
    'IFCCARTESIANPOINT',
    at.map((value) => real(scaled(value))),
  );

/** A placement within that of the site: moved to a point, feet, and turned about the vertical, degrees. */
export function placedIn(room: ShapeRoom, at: Point2 | Point3 = [0, 0], degrees = 0): number {
  const { writer, placement } = room;
  const way = (values: readonly number[]): StepValue => of(writer.add('IFCDIRECTION', values.map(real)));
  const axes = degrees % 360 === 0 ? [null, null] : [way([0, 0, 1]), way([...direction(degrees), 0])];
  return writer.add(
    'IFCLOCALPLACEMENT',
    of(placement),
    of(writer.add('IFCAXIS2PLACEMENT3D', of(point(room, [at[0], at[1], at[2] ?? 0])), ...axes)),
  );
}

/** A line through points, feet, as a curve. */
export const polyline = (room: ShapeRoom, path: readonly (Point2 | Point3)[]): number =>
  room.writer.add(
    'IFCPOLYLINE',
    path.map((at) => of(point(room, at))),
  );

/** A prism over an outline from one elevation to another, as a product's shape. */
export function prism(room: ShapeRoom, outline: readonly Point2[], bottom: number, height: number): number {
  const { writer, scaled } = room;
  const curve = polyline(room, [...outline, outline[0] as Point2]);
  const profile = writer.add('IFCARBITRARYCLOSEDPROFILEDEF', word('AREA'), null, of(curve));
  const base = writer.add('IFCAXIS2PLACEMENT3D', of(point(room, [0, 0, bottom])), null, null);
  const up = writer.add('IFCDIRECTION', [real(0), real(0), real(1)]);
  const solid = writer.add('IFCEXTRUDEDAREASOLID', of(profile), of(base), of(up), real(scaled(height)));
  return shape(room, 'Body', 'SweptSolid', solid);
}

/** A round rod along a path in space, as a product's shape. */
export function rod(room: ShapeRoom, path: readonly Point3[], radius: number): number {
  const { writer, scaled } = room;
  const solid = writer.add('IFCSWEPTDISKSOLID', of(polyline(room, path)), real(scaled(radius)), null, null, null);
  return shape(room, 'Body', 'AdvancedSweptSolid', solid);
}

/** An item as the representation of a product, by its identifier and type. */
export function shape({ writer, context }: ShapeRoom, identifier: string, type: string, item: number): number {
  const representation = writer.add('IFCSHAPEREPRESENTATION', of(context), stepText(identifier), stepText(type), [
    of(item),
  ]);
  return writer.add('IFCPRODUCTDEFINITIONSHAPE', null, null, [of(representation)]);
}
