import type { Area } from '../../../../../calc/sheets/pdf/kit/area.ts';
import type { Ink } from '../../../../../calc/sheets/pdf/kit/ink.ts';
import { around } from '../../../../../calc/sheets/pdf/kit/labels/free-space.ts';
import { CAP } from '../../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import type { Paper } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { type Pen, penWith } from '../../../../../calc/sheets/pdf/kit/pen.ts';
import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import { plainLettering } from './plain-lettering.ts';

export interface Written {
  readonly text: string;
  readonly area: Area;
}

/** A pen that remembers each text with the upright box round it, and each line with its ink. */
export function watchedPen(paper: Paper): {
  readonly pen: Pen;
  readonly written: Written[];
  readonly lines: { readonly points: readonly Point2[]; readonly ink: Ink }[];
} {
  const pen = penWith(plainLettering(paper));
  const written: Written[] = [];
  const lines: { points: readonly Point2[]; ink: Ink }[] = [];
  const watched: Pen = {
    ...pen,
    line: (points, ink) => {
      lines.push({ points, ink });
    },
    onLayer: (_, draw) => draw(),
    text: (text, [x, y], { size, weight, anchor = 'left', turn = 0 }) => {
      const width = pen.lettering.width(text, size, weight);
      const start = anchor === 'left' ? 0 : anchor === 'right' ? -width : -width / 2;
      const [ux, uy] = direction(turn);
      const at = (along: number, up: number): Point2 => [x + along * ux - up * uy, y + along * uy + up * ux];
      const corners = [at(start, 0), at(start + width, 0), at(start + width, size * CAP), at(start, size * CAP)];
      written.push({ text, area: around(corners) });
    },
  };
  return { pen: watched, written, lines };
}
