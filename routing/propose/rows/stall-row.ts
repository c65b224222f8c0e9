import type { Point2 } from '../../site/site.ts';
import { cosine, depthToInterlock, leanOf, sine, widthAlongAisle } from './angled-stall.ts';
import { facing, further, type RowFrame, rowFrame } from './row-frame.ts';
import {
  depthOf,
  MAX_STALLS,
  meshes,
  type RowShape,
  type RowStall,
  reachPast,
  type StallRow,
  slotRows,
  wholeLength,
} from './row-shape.ts';
import type { Slot } from './row-slots.ts';

/**
 * A row of stalls along a line, so many to a row. Angled stalls meet the aisle as painted: every stripe begins at the
 * aisle, `widthAlongAisle` apart. Head to head, rows of the same strips interlock, and lean opposite ways, for the two
 * aisles are driven opposite ways; others stand back to back as against a wall. RangeError where the line has no
 * length, the count is no whole number from 1 to 500, or a measure is not over 0.
 */
export function stallRow(from: Point2, to: Point2, count: number, shape: RowShape): StallRow {
  if (!(Number.isInteger(count) && count >= 1 && count <= MAX_STALLS))
    throw new RangeError(`no row of ${count} stalls`);
  if (!(shape.width > 0 && shape.depth > 0 && shape.angle >= 0 && shape.angle <= 90 && shape.aisle >= 0))
    throw new RangeError('a row needs a width and depth over 0 and an angle from 0 to 90');
  const rows = slotRows(count, shape);
  const [first, second] = rows;
  const drawn = rowFrame(from, to, shape.side);
  const deep = depthOf(first!, shape);
  // A line at the heads: the aisle lies a stall's depth away, and its stalls look back at the line.
  const frame = shape.line === 'entry' ? drawn : facing(drawn, 0, deep);
  const meshed = second !== undefined && meshes(first!, second, shape);
  // Of two rows that lean back, the second reaches before the first.
  const start = meshed && shape.lean === 'back' ? further(frame, reachPast(first!, shape)) : frame;
  const laid = laidOut(first!, start, shape);
  const length = wholeLength(rows, shape);
  const { aisle } = shape;
  const near = strip(frame, length, -aisle, 0);
  if (!second) return result(count, [laid], aisle > 0 ? [near] : [], length, deep);
  if (shape.rows === 'across') {
    const other = laidOut(second, facing(frame, 0, -aisle), shape);
    return result(count, [laid, other], aisle > 0 ? [near] : [], length, deep + aisle + depthOf(second, shape));
  }
  const across = meshed ? 2 * interlockOf(first!, shape) : deep + depthOf(second, shape);
  const other = meshed ? meshedWith(second, start, shape) : laidOut(second, facing(frame, 0, across), shape);
  return result(
    count,
    [laid, other],
    aisle > 0 ? [near, strip(frame, length, across, across + aisle)] : [],
    length,
    across,
  );
}

const interlockOf = (slots: readonly Slot[], { depth, angle }: RowShape): number =>
  Math.max(...slots.map(({ width }) => depthToInterlock(width, depth, angle)));

interface Laid {
  readonly stalls: readonly RowStall[];
  readonly access: readonly (readonly Point2[])[];
}

/** A strip's rectangle in its frame: the middle of its entry edge, and the way in. */
interface Placed {
  readonly slot: Slot;
  readonly s: number;
  readonly t: number;
}

function placed(slots: readonly Slot[], { depth, angle, lean }: RowShape): Placed[] {
  const out: Placed[] = [];
  if (angle === 0) {
    let s = 0;
    for (const slot of slots) {
      if (slot.kind === 'access') continue;
      out.push({ slot, s: lean === 'forward' ? s : s + depth, t: slot.width / 2 });
      s += depth;
    }
    return out;
  }
  // The foot of a strip on the aisle line; stalls that lean back reach that far before their feet.
  let foot = lean === 'forward' ? 0 : leanOf(depth, angle);
  for (const slot of slots) {
    const next = foot + widthAlongAisle(slot.width, angle);
    const in1 = (slot.width / 2) * sine(angle);
    out.push({ slot, s: lean === 'forward' ? next - in1 : foot + in1, t: (slot.width / 2) * cosine(angle) });
    foot = next;
  }
  return out;
}

