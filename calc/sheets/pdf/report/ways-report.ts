import { boxOf } from '../../../../routing/plane/box.ts';
import { rectangleAt } from '../../../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { FIGURES, type WayFigure } from '../../../study/figures.ts';
import type { Study, StudyWay } from '../../../study/shape.ts';
import { shownFigure } from '../../../study/shown-figure.ts';
import { lookedWords } from '../../cost/study-sheet.ts';
import { type Area, top } from '../kit/area.ts';
import { BLACK, GREY, type Ink, PENS } from '../kit/ink.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { LYING, type ReportPage, type ReportParts, report } from './report.ts';
import { comparedPages } from './ways-compared.ts';

const ACROSS = 3;
const DOWN = 2;
const GAP = 14;
const PICTURE = 96;

/** What is said under a plan. */
const TOLD: readonly WayFigure[] = [
  'price',
  'served',
  'fullRate',
  'energy',
  'trench',
  'days',
  'spareAmps',
  'roomKva',
  'drop',
];

/**
 * The ways of a study as a report: price against what cars get and all figures side by side; a plan of each, those that
 * nothing beats marked; then what cannot be.
 */
export const waysReport = (study: Study, parts: ReportParts): Promise<Uint8Array> =>
  report(
    `${study.lot}: ways to do the job`,
    LYING,
    parts,
    study.ways.map(({ name, file }) => [name, file]),
    () => {
      const a = ACROSS * DOWN;
      const sheets = Math.ceil(study.ways.length / a);
      const pages = Array.from({ length: sheets }, (_, i): ReportPage => {
        const own = study.ways.slice(i * a, (i + 1) * a);
        return {
          title: `Ways ${own[0]!.id} to ${own.at(-1)!.id}`,
          draw: (pen) => {
            for (const [k, way] of own.entries()) drawWay(pen, way, study.unbeaten.has(way.id), placeOf(k));
          },
        };
      });
      return [...comparedPages(study), ...pages, ...wordPages(study)];
    },
  );

function placeOf(k: number): Area {
  const { field } = LYING;
  const width = (field.width - (ACROSS - 1) * GAP) / ACROSS;
  const height = (field.height - (DOWN - 1) * GAP) / DOWN;
  const [column, row] = [k % ACROSS, Math.floor(k / ACROSS)];
  return { x: field.x + column * (width + GAP), y: top(field) - (row + 1) * height - row * GAP, width, height };
}

function drawWay(pen: Pen, way: StudyWay, isUnbeaten: boolean, area: Area): void {
  const site = toSite(way.file);
  const { small, note } = pen.lettering.sizes;
  let y = top(area) - note;
  pen.text(`${way.id}${isUnbeaten ? ', nothing beats it on all counts' : ''}`, [area.x, y], {
    size: note,
    weight: 'bold',
  });
  for (const line of wrapped(way.name, area.width, small, pen.lettering).slice(0, 2)) {
    y -= small * LEADING;
    pen.text(line, [area.x, y], { size: small });
  }
  drawPlan(pen, site, { x: area.x, y: y - 6 - PICTURE, width: area.width, height: PICTURE });
  y -= PICTURE + 8;
  for (const figure of TOLD) {
    y -= small * LEADING;
    if (y < area.y) break;
    pen.text(FIGURES[figure].name, [area.x, y], { size: small, colour: GREY });
    pen.text(shownFigure(figure, way.figures[figure], site.units), [area.x + area.width, y], {
      size: small,
      anchor: 'right',
    });
  }
}

const STEEL: Ink = { weight: 0.1, colour: '#c9c4ba' };
const BURIED: Ink = { weight: 0.35, colour: BLACK, dash: [1.4, 0.9] };

/** A plan in a few lines: stalls and steel thin, raceways heavy, those in the ground dashed, drops as dots, equipment as boxes. */
function drawPlan(pen: Pen, site: Site, area: Area): void {
  const stalls = site.stalls.map((stall): readonly Point2[] => stallRectangle(stall));
  const flat = ([x, y]: readonly [number, number, ...number[]]): Point2 => [x, y];
  const gear = site.equipment.map(({ at, size, rotation = 0 }): readonly Point2[] =>
    rectangleAt(at, [size[0], size[1]], rotation),
  );
  const box = boxOf([
    ...[...stalls, ...gear].flat(),
    ...site.raceways.flatMap(({ path }) => path.map(flat)),
    ...site.members.flatMap(({ from, to }) => [flat(from), flat(to)]),
  ]);
  const scale = Math.min(area.width / (box.maxX - box.minX || 1), area.height / (box.maxY - box.minY || 1));
  const [midX, midY] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const at = ([x, y]: Point2): Point2 => [
    area.x + area.width / 2 + (x - midX) * scale,
    area.y + area.height / 2 + (y - midY) * scale,
  ];
  const closed = (points: readonly Point2[]): readonly Point2[] => [...points, points[0]!].map(at);
  pen.clipped({ x: area.x - 1, y: area.y - 1, width: area.width + 2, height: area.height + 2 }, () => {
    pen.lines(
      site.members.map(({ from, to }) => [flat(from), flat(to)].map(at)),
      STEEL,
    );
    pen.lines(stalls.map(closed), PENS.existingHair);
    const ways = (isBuried: boolean): readonly (readonly Point2[])[] =>
      site.raceways.flatMap(({ path, place }) =>
        (place === 'underground') === isBuried ? [path.map(flat).map(at)] : [],
      );
    pen.lines(ways(true), BURIED);
    pen.lines(ways(false), PENS.medium);
    for (const {
      box: [x, y],
      mount,
    } of site.drops)
      pen.circle(at([x, y]), mount === 'pedestal' ? 1.6 : 1.2, PENS.hair, mount === 'pedestal' ? undefined : BLACK);
    pen.lines(gear.map(closed), PENS.plain);
  });
}

/** Those that cannot be and what was looked at, on as many pages as they need. */
function wordPages(study: Study): readonly ReportPage[] {
  const told = [
    ...study.ways.flatMap(({ id, also }) =>
      also.length === 0 ? [] : [{ head: `${id}: the same comes of`, says: also.join('; ') }],
    ),
    ...study.cannot.map(({ name, says }) => ({ head: `${name}: cannot be`, says })),
    ...lookedWords(study).map((says) => ({ head: '', says })),
  ];
  const pages: (typeof told)[] = [];
  const ROOM = 12;
  for (let i = 0; i < told.length; i += ROOM) pages.push(told.slice(i, i + ROOM));
  return pages.map((own, i) => ({
    title: i === 0 ? 'What cannot be, and what was looked at' : 'What was looked at',
    draw: (pen) => {
      const { field } = LYING;
      const { small, note } = pen.lettering.sizes;
      let y = top(field);
      for (const { head, says } of own) {
        if (head !== '') {
          for (const line of wrapped(head, field.width, note, pen.lettering)) {
            y -= note * LEADING;
            pen.text(line, [field.x, y], { size: note, weight: 'bold' });
          }
        }
        for (const line of wrapped(says, field.width, small, pen.lettering).slice(0, 4)) {
          y -= small * LEADING;
          pen.text(line, [field.x, y], { size: small });
        }
        y -= 6;
      }
    },
  }));
}
