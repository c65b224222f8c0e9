import { footprintOf } from '../../../routing/network/footprint.ts';
import { boxOf, joinedBox, NO_BOX } from '../../../routing/plane/box.ts';
import { stallRectangle } from '../../../routing/reach/parked.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { workingSpaceOf } from '../../../routing/site/working-space.ts';
import { conduitStretches } from '../drawing/conduit-stretches.ts';
import type { Drawing, Extent } from '../drawing/drawing.ts';
import { right, top } from './area.ts';
import { drawBasePlan } from './base-plan.ts';
import { drawDimensions } from './dimension.ts';
import type { Draft, Job, SheetNumbers } from './draft.ts';
import { drawFeeders, feederWishes } from './feeders-on-plan.ts';
import { drawGridlines } from './gridlines-on-view.ts';
import { PENS, WHITE } from './ink.ts';
import { drawKeyPlan } from './key-plan.ts';
import { type Ground, writeLabels } from './labels.ts';
import { CAP } from './letters.ts';
import type { Pen } from './pen.ts';
import {
  aisleWishes,
  conduitWishes,
  dropWishes,
  equipmentWishes,
  groundOf,
  openingWishes,
  stallWishes,
} from './plan-labels.ts';
import { drawnExtent, footOf, LARGEST_RATIO, PLAN_NOTES, planRoom } from './plan-sheet.ts';
import { drawClouds } from './revised.ts';
import { pointsPerFoot, type Scale, scalesOf } from './scales.ts';
import { settingOutStrings } from './setting-out-strings.ts';
import { type Tile, tilesOf } from './tiles.ts';
import { drawUnderlays } from './underlay.ts';
import { grown, type View, viewIn } from './view.ts';
import { drawPlanFoot } from './view-title.ts';

/** Below 1/16 in = 1 ft, 1:200, a plan is no longer an enlarged one. */
const SMALLEST_RATIO = 200;
/** A larger scale is not worth more sheets than this. */
const MOST_SHEETS = 6;
/** Room between neighbouring drops that their numbers and circuits need, in sizes of the lettering. */
const LABEL_ROOM = 8.2;
const MARGIN = 3;
const KEY_PLAN = 150;

const NOTES = [
  'Dimensions are to the middle of boxes and retractors. A figure that is not shown for want of room is in the setting-out schedule, which governs: strings are rounded one by one.',
  'Beside each drop: its number, then panel and spaces of its circuits behind the colors of their lines.',
  ...PLAN_NOTES.slice(0, 2),
];

/** Room that a drop takes with its label, feet to either side. */
const DROP_ROOM = 2;

/** What enlarged plans are drawn of: drops, the stalls that they serve, and the equipment that feeds them. */
function subjectsOf(site: Site): readonly Extent[] {
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
  const feeding = new Set(site.chargers.map(({ from }) => from));
  return [
    ...site.drops.map(({ box, retractor = box }) =>
      grown(
        boxOf([
          [box[0], box[1]],
          [retractor[0], retractor[1]],
        ]),
        DROP_ROOM,
      ),
    ),
    ...site.stalls.filter(({ id }) => served.has(id)).map((stall) => boxOf(stallRectangle(stall))),
    ...site.equipment
      .filter(({ id }) => feeding.has(id))
      .map((one) => boxOf([...footprintOf(one), ...(workingSpaceOf(one) ?? [])])),
  ];
}

/** Plans of the dense parts, at a scale at which boxes and retractors can be set out from them; none without drops. */
export function enlargedSheets(job: Job, drawing: Drawing): readonly Draft[] {
  const { site, shape } = job;
  const subjects = subjectsOf(site);
  if (site.drops.length === 0) return [];
  const around = grown(subjects.reduce<Extent>(joinedBox, NO_BOX), MARGIN);
  const room = planRoom(shape);
  const shown = grown(drawnExtent(drawing), MARGIN);
  const tilesAt = (scale: Scale): readonly Tile[] => {
    const perFoot = pointsPerFoot(scale);
    const most = { width: room.width / perFoot, height: room.height / perFoot };
    return tilesOf(subjects, filling(around, shown, most), most);
  };
  const scales = scalesOf(site.units).filter(({ ratio }) => ratio >= LARGEST_RATIO && ratio <= SMALLEST_RATIO);
  const spacing = usualSpacing(site);
  const isReadable = (one: Scale): boolean => spacing * pointsPerFoot(one) >= LABEL_ROOM * job.lettering.sizes.small;
  const readable = scales.filter(isReadable);
  const scale = readable.find((one) => tilesAt(one).length <= MOST_SHEETS) ?? readable.at(-1) ?? scales[0]!;
  const tiles = tilesAt(scale);
  return tiles.map((tile, i): Draft => {
    const title = tiles.length === 1 ? 'Enlarged plan' : `Enlarged plan, area ${i + 1}`;
    return {
      key: keyOf(tile),
      series: 'E-1',
      title,
      scale: scale.says,
      draw: (pen, numbers) => drawTile(pen, job, drawing, { tiles, tile, scale, title }, numbers),
    };
  });
}

