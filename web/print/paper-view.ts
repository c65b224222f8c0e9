import { INCH } from '../../calc/sheets/pdf/kit/area.ts';
import { pointsPerFoot, type Scale, scaleThatFits } from '../../calc/sheets/pdf/kit/view/scales.ts';
import type { Box } from '../../routing/plane/box.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Camera } from '../board/camera.ts';

/** Pixels of the board to an inch of paper: its lettering of 12 px is a tenth of an inch high there. */
export const PX_PER_INCH = 120;
/**
 * The pictures on paper, of which the style sheet shows one: 9.5 by 5.25 in, which both letter and A4 have across within
 * half an inch of margin, and 14 by 8 in, which both tabloid and A3 have. What paper it is the page is not told before.
 */
export const PAPER_VIEWS = {
  small: { width: 9.5 * PX_PER_INCH, height: 5.25 * PX_PER_INCH },
  large: { width: 14 * PX_PER_INCH, height: 8 * PX_PER_INCH },
} as const;

export type PictureSize = keyof typeof PAPER_VIEWS;

/** Room round the plan for names and bubbles at its edge. */
const ROOM = 30;

export interface PaperView {
  readonly size: PictureSize;
  readonly scale: Scale;
  readonly camera: Camera;
}

/**
 * How a part of the site stands on paper: in the middle of the picture, at the largest standard scale at which all of it
 * is on it. `whole` is what is drawn, feet: of the part that is seen only as much as something is drawn in is asked for.
 */
export function paperView(size: PictureSize, seen: Box, whole: Box, units: Units): PaperView {
  const box = both(seen, whole) ?? (seen.minX < seen.maxX ? seen : whole);
  const feet = { width: box.maxX - box.minX, height: box.maxY - box.minY };
  const { width, height } = PAPER_VIEWS[size];
  const room = { width: inPoints(width - 2 * ROOM), height: inPoints(height - 2 * ROOM) };
  const scale = scaleThatFits(units, feet, room);
  return {
    size,
    scale,
    camera: {
      x: (box.minX + box.maxX) / 2,
      y: (box.minY + box.maxY) / 2,
      scale: (pointsPerFoot(scale) / INCH) * PX_PER_INCH,
    },
  };
}

const inPoints = (px: number): number => (px / PX_PER_INCH) * INCH;

/** What two boxes have in common; null where that is nothing. */
function both(a: Box, b: Box): Box | null {
  const box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return box.minX < box.maxX && box.minY < box.maxY ? box : null;
}
