import type { Site } from '../../../../routing/site/site.ts';
import { cardLink } from '../../../field/cards/card-link.ts';
import { cardLines, cardSubtitle, cardTitle } from '../../../field/cards/card-words.ts';
import { type PullCard, pullCards } from '../../../field/cards/pull-cards.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { type Area, right, top } from '../kit/area.ts';
import { drawCode } from '../kit/code-square.ts';
import { GREY, type Ink, PENS } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { type ReportPage, type ReportParts, report, UPRIGHT } from './report.ts';

/** Between the halves of a page: half of it is cut off with each card. Points. */
const GAP = 24;
/** A code at arm's length: more than an inch with the white round it. */
const CODE = 96;
const NAMES = 62;
const CUT: Ink = { weight: 0.13, colour: GREY, dash: [2, 1.5] };

/** A card, or as much of one as goes onto a quarter of a page. */
interface Piece {
  readonly card: PullCard;
  readonly isFirst: boolean;
  readonly lines: readonly CardText[];
}

/** A line of a card: the first of each thing has its name before it. */
interface CardText {
  readonly name: string;
  readonly text: string;
}

/**
 * Pull cards, four to a page: circuits and feeders in the order in which they are pulled, then conduits. Each has a code
 * with its address on the page, where one is stated, and nothing else.
 * @param page address of the page that opens cards; null where none is stated
 */
export const pullCardReport = (site: Site, plan: Plan, page: string | null, parts: ReportParts): Promise<Uint8Array> =>
  report(`${site.name}: pull cards`, UPRIGHT, parts, [site], (lettering) => {
    const pieces = pullCards(site, plan).flatMap((card) => piecesOf(card, site, lettering));
    const sheets = Math.max(1, Math.ceil(pieces.length / 4));
    return Array.from({ length: sheets }, (_, i): ReportPage => {
      const own = pieces.slice(4 * i, 4 * i + 4);
      return {
        title: own.length === 0 ? 'No cards' : `${cardTitle(own[0]!.card)} to ${cardTitle(own.at(-1)!.card)}`,
        draw: (pen) => {
          drawCuts(pen);
          own.forEach((piece, k) => {
            drawPiece(pen, piece, site, page, quarter(k));
          });
          if (own.length === 0)
            pen.text('The plan has nothing to pull.', [UPRIGHT.field.x, top(UPRIGHT.field) - 40], {
              size: lettering.sizes.note,
            });
        },
      };
    });
  });

function quarter(k: number): Area {
  const { field } = UPRIGHT;
  const width = (field.width - GAP) / 2;
  const height = (field.height - GAP) / 2;
  return {
    x: field.x + (k % 2) * (width + GAP),
    y: top(field) - height - Math.floor(k / 2) * (height + GAP),
    width,
    height,
  };
}

/** Height of what stands over the lines of a card. */
const HEAD = CODE + 4;

function piecesOf(card: PullCard, site: Site, lettering: Lettering): readonly Piece[] {
  const { width, height } = quarter(0);
  const size = lettering.sizes.note;
  const room = Math.floor((height - HEAD - 2 * size) / (size * LEADING));
  const texts = cardLines(card, site.units).flatMap(({ name, says }) =>
    says
      .flatMap((each) => wrapped(each, width - NAMES, size, lettering))
      .map((text, i): CardText => ({ name: i === 0 ? name : '', text })),
  );
  const pieces: Piece[] = [];
  for (let from = 0; from < Math.max(1, texts.length); from += room)
    pieces.push({ card, isFirst: from === 0, lines: texts.slice(from, from + room) });
  return pieces;
}

function drawPiece(pen: Pen, { card, isFirst, lines }: Piece, site: Site, page: string | null, area: Area): void {
  const { small, note, title } = pen.lettering.sizes;
  const room = area.width - CODE - 8;
  let y = top(area) - title;
  for (const line of wrapped(cardTitle(card), room, title, pen.lettering, { most: 2, weight: 'bold' })) {
    pen.text(line, [area.x, y], { size: title, weight: 'bold' });
    y -= title;
  }
  for (const line of wrapped(`${cardSubtitle(card)}${isFirst ? '' : ', continued'}`, room, note, pen.lettering, {
    most: 4,
  })) {
    pen.text(line, [area.x, y], { size: note });
    y -= note * LEADING;
  }
  const code = { x: right(area) - CODE, y: top(area) - CODE, width: CODE, height: CODE };
  if (page !== null) drawCode(pen, cardLink(page, { ...card, site: site.name }), code);
  else
    wrapped(
      'No code: the address of the page that opens this card was not stated.',
      CODE,
      small,
      pen.lettering,
    ).forEach((line, i) => {
      pen.text(line, [code.x, top(code) - (i + 1) * small * LEADING], { size: small, colour: GREY });
    });
  y = top(area) - HEAD;
  pen.line(
    [
      [area.x, y],
      [right(area), y],
    ],
    PENS.thin,
  );
  for (const { name, text } of lines) {
    y -= note * LEADING;
    if (name) pen.text(name, [area.x, y], { size: note, colour: GREY });
    pen.text(text, [area.x + NAMES, y], { size: note });
  }
}

function drawCuts(pen: Pen): void {
  const { field } = UPRIGHT;
  const [x, y] = [field.x + field.width / 2, field.y + field.height / 2];
  pen.lines(
    [
      [
        [x, field.y],
        [x, top(field)],
      ],
      [
        [field.x, y],
        [right(field), y],
      ],
    ],
    CUT,
  );
}
