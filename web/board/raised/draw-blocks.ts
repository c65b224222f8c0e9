import { columnBlock, columnTop, equipmentBlock, vehicleBlock } from '../../../calc/space/block.ts';
import { type SeenBlock, seenBlock } from '../../../calc/space/oblique.ts';
import { farthestFirst } from '../../../calc/space/paint-order.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { widened } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import type { Equipment, Site, Stall, Vehicle } from '../../../routing/site/site.ts';
import { vehicleOf } from '../../../routing/standing/parked.ts';
import type { ColumnMark } from '../kinds/columns.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceOutline } from '../pictures/outline.ts';
import type { Scene } from '../scene/scene.ts';

/** Below so many pixels to a foot cars are drawn all in one go: nobody sees then which stands before which. */
const ORDER_FROM = 3;

const vehicleSeen = kept((stall: Stall, vehicle: Vehicle, headClearance: number) =>
  seenBlock(vehicleBlock(stall, vehicle, headClearance)),
);
const equipmentSeen = kept((equipment: Equipment) => seenBlock(equipmentBlock(equipment)));
const columnSeen = kept(({ column, ...box }: ColumnMark, members: Scene['members']) => {
  const near = column.height === undefined ? positionsIn(members, widened(box, 2)) : [];
  const above = near.map((i) => members.items[i]!.member);
  return seenBlock(columnBlock(column, columnTop(column, above)));
});

export const seenVehicle = (stall: Stall, site: Site): SeenBlock =>
  vehicleSeen(stall, vehicleOf(stall, site), site.rules.headClearance);

export const seenEquipment = (equipment: Equipment): SeenBlock => equipmentSeen(equipment);

/** A column up to the member that it holds. */
export const seenColumn = (mark: ColumnMark, { members }: Scene): SeenBlock => columnSeen(mark, members);

/** Draws blocks, each over what stands behind it. */
export function drawBlocks(pen: BoardPen, frame: Frame, blocks: readonly SeenBlock[]): void {
  pen.lineJoin = 'round';
  if (frame.scale >= ORDER_FROM) {
    for (const block of farthestFirst(blocks)) drawBlock(pen, frame, block);
    return;
  }
  for (const list of ['stalls', 'equipment', 'columns'] as const) {
    const own = blocks.filter(({ block }) => block.list === list);
    if (own.length > 0) drawTogether(pen, frame, list, own);
  }
}

/** Sides darker than the top, and the edges that are seen. */
function drawBlock(pen: BoardPen, frame: Frame, { block: { list }, silhouette, top: roof, edges }: SeenBlock): void {
  const { ink, scale, left, top, chosen } = frame;
  const car = list === 'stalls';
  pen.beginPath();
  traceOutline(pen, frame, silhouette);
  pen.fillStyle = car ? ink.rule : ink.existing;
  pen.fill();
  pen.beginPath();
  traceOutline(pen, frame, roof);
  pen.fillStyle = !car ? ink.existingFill : chosen ? ink.chosen : ink.car;
  pen.fill();
  pen.beginPath();
  for (const [a, b] of edges) {
    pen.moveTo(left + a[0] * scale, top - a[1] * scale);
    pen.lineTo(left + b[0] * scale, top - b[1] * scale);
  }
  pen.strokeStyle = chosen ? ink.ink : car ? ink.carEdge : ink.existing;
  pen.lineWidth = chosen ? 2 : 1;
  pen.stroke();
}

/** Far off: what each covers, as one path. */
function drawTogether(
  pen: BoardPen,
  frame: Frame,
  list: SeenBlock['block']['list'],
  blocks: readonly SeenBlock[],
): void {
  const { ink, chosen } = frame;
  const car = list === 'stalls';
  pen.beginPath();
  for (const { silhouette } of blocks) traceOutline(pen, frame, silhouette);
  pen.fillStyle = !car ? ink.existing : chosen ? ink.chosen : ink.car;
  pen.fill();
  if (!car) return;
  pen.strokeStyle = chosen ? ink.ink : ink.carEdge;
  pen.lineWidth = chosen ? 2 : 0.8;
  pen.stroke();
}
