import { kept } from '../../../routing/kept/kept.ts';
import { type Box, boxOf } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Site, Stall } from '../../../routing/site/site.ts';

/** Stalls side by side as one rectangle: what is left of them from far off. */
export interface StallBand extends Box {
  readonly corners: readonly Point2[];
  readonly stalls: number;
}

/** Stalls closer than this, feet, are side by side. */
const NEAR = 0.05;

/** Stalls that follow one another in the file and stand side by side, as bands. */
export const stallBands = kept((stalls: Site['stalls']): readonly StallBand[] => {
  const bands: StallBand[] = [];
  let row: Stall[] = [];
  const close = (): void => {
    const first = row[0];
    const last = row.at(-1);
    if (first && last) bands.push(bandOf(first, last, row.length));
    row = [];
  };
  for (const stall of stalls) {
    const last = row.at(-1);
    if (last && !(isBeside(last, stall) && (row.length < 2 || sameWay(row.at(-2)!, last, stall)))) close();
    row.push(stall);
  }
  close();
  return bands;
});

function isBeside(a: Stall, b: Stall): boolean {
  if (a.heading !== b.heading || a.depth !== b.depth) return false;
  const [ux, uy] = direction(a.heading);
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const along = Math.abs(dx * ux + dy * uy);
  const across = Math.abs(dx * -uy + dy * ux);
  return along < NEAR && Math.abs(across - (a.width + b.width) / 2) < NEAR;
}

const sameWay = (a: Stall, b: Stall, c: Stall): boolean =>
  (b.at[0] - a.at[0]) * (c.at[0] - b.at[0]) + (b.at[1] - a.at[1]) * (c.at[1] - b.at[1]) > 0;

function bandOf(first: Stall, last: Stall, stalls: number): StallBand {
  if (first === last) return { corners: stallRectangle(first), stalls, ...boxOf(stallRectangle(first)) };
  // From the outer side of the one to the outer side of the other, whichever way the row goes.
  const [right, headRight, headLeft, left] = stallRectangle(first);
  const [lastRight, lastHeadRight, lastHeadLeft, lastLeft] = stallRectangle(last);
  const [ux, uy] = direction(first.heading);
  const toLeft = (last.at[0] - first.at[0]) * -uy + (last.at[1] - first.at[1]) * ux > 0;
  const corners = toLeft ? [right, headRight, lastHeadLeft, lastLeft] : [lastRight, lastHeadRight, headLeft, left];
  return { corners, stalls, ...boxOf(corners) };
}
