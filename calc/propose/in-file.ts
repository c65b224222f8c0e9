import { fromFeet } from '../../routing/site/numbers/units.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Point2, Point3 } from '../../routing/site/site.ts';

/** To a tenth of a millimetre, or a ten-thousandth of a foot: finer than anything is set out. */
const round = (value: number): number => Math.round(value * 1e4) / 1e4;

/** A length in the units of the file. */
export const lengthIn = (units: Units, feet: number): number => round(fromFeet(feet, units));

/** A place in the units of the file. */
export const placeIn = (units: Units, [x, y, z]: Point3): [number, number, number] => [
  lengthIn(units, x),
  lengthIn(units, y),
  lengthIn(units, z),
];

export const flatIn = (units: Units, [x, y]: Point2): [number, number] => [lengthIn(units, x), lengthIn(units, y)];
