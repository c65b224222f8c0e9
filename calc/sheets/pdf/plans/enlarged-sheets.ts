import type { Point2 } from '../../../../routing/site/site.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, inset, right, top, within } from '../kit/area.ts';
import type { Draft, Job, SheetNumbers } from '../kit/draft.ts';
import { PENS, WHITE } from '../kit/ink.ts';
import type { Ground } from '../kit/labels.ts';
import { CAP } from '../kit/letters.ts';
import type { Pen } from '../kit/pen.ts';
import { type View, viewIn } from '../kit/view.ts';
import { drawPlanFoot } from '../kit/view-title.ts';
import type { EnlargedAreas } from './enlarged-areas.ts';
import { drawKeyPlan } from './key-plan.ts';
import { drawInFull, FULL_NOTES } from './plan-in-full.ts';
import { footOf, planRoom } from './plan-sheet.ts';
import type { Tile } from './tiles.ts';

const KEY_PLAN = 150;

/** Plans of the dense parts, at a scale at which boxes and retractors can be set out from them. */
export function enlargedSheets(job: Job, drawing: Drawing, { scale, tiles }: EnlargedAreas): readonly Draft[] {
  return tiles.map((tile, i): Draft => {
    const area = tile.name ?? `area ${i + 1}`;
    const title = tiles.length === 1 && tile.name === undefined ? 'Enlarged plan' : `Enlarged plan, ${area}`;
    const view = viewIn(planRoom(job.shape), tile.window, scale);
    return {
      key: keyOf(tile),
      series: 'E-4',
      title,
      scale: scale.says,
      plan: view,
      draw: (pen, numbers) => drawTile(pen, job, drawing, { tiles, tile, view, title }, numbers),
    };
  });
}

const keyOf = ({ column, row }: Tile): string => `enlarged ${column} ${row}`;

interface TileSheet {
  readonly tiles: readonly Tile[];
  readonly tile: Tile;
  readonly view: View;
  readonly title: string;
}

function drawTile(pen: Pen, job: Job, drawing: Drawing, sheet: TileSheet, numbers: SheetNumbers): void {
  const { site, shape } = job;
  const { tiles, tile, view, title } = sheet;
  drawInFull(pen, job, drawing, view, (ground) => drawMatchLines(pen, view, sheet, numbers, ground));
  const foot = footOf(shape);
  const hasKey = tiles.length > 1;
  drawPlanFoot(pen, foot, view, site, title, FULL_NOTES, right(foot) - (hasKey ? KEY_PLAN + 16 : 0));
  if (hasKey)
    drawKeyPlan(
      pen,
      { ...foot, x: right(foot) - KEY_PLAN, width: KEY_PLAN },
      tiles,
      tile,
      (one) => numbers.get(keyOf(one))!,
    );
}

/** Shares of a match line at which its words may stand. */
const SHARES = Array.from({ length: 91 }, (_, i) => 0.05 + i / 100);

/** A heavy line where the plan goes on on another sheet, with the number of that sheet. */
function drawMatchLines(pen: Pen, view: View, { tiles, tile }: TileSheet, numbers: SheetNumbers, ground: Ground): void {
  const { area } = view;
  const last = { column: Math.max(...tiles.map((one) => one.column)), row: Math.max(...tiles.map((one) => one.row)) };
  const size = pen.lettering.sizes.small;
  const costOf = ({ share, room }: { readonly share: number; readonly room: Area }, wished: number): number =>
    Math.abs(share - wished) + (ground.thin.isFree(room) ? 0 : 0.15);
  const [tall, wide] = [
    { ...area, x: area.x - 60, width: area.width + 120 },
    { ...area, y: area.y - 60, height: area.height + 120 },
  ].map((band) => inset(band, 10));
  const isClear = (room: Area): boolean => ground.hard.isFree(room) && ground.heavy.isFree(room);
  const sides = [
    { column: -1, row: 0, from: [area.x, area.y], to: [area.x, top(area)], turn: 90, off: -4 - size * 0.7 },
    { column: 1, row: 0, from: [right(area), area.y], to: [right(area), top(area)], turn: 90, off: 4 },
    { column: 0, row: 1, from: [area.x, area.y], to: [right(area), area.y], turn: 0, off: 4 },
    { column: 0, row: -1, from: [area.x, top(area)], to: [right(area), top(area)], turn: 0, off: -4 - size * 0.7 },
  ] as const;
  for (const side of sides) {
    const [column, row] = [tile.column + side.column, tile.row + side.row];
    if (tile.name !== undefined || column < 0 || row < 0 || column > last.column || row > last.row) continue;
    const neighbour = tiles.find((one) => one.column === column && one.row === row);
    const elsewhere = numbers.get(neighbour === undefined ? 'plan' : keyOf(neighbour));
    const words = elsewhere === undefined ? 'MATCH LINE' : `MATCH LINE: see ${elsewhere}`;
    pen.line([side.from, side.to], PENS.match);
    const width = pen.lettering.width(words, size) + 4;
    const placesAt = (off: number) =>
      SHARES.flatMap((share) => {
        const x = side.from[0] + share * (side.to[0] - side.from[0]);
        const y = side.from[1] + share * (side.to[1] - side.from[1]);
        const at: Point2 = side.turn === 90 ? [x - off, y] : [x, y + off];
        const room: Area =
          side.turn === 90
            ? { x: at[0] - size * CAP - 1, y: y - width / 2, width: size * CAP + 2, height: width }
            : { x: x - width / 2, y: at[1] - 1, width, height: size * CAP + 2 };
        return within(room, side.turn === 90 ? tall! : wide!) ? [{ share, at, room }] : [];
      });
    const inside = placesAt(side.off).filter(({ room }) => isClear(room));
    // Where spurs cross it all along, the words stand on its other side, past the edge of the view.
    const clear = inside.length > 0 ? inside : placesAt(side.off > 0 ? -1.4 - size * CAP : 1.4);
    for (const wished of [0.25, 0.75]) {
      const near = [...clear].sort((a, b) => costOf(a, wished) - costOf(b, wished));
      const place = near.find(({ room }) => isClear(room));
      if (place === undefined) continue;
      pen.fillArea(place.room, WHITE);
      pen.text(words, place.at, { size, anchor: 'middle', turn: side.turn });
      ground.hard.take(place.room);
    }
  }
}
