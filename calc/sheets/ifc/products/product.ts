import { rectangleAt } from '../../../../routing/plane/rectangle.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { IfcQuantities, Properties, PropertySet } from '../property-sets.ts';

/** One thing of the model. */
export interface Product {
  readonly entity: string;
  /** Kind and id, from which its global id is made. */
  readonly id: string;
  readonly name: string;
  /** Its predefined type; null where the class has none that fits. */
  readonly type: string | null;
  /** What it is where the predefined type is `USERDEFINED`. */
  readonly what?: string;
  readonly shape: number;
  /** The plan's own figures. */
  readonly facts: Properties;
  /** Sets of the standard. */
  readonly sets?: readonly PropertySet[];
  readonly quantities?: IfcQuantities;
}

/** Side of a box whose size is not known, feet. */
export const BOX = 0.5;

export const squareAt = ([x, y]: readonly number[], side: number): readonly Point2[] =>
  rectangleAt([x as number, y as number], [side, side], 0);
