import { kept } from '../../../../../routing/kept/kept.ts';
import { boxesMeet, boxOf, joinedBox, NO_BOX } from '../../../../../routing/plane/box.ts';
import { stallRectangle } from '../../../../../routing/site/place/stall-rectangle.ts';
import { workingSpaceOf } from '../../../../../routing/site/place/working-space.ts';
import type { Point2, Site } from '../../../../../routing/site/site.ts';
import { footprintOf } from '../../../../../routing/standing/footprint.ts';
import { tablesOf } from '../../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../../tables/equipment-of.ts';
import type { Drawing, Extent } from '../../../drawing/drawing.ts';
import type { LetterSizes } from '../../kit/lettering/letters.ts';
import type { SheetShape } from '../../kit/paper.ts';
import { pointsPerFoot, type Scale, scalesOf, scaleThatFits } from '../../kit/view/scales.ts';
import { grown } from '../../kit/view/view.ts';
import { drawnExtent, LARGEST_RATIO, overviewScale, planRoom } from '../plan-sheet.ts';
import { type Tile, tilesOf } from './tiles.ts';

/** Below 1/16 in = 1 ft, 1:200, a plan is no longer an enlarged one. */
const SMALLEST_RATIO = 200;
/** A larger scale is not worth more sheets than this. */
const MOST_SHEETS = 6;
/** Room between neighbouring drops that their numbers and circuits need, in sizes of the lettering. */
const LABEL_ROOM = 8.2;
/** White round what is shown, feet. */
const MARGIN = 3;
/** To either side of a raceway no match line runs along it, feet. */
const BESIDE_RACEWAY = 2;
/** Where the plan of the whole lot is at most so much smaller, an enlarged one would show nothing more. */
const AS_GOOD = 1.4;

/** No sheet of several has less of its room for a plan taken up by one, where another scale is to be had. */
export const LEAST_SHARE = 0.25;

/** How much of the room for a plan a tile takes up. */
export const shareOf = (
  { window }: Tile,
  scale: Scale,
  room: { readonly width: number; readonly height: number },
): number =>
  ((window.maxX - window.minX) * (window.maxY - window.minY) * pointsPerFoot(scale) ** 2) / (room.width * room.height);

/** The areas of the enlarged plans, and the scale that all have. */
export interface EnlargedAreas {
  readonly scale: Scale;
  readonly tiles: readonly Tile[];
}

/**
 * The parts of a lot that are drawn larger, at the standard scale that needs fewest sheets for its size among those at
 * which drops can be set out and lettered. None without drops, nor where one sheet would do for all and the plan of the
 * whole lot is about as large: then that one is drawn in full.
 */
export const enlargedAreas = kept(areasFor);

function areasFor(site: Site, shape: SheetShape, sizes: LetterSizes, drawing: Drawing): EnlargedAreas | null {
  if (site.drops.length === 0) return null;
  if (site.drawings.areas !== undefined && site.drawings.areas.length > 0) return chosenAreas(site, shape);
  const subjects = subjectsOf(site);
  const feeding = new Set(site.chargers.map(({ from }) => from));
  const all = equipmentOf(site);
  const fed = all.filter(({ id }) => feeding.has(id)).map(({ box }) => box);
  const lines = site.raceways.flatMap(({ path }) =>
    path.slice(1).map(([x, y], i) =>
      grown(
        boxOf([
          [path[i]![0], path[i]![1]],
          [x, y],
        ]),
        BESIDE_RACEWAY,
      ),
    ),
  );
  const needed = grown([...subjects, ...fed].reduce<Extent>(joinedBox, NO_BOX), MARGIN);
  // What the edge of the plan would cut through is shown whole.
  const whole = all.map(({ box }) => box);
  const around = whole
    .filter((box) => boxesMeet(box, needed))
    .reduce<Extent>((box, one) => joinedBox(box, grown(one, 1)), needed);
  const room = planRoom(shape);
  const shown = grown(drawnExtent(drawing), MARGIN);
  const tilesAt = (scale: Scale): readonly Tile[] => {
    const perFoot = pointsPerFoot(scale);
    const most = { width: room.width / perFoot, height: room.height / perFoot };
    return tilesOf([...subjects, ...fed], sparing(filling(around, shown, most), around, whole), most, { whole, lines });
  };
  const { scale: chosen } = site.drawings;
  if (chosen !== undefined) {
    const scale = standardScale(site.units, chosen);
    return { scale, tiles: tilesAt(scale) };
  }
  const scales = scalesOf(site.units).filter(({ ratio }) => ratio >= LARGEST_RATIO && ratio <= SMALLEST_RATIO);
  const spacing = usualSpacing(site);
  const isReadable = (one: Scale): boolean => spacing * pointsPerFoot(one) >= LABEL_ROOM * sizes.small;
  const readable = scales.filter(isReadable);
  const tried = (readable.length > 0 ? readable : scales.slice(0, 1)).map((scale) => ({
    scale,
    tiles: tilesAt(scale),
  }));
  const isFull = ({ scale, tiles }: EnlargedAreas): boolean =>
    tiles.every((tile) => shareOf(tile, scale, room) >= LEAST_SHARE);
  const some = tried.filter(({ tiles }) => tiles.length <= MOST_SHEETS);
  const full = some.filter(isFull);
  const few = full.length > 0 ? full : some;
  let best = few[0] ?? tried.findLast(isFull) ?? tried.at(-1)!;
  // Of two that need as much paper for their size the one with fewer sheets.
  const paperOf = ({ scale, tiles }: EnlargedAreas): number => scale.ratio * tiles.length;
  for (const each of few) if (paperOf(each) <= paperOf(best)) best = each;
  const overview = overviewScale(site, shape, drawing);
  const isEnough = best.tiles.length === 1 && overview.ratio <= best.scale.ratio * AS_GOOD && isReadable(overview);
  return isEnough ? null : best;
}

