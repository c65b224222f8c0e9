import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import { type CutSection, lookHeads } from '../../../routing/site/kinds/sections.ts';
import type { PlainAction } from '../draw/draft.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine, traceOutline } from '../pictures/outline.ts';
import { halo } from '../pictures/stalls/drops.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface SectionMark extends ElementMark<'sections'> {
  readonly section: CutSection;
}

const markOf = kept(
  (section: CutSection): SectionMark => ({
    list: 'sections',
    id: section.id,
    section,
    ...widened(boxOf([section.from, section.to]), 2),
  }),
);

/** Cuts: a broken line with a head at either end that points the way one looks, and its name. */
function drawSections(pen: BoardPen, frame: Frame, marks: readonly SectionMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  pen.strokeStyle = ink.ink;
  pen.fillStyle = ink.ink;
  pen.lineWidth = chosen ? 3 : 1.6;
  pen.setLineDash([14, 4, 3, 4]);
  pen.beginPath();
  for (const { section } of marks) traceLine(pen, frame, [section.from, section.to]);
  pen.stroke();
  pen.setLineDash([]);
  pen.beginPath();
  for (const { section } of marks) for (const head of lookHeads(section)) traceOutline(pen, frame, head);
  pen.fill();
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  for (const { section } of marks)
    halo(pen, frame, section.name, left + section.to[0] * scale + 10, top - section.to[1] * scale, 600, ink.ink);
}

export const sections: BoardKind<'sections', SectionMark> = {
  mark: markOf,
  pictures: [{ name: 'sections', over: 252, from: 0.7, draw: drawSections }],
  hold: { rank: 44, tour: 93, reach: 1 / 2, named: true },
  handle: () => ({ shape: 'square', aside: [0, 0] }),
};

export interface SectionOptions {
  /** To the left of the way, feet; to the right where negative. */
  readonly look: number;
}

export const sectionAction: PlainAction<SectionOptions> = {
  name: 'Section',
  key: 'V',
  draws: 'a section',
  first: { look: 10 },
  makes: {
    list: 'sections',
    letters: 'SEC',
    shape: 'line',
    presses: ['Press where the cut begins.', 'Press where it ends: one looks to its left.'],
    made: (id, [from, to], { look }) => ({ id, name: `Section ${id.slice(3)}`, from: from!, to: to!, look }),
    turns: { option: 'look', does: 'look the other way' },
  },
};
