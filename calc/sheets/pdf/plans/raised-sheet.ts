import { type Box, boxOf, widened } from '../../../../routing/plane/box.ts';
import { inPlan } from '../../../../routing/plane/space.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { heightsOf } from '../../../space/tallest.ts';
import type { Drawing, DrawnItem, DrawnText } from '../../drawing/drawing.ts';
import { raisedDrawing } from '../../drawing/raised-drawing.ts';
import { type Area, top } from '../kit/area.ts';
import type { Draft, Job } from '../kit/draft.ts';
import { BLACK, GREY, PENS } from '../kit/ink.ts';
import type { LabelGround, LabelWish } from '../kit/labels/best-label-place.ts';
import { freeSpace, takeAlong } from '../kit/labels/free-space.ts';
import { placesAround } from '../kit/labels/label-places.ts';
import { writeLabels, writeMostOrNone } from '../kit/labels/labels.ts';
import type { SheetShape } from '../kit/paper.ts';
import type { Pen } from '../kit/pen.ts';
import { pointsPerFoot, type Scale, scalesOf, scaleThatFits } from '../kit/view/scales.ts';
import { grown, sizeOf, type View, viewIn } from '../kit/view/view.ts';
import { drawPlanFoot, FOOT } from '../kit/view/view-title.ts';
import { drawBasePlan, symbolScale } from './base-plan.ts';
import { drawnExtent, planFoot } from './plan-sheet.ts';
import { LARGEST_RAISED, type RaisedPart, raisedParts, SMALLEST_RATIO } from './raised-parts.ts';

const MARGIN = 4;
/** A lot is shown in parts where it is drawn so many times larger then. */
const LARGER = 1.5;
/** Where fewer stalls than this share can be numbered, none is. */
const MOST_NUMBERED = 0.3;

const NOTES: readonly string[] = [
  'Military oblique: the plan is true to scale, and heights are drawn straight up at the same scale. Do not scale slanted lines.',
  'Vehicles are the boxes round the class that each stall is taken for. Cords are shown at rest, and as they hang with all of them out to the inlet of the worst case.',
  'Steel is shown as lines where the site has it; members, their sizes and what they bear are checked by others.',
];

/**
 * The site raised, as one sheet at a standard scale: all of it, in parts where those are drawn larger by a good deal, or of
 * a large lot the part round the middle of its drops.
 */
export function raisedSheets(job: Job): readonly Draft[] {
  const { site, plan, shape } = job;
  if (site.stalls.length + site.drops.length + site.raceways.length === 0) return [];
  const room = roomOf(shape);
  const whole = planBox(site);
  const high = heightsOf(site).high;
  const all = scaleThatFits(
    site.units,
    { width: whole.maxX - whole.minX + 2 * MARGIN, height: whole.maxY - whole.minY + high + 2 * MARGIN },
    room,
    LARGEST_RAISED,
  );
  const parts = raisedParts(site.units, whole, high, room, job.lettering.sizes.small, keptWhole(site));
  if (parts.length > 0 && parts[0]!.view.scale.ratio * LARGER <= all.ratio) return [sheetOfParts(job, parts)];
  const isPart = all.ratio > SMALLEST_RATIO;
  const least = scalesOf(site.units).findLast(({ ratio }) => ratio <= SMALLEST_RATIO)!;
  const within = isPart ? partOf(site, room, least, high) : undefined;
  const drawing = raisedDrawing(site, plan, within);
  const window = within ? { ...within, maxY: within.maxY + high } : grown(drawnExtent(drawing), MARGIN);
  const scale = isPart ? least : scaleThatFits(site.units, sizeOf(window), room, LARGEST_RAISED);
  const view = viewIn(room, window, scale);
  const title = isPart ? 'Raised view of a part of the lot' : 'Raised view';
  return [
    {
      key: 'raised',
      series: 'E-9',
      title,
      scale: scale.says,
      plan: view,
      draw: (pen) => {
        drawBasePlan(pen, view, drawing);
        letterRaised(pen, view, drawing);
        drawPlanFoot(pen, planFoot(shape), view, site, title, NOTES);
      },
    },
  ];
}

/** The parts of a lot under or beside one another. No one place and scale of the sheet holds for all of them, so it states none. */
function sheetOfParts({ site, plan, shape }: Job, parts: readonly RaisedPart[]): Draft {
  const { scale } = parts[0]!.view;
  const title = 'Raised view';
  return {
    key: 'raised',
    series: 'E-9',
    title,
    scale: scale.says,
    draw: (pen) => {
      for (const { within, view, words, cuts } of parts) {
        const drawing = raisedDrawing(site, plan, within);
        drawBasePlan(pen, view, drawing);
        letterRaised(pen, view, drawing);
        const { area } = view;
        pen.text(words, [area.x, top(area) + 4], { size: pen.lettering.sizes.small, weight: 'bold' });
        for (const cut of cuts) pen.line(cut, PENS.match);
      }
      drawPlanFoot(pen, planFoot(shape), parts[0]!.view, site, title, NOTES);
    },
  };
}