/** The first standard scale at which the drawing is no larger than at a ratio. */
const standardScale = (units: Site['units'], ratio: number): Scale =>
  scalesOf(units).find((scale) => scale.ratio >= ratio) ?? scalesOf(units).at(-1)!;

/** The areas that somebody chose, at the scale that was chosen or the largest at which each goes onto a sheet. */
function chosenAreas(site: Site, shape: SheetShape): EnlargedAreas {
  const { areas = [], scale: chosen = LARGEST_RATIO } = site.drawings;
  const windows = areas.map(({ from, to }) => boxOf([from, to]));
  const room = planRoom(shape);
  const feet = {
    width: Math.max(...windows.map(({ minX, maxX }) => maxX - minX), 1),
    height: Math.max(...windows.map(({ minY, maxY }) => maxY - minY), 1),
  };
  return {
    scale: scaleThatFits(site.units, feet, room, chosen),
    tiles: areas.map(({ name }, i) => ({ window: windows[i]!, column: i, row: 0, name })),
  };
}

/** Room that a drop takes with its label, feet to either side. */
const DROP_ROOM = 2;

/** What enlarged plans are drawn of beside the equipment: drops and the stalls that they serve. */
function subjectsOf(site: Site): readonly Extent[] {
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
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
  ];
}

/** The equipment, each with the space that must stay clear before it. */
function equipmentOf(site: Site): readonly { readonly id: string; readonly box: Extent }[] {
  const least = leastWorkingSpace(tablesOf(site.rules));
  return site.equipment.map((one) => ({
    id: one.id,
    box: boxOf([...footprintOf(one), ...(workingSpaceOf(one, least) ?? [])]),
  }));
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

/** The extent, drawn in to where its edges cut nothing that is to be whole, as far as what it is for lets it. */
function sparing(extent: Extent, around: Extent, whole: readonly Extent[]): Extent {
  let { minX, minY, maxX, maxY } = extent;
  const isAcross = (low: number, high: number, edge: number): boolean => low < edge && edge < high;
  for (const box of whole) {
    if (!boxesMeet(box, { minX, minY, maxX, maxY })) continue;
    if (isAcross(box.minX, box.maxX, minX)) minX = Math.min(around.minX, box.maxX);
    else if (isAcross(box.minX, box.maxX, maxX)) maxX = Math.max(around.maxX, box.minX);
    else if (isAcross(box.minY, box.maxY, minY)) minY = Math.min(around.minY, box.maxY);
    else if (isAcross(box.minY, box.maxY, maxY)) maxY = Math.max(around.maxY, box.minY);
  }
  return { minX, minY, maxX, maxY };
}

function filled(from: number, to: number, least: number, last: number, most: number): readonly [number, number] {
  const spare = most - (to - from);
  if (spare <= 0) return [from, to];
  const before = Math.max(0, Math.min(from - least, Math.max(spare / 2, spare - (last - to))));
  const after = Math.max(0, Math.min(last - to, spare - before));
  return [from - before, to + after];
}
