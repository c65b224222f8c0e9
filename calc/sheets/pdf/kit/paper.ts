import { type Area, INCH, inset } from './area.ts';

export const PAPERS = ['ANSI D', 'tabloid'] as const;
/** Paper of a drawing set: ANSI D, 34 x 22 in, or tabloid (ANSI B), 17 x 11 in; both lie on their long side. */
export type Paper = (typeof PAPERS)[number];

/** How a sheet of paper is divided. Points. */
export interface SheetShape {
  readonly paper: Paper;
  readonly width: number;
  readonly height: number;
  /** Inside the border line. */
  readonly frame: Area;
  /** The title block: a column on the right of the frame. */
  readonly titleBlock: Area;
  /** What is left for the drawing, a little inside the border. */
  readonly field: Area;
}

/** Inches: size, margins of the border (more on the left, where sets are bound), and width of the title block. */
const SIZES: Readonly<
  Record<Paper, { width: number; height: number; left: number; margin: number; block: number; gap: number }>
> = {
  'ANSI D': { width: 34, height: 22, left: 1, margin: 0.5, block: 3.25, gap: 0.3 },
  tabloid: { width: 17, height: 11, left: 0.6, margin: 0.35, block: 2.2, gap: 0.18 },
};

/** The shape of a sheet of a paper. */
export const sheetShape = (paper: Paper): SheetShape => SHAPES[paper];

function shapeOf(paper: Paper): SheetShape {
  const size = SIZES[paper];
  const [width, height] = [size.width * INCH, size.height * INCH];
  const frame: Area = {
    x: size.left * INCH,
    y: size.margin * INCH,
    width: width - (size.left + size.margin) * INCH,
    height: height - 2 * size.margin * INCH,
  };
  const block = size.block * INCH;
  const titleBlock: Area = { ...frame, x: frame.x + frame.width - block, width: block };
  const field = inset({ ...frame, width: frame.width - block }, size.gap * INCH);
  return { paper, width, height, frame, titleBlock, field };
}

const SHAPES: Readonly<Record<Paper, SheetShape>> = { 'ANSI D': shapeOf('ANSI D'), tabloid: shapeOf('tabloid') };
