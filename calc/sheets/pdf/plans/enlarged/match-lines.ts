import type { Point2 } from '../../../../../routing/site/site.ts';
import { type Area, inset, isWithinArea, right, top } from '../../kit/area.ts';
import type { SheetNumbers } from '../../kit/draft.ts';
import { PENS, WHITE } from '../../kit/ink.ts';
import type { LabelGround } from '../../kit/labels/best-label-place.ts';
import { CAP } from '../../kit/lettering/letters.ts';
import type { Pen } from '../../kit/pen.ts';
import type { View } from '../../kit/view/view.ts';
import { type Tile, tileKey } from './tiles.ts';

/** A stretch of the edge of a view past which the plan continues on another sheet. */
export interface MatchEdge {
  readonly from: Point2;
  readonly to: Point2;
  /** Degrees. */
  readonly turn: 0 | 90;
  /** The view lies above it, or left of one that is upright. */
  readonly isInside: boolean;
  /** Key of the sheet on which the plan goes on. */
  readonly key: string;
}

/** Feet: an area that begins so near beside another goes on from it. */
const TOUCH = 1;
/** Feet: areas that have less of an edge in common meet at a corner alone. */
const LEAST_EDGE = 4;

/** Where the plan goes on past the edges of a tile: on that of the next, or, past an area of somebody's choice, on one that lies there. */
export function matchEdges(tiles: readonly Tile[], tile: Tile, { area, at, window }: View): readonly MatchEdge[] {
  const sides = [
    { column: -1, row: 0, turn: 90, isInside: false, place: [area.x, area.y] },
    { column: 1, row: 0, turn: 90, isInside: true, place: [right(area), area.y] },
    { column: 0, row: 1, turn: 0, isInside: true, place: [area.x, area.y] },
    { column: 0, row: -1, turn: 0, isInside: false, place: [area.x, top(area)] },
  ] as const;
  const last = { column: Math.max(...tiles.map((one) => one.column)), row: Math.max(...tiles.map((one) => one.row)) };
  return sides.flatMap(({ column, row, turn, isInside, place: [x, y] }): readonly MatchEdge[] => {
    const end: Point2 = turn === 90 ? [x, top(area)] : [right(area), y];
    if (tile.name === undefined) {
      const [c, r] = [tile.column + column, tile.row + row];
      if (c < 0 || r < 0 || c > last.column || r > last.row) return [];
      const next = tiles.find((one) => one.column === c && one.row === r);
      return [{ from: [x, y], to: end, turn, isInside, key: next ? tileKey(next) : 'plan' }];
    }
    return tiles.flatMap((other): readonly MatchEdge[] => {
      const { minX, minY, maxX, maxY } = other.window;
      const goesOn =
        column > 0
          ? minX <= window.maxX + TOUCH && maxX > window.maxX + TOUCH
          : column < 0
            ? maxX >= window.minX - TOUCH && minX < window.minX - TOUCH
            : row > 0
              ? maxY >= window.minY - TOUCH && minY < window.minY - TOUCH
              : minY <= window.maxY + TOUCH && maxY > window.maxY + TOUCH;
      if (other === tile || !goesOn) return [];
      const [low, high] =
        turn === 90
          ? [Math.max(minY, window.minY), Math.min(maxY, window.maxY)]
          : [Math.max(minX, window.minX), Math.min(maxX, window.maxX)];
      if (high - low < LEAST_EDGE) return [];
      const spot = (along: number): Point2 => (turn === 90 ? [x, at([0, along])[1]] : [at([along, 0])[0], y]);
      return [{ from: spot(low), to: spot(high), turn, isInside, key: tileKey(other) }];
    });
  });
}

/** Shares of a match line at which its words may stand. */
const SHARES = Array.from({ length: 91 }, (_, i) => 0.05 + i / 100);

/** A heavy line where the plan continues on another sheet, with the number of that sheet. */
export function drawMatchLines(
  pen: Pen,
  { area }: View,
  edges: readonly MatchEdge[],
  numbers: SheetNumbers,
  ground: LabelGround,
): void {
  const size = pen.lettering.sizes.small;
  const costOf = ({ share, room }: { readonly share: number; readonly room: Area }, wished: number): number =>
    Math.abs(share - wished) + (ground.thin.isFree(room) ? 0 : 0.15);
  const [tall, wide] = [
    { ...area, x: area.x - 60, width: area.width + 120 },
    { ...area, y: area.y - 60, height: area.height + 120 },
  ].map((band) => inset(band, 10));
  const isClear = (room: Area): boolean => ground.hard.isFree(room) && ground.heavy.isFree(room);
  for (const { key, from, to, turn, isInside } of edges) {
    const elsewhere = numbers.get(key);
    const off = isInside ? 4 : -4 - size * 0.7;
    const words = elsewhere === undefined ? 'MATCH LINE' : `MATCH LINE: see ${elsewhere}`;
    pen.line([from, to], PENS.match);
    const width = pen.lettering.width(words, size) + 4;
    const placesAt = (beside: number) =>
      SHARES.flatMap((share) => {
        const x = from[0] + share * (to[0] - from[0]);
        const y = from[1] + share * (to[1] - from[1]);
        const at: Point2 = turn === 90 ? [x - beside, y] : [x, y + beside];
        const room: Area =
          turn === 90
            ? { x: at[0] - size * CAP - 1, y: y - width / 2, width: size * CAP + 2, height: width }
            : { x: x - width / 2, y: at[1] - 1, width, height: size * CAP + 2 };
        return isWithinArea(room, turn === 90 ? tall! : wide!) ? [{ share, at, room }] : [];
      });
    const inside = placesAt(off).filter(({ room }) => isClear(room));
    // Where spurs cross it all along, the words stand on its other side, past the edge of the view.
    const clear = inside.length > 0 ? inside : placesAt(off > 0 ? -1.4 - size * CAP : 1.4);
    for (const wished of [0.25, 0.75]) {
      const near = [...clear].sort((a, b) => costOf(a, wished) - costOf(b, wished));
      const place = near.find(({ room }) => isClear(room));
      if (place === undefined) continue;
      pen.fillArea(place.room, WHITE);
      pen.text(words, place.at, { size, anchor: 'middle', turn: turn });
      ground.hard.take(place.room);
    }
  }
}
