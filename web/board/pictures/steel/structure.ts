import { positionsIn } from '../../../../routing/plane/box-index.ts';
import { clippedLine } from '../../../../routing/plane/clip-line.ts';
import type { ColumnMark } from '../../kinds/columns.ts';
import type { EquipmentMark } from '../../kinds/equipment.ts';
import type { FeederMark } from '../../kinds/feeders.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import { severityOf } from '../../scene/sign.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { traceOutline } from '../outline.ts';
import { halo, sign } from '../stalls/drops.ts';

const LEAST_COLUMN = 3;

export function drawColumns(pen: BoardPen, frame: Frame, marks: readonly ColumnMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  pen.beginPath();
  pen.fillStyle = chosen ? ink.ink : ink.existing;
  for (const { column, corners } of marks) {
    // A column is a landmark: drawn with at least a few pixels as long as the stalls around it are.
    if (Math.max(...column.size) * scale >= LEAST_COLUMN) traceOutline(pen, frame, corners);
    else if (scale > 0.7) pen.fillRect(left + column.at[0] * scale - 1.5, top - column.at[1] * scale - 1.5, 3, 3);
  }
  pen.fill();
  // An edge, so that it is told from a trunk of its own grey.
  pen.strokeStyle = chosen ? ink.ink : ink.soft;
  pen.lineWidth = chosen ? 4 : 1;
  pen.stroke();
}

/** The edges of columns, over what runs along them: below a trunk they would not be seen. */
export function drawColumnEdges(pen: BoardPen, frame: Frame, marks: readonly ColumnMark[]): void {
  const { ink, scale } = frame;
  pen.beginPath();
  for (const { column, corners } of marks)
    if (Math.max(...column.size) * scale >= LEAST_COLUMN) traceOutline(pen, frame, corners);
  pen.strokeStyle = ink.paper;
  pen.lineWidth = 3;
  pen.stroke();
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.2;
  pen.stroke();
}

/** Equipment, the working space that must stay clear before it, and where raceways enter it. */
export function drawEquipment(pen: BoardPen, frame: Frame, marks: readonly EquipmentMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  for (const { equipment, corners, space } of marks) {
    const existing = equipment.kind === 'source';
    if (space && scale > 2.5) {
      pen.beginPath();
      traceOutline(pen, frame, space);
      pen.strokeStyle = chosen ? ink.ink : ink.ruleStrong;
      pen.lineWidth = 1;
      pen.setLineDash([3, 3]);
      pen.stroke();
      pen.setLineDash([]);
    }
    pen.beginPath();
    const least = Math.min(3, Math.max(1.5, scale * 3));
    if (Math.max(equipment.size[0], equipment.size[1]) * scale < least * 2)
      pen.rect(left + equipment.at[0] * scale - least, top - equipment.at[1] * scale - least, least * 2, least * 2);
    else traceOutline(pen, frame, corners);
    pen.fillStyle = existing ? ink.existingFill : ink.ink;
    pen.fill();
    pen.strokeStyle = existing ? ink.existing : ink.ink;
    pen.lineWidth = chosen ? 4 : 1.2;
    pen.stroke();
    if (equipment.kind === 'transformer' && scale > 2.5) drawCoils(pen, frame, equipment.at);
  }
  if (scale >= 1.2) drawEquipmentWords(pen, frame, marks);
}