/** Ahead and aside of the way into a stall. */
const wayIn = ({ angle, lean }: RowShape): readonly [number, number] => {
  const ahead = angle === 0 ? 1 : cosine(angle);
  return [lean === 'forward' ? ahead : -ahead, angle === 0 ? 0 : sine(angle)];
};

function laidOut(slots: readonly Slot[], frame: RowFrame, shape: RowShape): Laid {
  const [ahead, aside] = wayIn(shape);
  const heading = frame.heading(ahead, aside);
  const places = placed(slots, shape);
  const stalls = places
    .filter(({ slot }) => slot.kind === 'stall')
    .map(({ slot, s, t }) => ({ at: frame.at(s, t), width: slot.width, depth: shape.depth, heading, use: slot.use }));
  // Beside parallel stalls the access aisle lies between stall and kerb.
  const access =
    shape.angle === 0
      ? places
          .filter(({ slot }) => slot.use !== 'standard')
          .map(({ slot, s }) => kerbStrip(frame, slot.width, s, shape))
      : places
          .filter(({ slot }) => slot.kind === 'access')
          .map((place) => outlineOf(frame, place, ahead, aside, shape.depth));
  return { stalls, access };
}

function kerbStrip(frame: RowFrame, width: number, s: number, { depth, lean, accessAisle }: RowShape): Point2[] {
  const start = lean === 'forward' ? s : s - depth;
  return [
    frame.at(start, width),
    frame.at(start + depth, width),
    frame.at(start + depth, width + accessAisle),
    frame.at(start, width + accessAisle),
  ];
}

function outlineOf(frame: RowFrame, { slot, s, t }: Placed, ahead: number, aside: number, depth: number): Point2[] {
  const half = slot.width / 2;
  const corner = (along: number, left: number): Point2 =>
    frame.at(s + along * ahead - left * aside, t + along * aside + left * ahead);
  return [corner(0, -half), corner(depth, -half), corner(depth, half), corner(0, half)];
}

/** The row that meshes with one laid out in a frame: each strip goes on behind the head of the one before it, turned round. */
function meshedWith(slots: readonly Slot[], frame: RowFrame, shape: RowShape): Laid {
  const [ahead, aside] = wayIn(shape);
  const far = 2 * shape.depth;
  const heading = frame.heading(-ahead, -aside);
  const places = placed(slots, shape);
  const stalls = places
    .filter(({ slot }) => slot.kind === 'stall')
    .map(({ slot, s, t }) => ({
      at: frame.at(s + far * ahead, t + far * aside),
      width: slot.width,
      depth: shape.depth,
      heading,
      use: slot.use,
    }));
  const access = places
    .filter(({ slot }) => slot.kind === 'access')
    .map(({ slot, s, t }) =>
      outlineOf(frame, { slot, s: s + shape.depth * ahead, t: t + shape.depth * aside }, ahead, aside, shape.depth),
    );
  return { stalls, access };
}

const strip = (frame: RowFrame, length: number, t0: number, t1: number): Point2[] => [
  frame.at(0, t0),
  frame.at(length, t0),
  frame.at(length, t1),
  frame.at(0, t1),
];

const result = (
  count: number,
  rows: readonly Laid[],
  aisles: readonly (readonly Point2[])[],
  length: number,
  across: number,
): StallRow => ({
  stalls: rows.flatMap(({ stalls }) => stalls),
  count,
  access: rows.flatMap(({ access }) => access),
  aisles,
  length,
  across,
});
