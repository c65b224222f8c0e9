import type { Project } from '../../../../../routing/site/site.ts';
import { tablesOf } from '../../../../tables/editions.ts';
import { CAUTIONS } from '../../../../words/cautions.ts';
import { type Area, top } from '../area.ts';
import type { Job } from '../draft.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { LEADING } from '../lettering/letters.ts';
import { wrapped } from '../lettering/lines-of-text.ts';
import type { Pen } from '../pen.ts';
import type { SheetWords } from './title-block.ts';
import { PAD, rule, setParagraph } from './title-kit.ts';

/** From the foot up: number, title, then the facts. */
export function drawNames(
  pen: Pen,
  block: Area,
  job: Job,
  { number, title, scale, place, keynotesOn }: SheetWords,
): number {
  const { lettering, site, date, file } = job;
  const { sizes } = lettering;
  const x = block.x + PAD;
  const width = block.width - 2 * PAD;
  let y = block.y + PAD;
  const size = Math.min(
    sizes.number,
    (sizes.number * width) / Math.max(width, lettering.width(number, sizes.number, 'bold')),
  );
  pen.text(number, [x, y + 4], { size, weight: 'bold' });
  y += size * 0.7 + 16;
  pen.text(`Sheet ${place}`, [x, y], { size: sizes.small });
  if (keynotesOn !== undefined) {
    y += sizes.small * LEADING;
    pen.text(`All keynotes: ${keynotesOn}`, [x, y], { size: sizes.small });
  }
  y += 18;
  rule(pen, block, y);
  const { size: titleSize, lines } = titleLines(title.toUpperCase(), width, lettering);
  y += 8 + lines.length * titleSize * LEADING;
  setParagraph(pen, x, y, lines, { size: titleSize, weight: 'bold' });
  y += 8;
  rule(pen, block, y);
  const facts: readonly (readonly [string, string])[] = [
    ['Scale', scale],
    ['Date', date],
    ['Code edition', tablesOf(site.rules).edition],
    ['Drawn from', file],
    ...(['drawn', 'checked'] as const).flatMap((role): [string, string][] => {
      const by = site.project[role];
      return by === undefined ? [] : [[role === 'drawn' ? 'Drawn by' : 'Checked by', by]];
    }),
  ];
  const isNarrow = block.width < 200;
  const indent = isNarrow ? 0 : 84;
  for (const [name, value] of [...facts].reverse()) {
    const size = sizes.note;
    const lines = wrapped(value, width - indent, size, lettering, { most: 2 });
    const height = Math.max(1, lines.length) * size * LEADING + 7 + (isNarrow ? sizes.small * LEADING : 0);
    pen.text(name, [x, y + height - (isNarrow ? sizes.small : size) * LEADING], { size: sizes.small });
    setParagraph(pen, x + indent, y + height - (isNarrow ? sizes.small * LEADING : 0), lines, { size });
    y += height;
    rule(pen, block, y);
  }
  return y;
}

/** Lines of a title, four at most as large as titles are; one that is longer in smaller letters, and none is cut short. */
export function titleLines(
  title: string,
  width: number,
  lettering: Lettering,
): { readonly size: number; readonly lines: readonly string[] } {
  const { sizes } = lettering;
  const tried = [sizes.title, sizes.head, sizes.note].filter((size, i, all) => i === 0 || size < all[0]!);
  for (const size of tried) {
    const lines = wrapped(title, width, size, lettering, { weight: 'bold' });
    if (lines.length <= 4 || size === tried.at(-1)) return { size, lines };
  }
  throw new RangeError('a sheet has no size for titles');
}

/** From the top down: the project and the cautions. */
export function drawProject(pen: Pen, block: Area, { lettering, site }: Job): number {
  const { sizes } = lettering;
  const x = block.x + PAD;
  const width = block.width - 2 * PAD;
  const nameSize = sizes.title;
  const name = wrapped(site.name, width, nameSize, lettering, { most: 4, weight: 'bold' });
  let y = setParagraph(pen, x, top(block) - PAD, name, { size: nameSize, weight: 'bold' });
  y = setParagraph(pen, x, y - 4, ['EV charging drops: electrical'], { size: sizes.small });
  const told = projectLines(site.project).flatMap((line) => wrapped(line, width, sizes.small, lettering, { most: 2 }));
  y = setParagraph(pen, x, told.length > 0 ? y - 4 : y, told, { size: sizes.small }) - 10;
  rule(pen, block, y);
  const cautions = wrapped(CAUTIONS, width, sizes.small, lettering);
  y = setParagraph(pen, x, y - 3, cautions, { size: sizes.small }) - 9;
  rule(pen, block, y);
  return y;
}

/** What the file says of the job, a line each; nothing where it says nothing. */
function projectLines({ number, client, address, jurisdiction, phase }: Project): readonly string[] {
  return [
    ...(number === undefined ? [] : [`Project ${number}`]),
    ...(client === undefined ? [] : [`For ${client}`]),
    ...(address === undefined ? [] : [address]),
    ...(jurisdiction === undefined ? [] : [`Authority: ${jurisdiction}`]),
    ...(phase === undefined ? [] : [phase]),
  ];
}
