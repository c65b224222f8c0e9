/** An upright rectangle on the sheet. Points, 72 an inch, from the lower left corner of the sheet. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const INCH = 72;
/** Points a millimetre. */
export const MM = 72 / 25.4;

export const right = ({ x, width }: Area): number => x + width;
export const top = ({ y, height }: Area): number => y + height;

/** The area without a margin on each of its sides. */
export const inset = ({ x, y, width, height }: Area, by: number): Area => ({
  x: x + by,
  y: y + by,
  width: Math.max(0, width - 2 * by),
  height: Math.max(0, height - 2 * by),
});

/** `inner` lies wholly in `outer`, to a thousandth of a point. */
export const isWithinArea = (inner: Area, outer: Area): boolean =>
  inner.x >= outer.x - 1e-3 &&
  inner.y >= outer.y - 1e-3 &&
  right(inner) <= right(outer) + 1e-3 &&
  top(inner) <= top(outer) + 1e-3;