/** Of a site what no cut between parts is to go through. */
const keptWhole = ({ drops, equipment }: Site): readonly Point2[] => [
  ...drops.map(({ box }) => inPlan(box)),
  ...equipment.map(({ at }) => at),
];

const roomOf = ({ field }: SheetShape): Area => ({ ...field, y: field.y + FOOT + 8, height: field.height - FOOT - 8 });

/** A raised view of the whole lot, as large as its sheet would have it, or as the smallest that can be read. */
export function wholeRaised({ units }: Site, shape: SheetShape, drawing: Drawing): View {
  const window = grown(drawnExtent(drawing), MARGIN);
  const size = sizeOf(window);
  const fits = scaleThatFits(units, size, roomOf(shape), LARGEST_RAISED);
  const scale = fits.ratio > SMALLEST_RATIO ? scalesOf(units).findLast(({ ratio }) => ratio <= SMALLEST_RATIO)! : fits;
  const perFoot = pointsPerFoot(scale);
  return viewIn({ x: 0, y: 0, width: size.width * perFoot, height: size.height * perFoot }, window, scale);
}

/** Writes the names of a raised view where there is room: on no symbol, and on no raceway or cord if there is other. */
export function letterRaised(pen: Pen, view: View, drawing: Drawing): void {
  const ground = groundOf(view, drawing);
  const wishes = (layer: string): readonly LabelWish[] =>
    drawing.items.flatMap((item) => (item.kind === 'text' && item.layer === layer ? [wishOf(view, item)] : []));
  writeLabels(pen, view.area, ground, [...wishes('equipment'), ...wishes('dropNumbers')]);
  writeMostOrNone(pen, view.area, ground, wishes('stallNumbers'), MOST_NUMBERED);
}

/** All of a site in plan but a source that stands far off. */
function planBox(site: Site): Box {
  const points: Point2[] = [
    ...site.stalls.map(({ at }) => at),
    ...site.members.flatMap(({ from, to }) => [inPlan(from), inPlan(to)]),
    ...site.raceways.flatMap(({ path }) => path.map(inPlan)),
    ...site.drops.map(({ box }) => inPlan(box)),
    ...site.equipment.map(({ at }) => at),
  ];
  return widened(boxOf(points), 20);
}

/** As much of the plan as a sheet has room for, round the drop in the middle of the list of those from left to right. */
function partOf(site: Site, room: Area, scale: Scale, high: number): Box {
  const along = [...site.drops].sort((a, b) => a.box[0] - b.box[0]);
  const middle = along[Math.floor(along.length / 2)]?.box ?? site.stalls[0]?.at ?? site.raceways[0]!.path[0]!;
  const [width, height] = [room.width, room.height].map((points) => points / pointsPerFoot(scale));
  return {
    minX: middle[0] - width! / 2,
    maxX: middle[0] + width! / 2,
    minY: middle[1] - (height! - high) / 2,
    maxY: middle[1] + (height! - high) / 2,
  };
}

/** What of the view no word may hide: symbols wholly, raceways and cords if there is other room. */
function groundOf(view: View, { items }: Drawing): LabelGround {
  const ground: LabelGround = { hard: freeSpace(), heavy: freeSpace(), thin: freeSpace() };
  const half = 0.7 * symbolScale(view.perFoot);
  for (const item of items) {
    if (item.kind === 'symbol') {
      const [x, y] = view.at(item.at);
      ground.hard.take({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
    } else if (item.kind === 'line') {
      const space = HEAVY.has(item.layer) ? ground.heavy : ground.thin;
      takeAlong(space, item.points.map(view.at), 0.8);
    }
  }
  return ground;
}

const HEAVY: ReadonlySet<DrawnItem['layer']> = new Set([
  'raceways',
  'underground',
  'existingRaceways',
  'existingUnderground',
  'feeders',
  'existingFeeders',
  'cords',
  'equipment',
  'columns',
]);

const wishOf = (view: View, item: DrawnText): LabelWish => ({
  layer: item.layer,
  lines: [{ text: item.text, ...(item.layer !== 'stallNumbers' && { weight: 'bold' as const }) }],
  size: item.layer === 'equipment' ? 'note' : 'small',
  colour: item.layer === 'stallNumbers' ? GREY : BLACK,
  places: (size) => placesAround(view.at(item.at), 3, size, item.layer !== 'stallNumbers'),
});
