import type { Point2, Site } from '../../../../routing/site/site.ts';
import { CAUTIONS } from '../../../words/cautions.ts';
import type { Detail } from '../../details/detail.ts';
import { detailsOf } from '../../details/details.ts';
import { type Area, inset, top } from '../kit/area.ts';
import type { Draft, Job } from '../kit/draft.ts';
import { PENS } from '../kit/ink.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Paper } from '../kit/paper.ts';
import type { Pen } from '../kit/pen.ts';
import { drawSmallDelta } from '../kit/revision/delta.ts';
import { drawViewTitle } from '../kit/view/view-title.ts';
import { drawDetail, layDetail } from './draw-detail.ts';

type Grid = readonly [columns: number, rows: number];

/** Details side by side and over one another on a sheet: as they stand best, and closer. */
const GRIDS: Readonly<Record<Paper, readonly [Grid, Grid]>> = {
  'ANSI D': [
    [3, 2],
    [4, 2],
  ],
  tabloid: [
    [2, 2],
    [3, 2],
  ],
};

/** The grid for so many details: the closer one where it takes fewer sheets and would else leave the last half empty. */
export function gridFor(count: number, paper: Paper): Grid {
  const [best, closer] = GRIDS[paper];
  const sheets = ([columns, rows]: Grid): number => Math.ceil(count / (columns * rows));
  const last = count - (sheets(best) - 1) * best[0] * best[1];
  return last <= (best[0] * best[1]) / 2 && sheets(closer) < sheets(best) ? closer : best;
}
const TITLE = 52;
const MARGIN = 10;

/** The details of the site, several to a sheet, each with its scale and what others must check; none where it has none. */
export function detailSheets(job: Job): readonly Draft[] {
  const { site, plan, shape } = job;
  const details = detailsOf(site, plan);
  const isChanged = changedDetails(job);
  const [columns, rows] = gridFor(details.length, shape.paper);
  const each = columns * rows;
  return Array.from({ length: Math.ceil(details.length / each) }, (_, i): Draft => {
    const own = details.slice(i * each, (i + 1) * each);
    return {
      key: `details ${i + 1}`,
      series: 'E-5',
      title: 'Details',
      scale: 'as noted',
      draw: (pen) => {
        const small = pen.lettering.sizes.small;
        const cautions = wrapped(CAUTIONS, shape.field.width, small, pen.lettering);
        const foot = cautions.length * small * LEADING + 4;
        cautions.forEach((line, k) => {
          pen.text(line, [shape.field.x, shape.field.y + foot - (k + 1) * small * LEADING], { size: small });
        });
        const field: Area = { ...shape.field, y: shape.field.y + foot, height: shape.field.height - foot };
        own.forEach((detail, k) => {
          const after = drawCell(pen, detail, k + 1, cellOf(field, k, columns, rows), site);
          if (isChanged(detail)) drawSmallDelta(pen, after, job.revision!.number);
        });
      },
    };
  });
}

/** Whether a detail says something else than that of its title in the version before. */
function changedDetails({ revision }: Job): (detail: Detail) => boolean {
  if (!revision) return () => false;
  const { site, plan } = revision.earlier();
  const before = new Map(detailsOf(site, plan).map((detail) => [detail.title, JSON.stringify(detail)]));
  return (detail) => before.get(detail.title) !== JSON.stringify(detail);
}

function cellOf(field: Area, k: number, columns: number, rows: number): Area {
  const [width, height] = [field.width / columns, field.height / rows];
  const [column, row] = [k % columns, Math.floor(k / columns)];
  return { x: field.x + column * width, y: top(field) - (row + 1) * height, width, height };
}

/** Draws a detail with its notes and its title; the place after that. */
function drawCell(pen: Pen, detail: Detail, number: number, cell: Area, site: Site): Point2 {
  pen.rectangle(cell, PENS.existingHair);
  const inner = inset(cell, MARGIN);
  const size = pen.lettering.sizes.small;
  const notes = detail.notes.flatMap((note) => wrapped(note, inner.width, size, pen.lettering));
  const words = notes.length * size * LEADING + 4;
  notes.forEach((line, i) => {
    pen.text(line, [inner.x, inner.y + words - (i + 1) * size * LEADING], { size });
  });
  const area: Area = {
    ...inner,
    y: inner.y + words + TITLE,
    height: inner.height - words - TITLE,
  };
  const laid = layDetail(detail, area, site.units, pen.lettering);
  drawDetail(pen, detail, laid, area);
  const foot: Area = { x: inner.x, y: inner.y + words - 8, width: inner.width, height: TITLE };
  const after = drawViewTitle(pen, foot, String(number), detail.title, laid.scale.says, inner.width - 50);
  return [after + 2, foot.y + 36];
}
