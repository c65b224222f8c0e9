import type { Area } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { PENS } from '../kit/ink.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { underlayName } from '../kit/underlay.ts';
import type { SetPhoto } from '../kit/work-record.ts';

const GAP = 20;
/** Photos across a sheet and down it. */
const ACROSS = 4;
const DOWN = 3;
/** Lines under a photo. */
const LINES = 3;

/** The photos of the work, twelve a sheet, each with what it is of, by whom, when, and what was noted. */
export function photoSheets(job: Job): readonly Draft[] {
  const photos = job.record?.photos ?? [];
  const each = ACROSS * DOWN;
  return Array.from({ length: Math.ceil(photos.length / each) }, (_, page): Draft => {
    const own = photos.slice(page * each, (page + 1) * each);
    const [first, last] = [own[0]!.of, own.at(-1)!.of];
    return {
      key: `photos ${page + 1}`,
      series: 'E-7',
      title: first === last ? `Photos, ${first}` : `Photos, ${first} to ${last}`,
      scale: NOT_TO_SCALE,
      draw: (pen) => {
        own.forEach((photo, i) => {
          // Photos stand in the resources of a page after what lies under the plans.
          const name = underlayName(job.underlays.length + page * each + i);
          drawPhoto(pen, photo, name, cellOf(job, i));
        });
      },
    };
  });
}

function cellOf({ shape: { field } }: Job, place: number): Area {
  const width = (field.width - (ACROSS - 1) * GAP) / ACROSS;
  const height = (field.height - (DOWN - 1) * GAP) / DOWN;
  const [column, row] = [place % ACROSS, Math.floor(place / ACROSS)];
  return {
    x: field.x + column * (width + GAP),
    y: field.y + field.height - height - row * (height + GAP),
    width,
    height,
  };
}

function drawPhoto(pen: Pen, { of, by, on, note, width, height }: SetPhoto, name: string, cell: Area): void {
  const { small, note: text } = pen.lettering.sizes;
  const words = text * LEADING + (LINES - 1) * small * LEADING;
  const scale = Math.min(cell.width / width, (cell.height - words) / height);
  const [w, h] = [width * scale, height * scale];
  const y = cell.y + cell.height - h;
  pen.form(name, [w, 0, 0, h, cell.x, y]);
  pen.rectangle({ x: cell.x, y, width: w, height: h }, PENS.thin);
  pen.text(of, [cell.x, y - text * LEADING], { size: text, weight: 'bold' });
  const told = [[by || 'without initials', on].filter(Boolean).join(', '), note].filter(Boolean).join(': ');
  wrapped(told, cell.width, small, pen.lettering, { most: LINES - 1 }).forEach((line, i) => {
    pen.text(line, [cell.x, y - text * LEADING - (i + 1) * small * LEADING], { size: small });
  });
}
