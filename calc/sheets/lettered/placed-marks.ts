import type { Point2 } from '../../../routing/site/site.ts';
import type { SheetMark } from './mark.ts';

/** Where marks of a sheet go: each point, how long a point of the sheet is there, and by how many degrees they turn. */
export interface MarkPlacing {
  readonly at: (point: Point2) => Point2;
  readonly perPoint: number;
  readonly turn: number;
}

/** Marks as they lie elsewhere: in inches of a sheet, or in the units of the site. Inks keep their weights. */
export const placedMarks = (marks: readonly SheetMark[], placing: MarkPlacing): readonly SheetMark[] =>
  marks.map((mark) => placed(mark, placing));

function placed(mark: SheetMark, { at, perPoint, turn }: MarkPlacing): SheetMark {
  switch (mark.kind) {
    case 'line':
    case 'fill':
      return { ...mark, points: mark.points.map(at) };
    case 'circle':
      return { ...mark, at: at(mark.at), radius: mark.radius * perPoint };
    case 'text':
      return { ...mark, ...word(mark) };
    case 'dimension':
      return {
        ...mark,
        from: at(mark.from),
        to: at(mark.to),
        fromOrigin: at(mark.fromOrigin),
        toOrigin: at(mark.toOrigin),
        turn: mark.turn + turn,
        figure: mark.figure && { ...mark.figure, ...word(mark.figure) },
        tick: mark.tick * perPoint,
        past: mark.past * perPoint,
      };
  }
  function word(one: { readonly at: Point2; readonly width: number; readonly height: number; readonly turn: number }) {
    return { at: at(one.at), width: one.width * perPoint, height: one.height * perPoint, turn: one.turn + turn };
  }
}
