import { membersNear, steelOf } from '../../../routing/network/support/steel-near.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { obstacleOf, spansInside } from '../../../routing/plane/obstacle.ts';
import type { Point2, Site, Stall } from '../../../routing/site/site.ts';
import { directionsOf, inletAt, vehicleOf } from '../../../routing/standing/parked.ts';
import { type Block, COLUMN_REACH, columnBlock, columnTop, equipmentBlock, vehicleBlock } from '../block.ts';
import type { CutView } from './cut.ts';
import { rectangle, type SectionPart, type SectionShape } from './shape.ts';

const PART: Readonly<Record<Block['list'], SectionPart>> = {
  stalls: 'vehicle',
  columns: 'column',
  equipment: 'equipment',
};

/** Cars, columns and cabinets that a cut goes through, and those that are seen past it; with the zones of the inlets. */
export function cutBlocks(site: Site, view: CutView): readonly SectionShape[] {
  const { stalls, columns, equipment, rules, members } = site;
  return [
    ...stalls.flatMap((stall) => {
      const shapes = shapesOf(vehicleBlock(stall, vehicleOf(stall, site), rules.headClearance), view);
      return shapes.some(({ isCut }) => isCut) ? [...shapes, inletZone(stall, site, view)] : shapes;
    }),
    ...columns.flatMap((column) => {
      const near = shapesOf(columnBlock(column, 1), view).length > 0;
      const above = near ? membersNear(steelOf(members), boxOf([column.at]), COLUMN_REACH) : [];
      return near ? shapesOf(columnBlock(column, columnTop(column, above)), view) : [];
    }),
    ...equipment.flatMap((one) => shapesOf(equipmentBlock(one), view)),
  ];
}

function shapesOf(block: Block, view: CutView): SectionShape[] {
  const { id, outline, low, high, list } = block;
  const across = outline.map(view.across);
  const away = outline.map(view.away);
  const [least, most] = [Math.min(...away), Math.max(...away)];
  const [from, to] = [Math.max(0, Math.min(...across)), Math.min(view.length, Math.max(...across))];
  if (from >= to || most < 0 || least > view.depth) return [];
  const part = PART[list];
  if (least >= 0)
    return [{ kind: 'outline', part, id, isCut: false, away: least, points: rectangle(from, to, low, high) }];
  const { left, right, length } = view;
  return spansInside(obstacleOf(outline), left[0], left[1], right[0], right[1]).map(
    ([start, end]): SectionShape => ({
      kind: 'outline',
      part,
      id,
      isCut: true,
      away: 0,
      points: rectangle(start * length, end * length, low, high),
    }),
  );
}

/** Where the inlets of the car in a stall may be, however it is parked: the box round them. */
function inletZone(stall: Stall, site: Site, view: CutView): SectionShape {
  const vehicle = vehicleOf(stall, site);
  const places = directionsOf(stall).flatMap((way) =>
    vehicle.inlets.map((inlet) => inletAt(stall, vehicle, site.rules.headClearance, way, inlet)),
  );
  const across = places.map((at) => Math.min(view.length, Math.max(0, view.across(at))));
  const heights = places.map(([, , z]) => z);
  const points: readonly Point2[] = rectangle(
    Math.min(...across),
    Math.max(...across),
    Math.min(...heights) - ROOM,
    Math.max(...heights) + ROOM,
  );
  return { kind: 'outline', part: 'inlet zone', id: stall.id, isCut: false, away: 0, points };
}

/** A zone of inlets of one height is drawn so much higher and lower, feet. */
const ROOM = 0.25;