/** The middle one of the distances from each drop to the next, feet; boxes in one place do not count. */
function usualSpacing({ drops }: Site): number {
  const boxes = drops.map(({ box: [x, y] }): Point2 => [x, y]).sort((a, b) => a[0] - b[0]);
  const nearest = boxes.map(([x, y], i) => {
    let least = Infinity;
    for (const sense of [1, -1])
      for (let k = i + sense; k >= 0 && k < boxes.length && Math.abs(boxes[k]![0] - x) < least; k += sense) {
        const apart = Math.hypot(boxes[k]![0] - x, boxes[k]![1] - y);
        if (apart > 0.5) least = Math.min(least, apart);
      }
    return least;
  });
  const sorted = nearest.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 12;
}

/** The extent, widened to the size of a sheet where it is less, as far as there is something to show around it. */
function filling(around: Extent, shown: Extent, most: { readonly width: number; readonly height: number }): Extent {
  const [minX, maxX] = filled(around.minX, around.maxX, shown.minX, shown.maxX, most.width);
  const [minY, maxY] = filled(around.minY, around.maxY, shown.minY, shown.maxY, most.height);
  return { minX, minY, maxX, maxY };
}

function filled(from: number, to: number, least: number, last: number, most: number): readonly [number, number] {
  const spare = most - (to - from);
  if (spare <= 0) return [from, to];
  const before = Math.max(0, Math.min(from - least, Math.max(spare / 2, spare - (last - to))));
  const after = Math.max(0, Math.min(last - to, spare - before));
  return [from - before, to + after];
}

const keyOf = ({ column, row }: Tile): string => `enlarged ${column} ${row}`;

interface TileSheet {
  readonly tiles: readonly Tile[];
  readonly tile: Tile;
  readonly scale: Scale;
  readonly title: string;
}

function drawTile(pen: Pen, job: Job, drawing: Drawing, sheet: TileSheet, numbers: SheetNumbers): void {
  const { site, plan, shape } = job;
  const { tiles, tile, scale, title } = sheet;
  const view = viewIn(planRoom(shape), tile.window, scale);
  drawUnderlays(pen, job.underlays, view);
  drawGridlines(pen, view, site);
  drawFeeders(pen, view, site);
  drawBasePlan(pen, view, drawing);
  const ground = groundOf(view, site, plan);
  drawClouds(pen, view, ground, job.revision);
  drawMatchLines(pen, view, sheet, numbers, ground);
  const equipment = writeLabels(pen, view.area, ground, equipmentWishes(view, site));
  for (const { string, figures } of settingOutStrings(view, site, ground, pen.lettering))
    drawDimensions(pen, string, figures);
  writeLabels(pen, view.area, ground, [
    ...equipment,
    ...dropWishes(view, site, plan, true),
    ...conduitWishes(view, conduitStretches(plan.conduits)),
    ...feederWishes(view, site),
    ...openingWishes(view, site, plan),
    ...stallWishes(view, site, pen.lettering),
    ...aisleWishes(view, site),
  ]);
  const foot = footOf(shape);
  const hasKey = tiles.length > 1;
  drawPlanFoot(pen, foot, view, site, title, NOTES, right(foot) - (hasKey ? KEY_PLAN + 16 : 0));
  if (hasKey)
    drawKeyPlan(
      pen,
      { ...foot, x: right(foot) - KEY_PLAN, width: KEY_PLAN },
      tiles,
      tile,
      (one) => numbers.get(keyOf(one))!,
    );
}

/** A heavy line where the plan goes on on another sheet, with the number of that sheet. */
function drawMatchLines(pen: Pen, view: View, { tiles, tile }: TileSheet, numbers: SheetNumbers, ground: Ground): void {
  const { area } = view;
  const last = { column: Math.max(...tiles.map((one) => one.column)), row: Math.max(...tiles.map((one) => one.row)) };
  const size = pen.lettering.sizes.small;
  const sides = [
    { column: -1, row: 0, from: [area.x, area.y], to: [area.x, top(area)], turn: 90, off: -4 - size * 0.7 },
    { column: 1, row: 0, from: [right(area), area.y], to: [right(area), top(area)], turn: 90, off: 4 },
    { column: 0, row: 1, from: [area.x, area.y], to: [right(area), area.y], turn: 0, off: 4 },
    { column: 0, row: -1, from: [area.x, top(area)], to: [right(area), top(area)], turn: 0, off: -4 - size * 0.7 },
  ] as const;
  for (const side of sides) {
    const [column, row] = [tile.column + side.column, tile.row + side.row];
    if (column < 0 || row < 0 || column > last.column || row > last.row) continue;
    const neighbour = tiles.find((one) => one.column === column && one.row === row);
    const words = `MATCH LINE: see ${numbers.get(neighbour === undefined ? 'plan' : keyOf(neighbour))}`;
    pen.line([side.from, side.to], PENS.match);
    const width = pen.lettering.width(words, size) + 4;
    for (const share of [0.25, 0.75]) {
      const x = side.from[0] + share * (side.to[0] - side.from[0]);
      const y = side.from[1] + share * (side.to[1] - side.from[1]);
      const at: Point2 = side.turn === 90 ? [x - side.off, y] : [x, y + side.off];
      const room =
        side.turn === 90
          ? { x: at[0] - size * CAP - 1, y: y - width / 2, width: size * CAP + 2, height: width }
          : { x: x - width / 2, y: at[1] - 1, width, height: size * CAP + 2 };
      pen.fillArea(room, WHITE);
      pen.text(words, at, { size, anchor: 'middle', turn: side.turn });
      ground.hard.take(room);
    }
  }
}