interface Patch {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const apart = (a: Patch, b: Patch): boolean =>
  a.x + a.width < b.x || b.x + b.width < a.x || a.y + a.height < b.y || b.y + b.height < a.y;

/**
 * Names and ratings, each where it lies over no other piece of equipment and no other name. All in view have their places,
 * also where only some are drawn: what is selected has its name where it stood.
 */
function drawEquipmentWords(pen: BoardPen, frame: Frame, drawn: readonly EquipmentMark[]): void {
  const { scale, left, top, ink, scene } = frame;
  const own = new Set(drawn);
  const ids = new Set(drawn.map(({ equipment }) => equipment.id));
  const others = positionsIn(scene.equipment, frame.box)
    .map((i) => scene.equipment.items[i]!)
    .filter((mark) => own.has(mark) || !ids.has(mark.equipment.id));
  const marks = [...new Set([...others, ...drawn])];
  const bodies = marks.map(({ equipment: { at, size } }): Patch => {
    const half = (Math.max(size[0], size[1]) / 2) * scale;
    return { x: left + at[0] * scale - half, y: top - at[1] * scale - half, width: half * 2, height: half * 2 };
  });
  const taken: Patch[] = [...bodies];
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  marks.forEach((mark, i) => {
    const { equipment, words } = mark;
    const severity = severityOf(frame.scene, equipment.id);
    const rating = scale > 3 ? words : '';
    const px = namePx(scale);
    pen.font = lettering(px, 700);
    const width = Math.max(pen.measureText(equipment.id).width, rating ? pen.measureText(rating).width * 0.94 : 0);
    const height = (rating ? 2 : 1) * (px + 2);
    const body = bodies[i]!;
    const middle = body.x + body.width / 2 - width / 2;
    const places: readonly (readonly [number, number])[] = [
      [middle, body.y - height - 4],
      [body.x - width - 8, body.y + body.height / 2 - height / 2],
      [body.x + body.width + 8, body.y + body.height / 2 - height / 2],
      [middle, body.y + body.height + 4],
    ];
    const patches = places.map(([x, y]): Patch => ({ x, y, width, height }));
    const patch = patches.find((each) => taken.every((other) => other === body || apart(each, other))) ?? patches[0]!;
    taken.push(patch);
    if (!own.has(mark)) return;
    const idWidth = halo(pen, frame, equipment.id, patch.x, patch.y + px / 2 + 1, 700, ink.ink);
    if (severity === 'fail' || severity === 'warn')
      sign(pen, frame, severity, patch.x + idWidth + 12, patch.y + px / 2 + 1);
    if (rating) halo(pen, frame, rating, patch.x, patch.y + px * 1.5 + 3, 400, ink.soft);
  });
}

function drawCoils(pen: BoardPen, { scale, left, top, ink }: Frame, [x, y]: readonly [number, number]): void {
  const r = Math.min(7, scale * 0.8);
  pen.beginPath();
  pen.arc(left + x * scale - r * 0.6, top - y * scale, r, 0, 2 * Math.PI);
  pen.moveTo(left + x * scale + r * 1.6, top - y * scale);
  pen.arc(left + x * scale + r * 0.6, top - y * scale, r, 0, 2 * Math.PI);
  pen.strokeStyle = ink.paper;
  pen.lineWidth = 1.2;
  pen.stroke();
}

/** So many feeders in view are a texture and not lines to be told by their dashes, which would take long to draw. */
const MOST_DASHED = 30;

/**
 * Feeders between pieces of equipment, as links: where they lie in the ground is not this drawing's to say. Cut to the
 * view: a line that goes on for a mile is dashed for all of it.
 */
export function drawFeederLinks(pen: BoardPen, frame: Frame, marks: readonly FeederMark[]): void {
  const { ink, box, scale, left, top } = frame;
  const links = marks.flatMap((mark) => {
    const kept = !mark.routed || frame.chosen ? clippedLine(mark.from, mark.to, box) : null;
    return kept ? [{ mark, ...kept }] : [];
  });
  const dashed = links.length <= MOST_DASHED;
  pen.lineWidth = frame.chosen ? 3 : 1;
  for (const { mark, begins, ends } of links) {
    const { from, to, existing } = mark;
    const x = (share: number): number => left + (from[0] + (to[0] - from[0]) * share) * scale;
    const y = (share: number): number => top - (from[1] + (to[1] - from[1]) * share) * scale;
    pen.strokeStyle = existing ? ink.existing : ink.ink;
    if (dashed) {
      pen.setLineDash(existing ? [10, 3, 2, 3] : [6, 4]);
      // The dashes lie still on the ground while the view goes over them.
      pen.lineDashOffset = begins * Math.hypot(to[0] - from[0], to[1] - from[1]) * scale;
    }
    pen.beginPath();
    pen.moveTo(x(begins), y(begins));
    pen.lineTo(x(ends), y(ends));
    pen.stroke();
  }
  pen.setLineDash([]);
  pen.lineDashOffset = 0;
}
