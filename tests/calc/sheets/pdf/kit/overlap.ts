import type { Area } from '../../../../../calc/sheets/pdf/kit/area.ts';

/** Two areas share more than an edge. */
export const overlap = (a: Area, b: Area): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
