import { spansInside } from '../../plane/obstacle.ts';
import { inStall } from '../../site/place/stall-rectangle.ts';
import type { Aisle, Stall } from '../../site/site.ts';
import { outlineOf } from '../../standing/outlines.ts';

/** An aisle that begins no farther than this from a stall's side lies beside it, feet: the width of a line of paint. */
const BESIDE = 0.5;
/** Ends of an aisle may fall short of the stall's by this, feet. */
const SHORT = 0.25;
/** No aisle is looked at wider than this, feet. */
const WIDEST = 30;

/** How wide an access aisle lies beside a stall over its whole length, feet, on the better side; 0 where none does. */
export function aisleBeside(stall: Stall, aisles: readonly Aisle[]): number {
  const access = aisles.filter(({ kind }) => kind === 'access');
  if (access.length === 0) return 0;
  return Math.max(...[1, -1].map((side) => Math.max(...access.map((aisle) => widthBeside(stall, aisle, side)))));
}

/** The least width of an aisle along one side: it is that at one of its corners, or at an end of the stall. */
function widthBeside(stall: Stall, aisle: Aisle, side: number): number {
  const outline = outlineOf(aisle);
  const places = [SHORT, stall.depth - SHORT, ...cornersAlong(stall, aisle)].flatMap((at) => [at - 1e-3, at + 1e-3]);
  const inside = places.filter((at) => at >= SHORT - 2e-3 && at <= stall.depth - SHORT + 2e-3);
  return Math.min(
    ...inside.map((along) => {
      const from = inStall(stall, along, side * (stall.width / 2));
      const to = inStall(stall, along, side * (stall.width / 2 + WIDEST));
      const first = spansInside(outline, from[0], from[1], to[0], to[1])[0];
      if (first === undefined || first[0] * WIDEST > BESIDE) return 0;
      return (first[1] - first[0]) * WIDEST;
    }),
  );
}

/** How far along the stall from its entry edge the corners of an aisle lie, feet. */
function cornersAlong(stall: Stall, { outline }: Aisle): readonly number[] {
  const [ox, oy] = inStall(stall, 0, 0);
  const [hx, hy] = inStall(stall, 1, 0);
  return outline.map(([x, y]) => (x - ox) * (hx - ox) + (y - oy) * (hy - oy));
}
