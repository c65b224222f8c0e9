import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { GroundSpan, Section, SectionShape } from '../../space/section/shape.ts';
import { clearOf } from './clear-height-place.ts';
import type { Drawing, DrawnItem } from './drawing.ts';
import { extentOf } from './extent.ts';
import { lineItem } from './items.ts';
import { shapeItem } from './section-shape.ts';

/**
 * A section as a drawing, [across, elevation] in feet: its shapes, grade and trenches, the clear height over each part of
 * the ground, the widths of these below, and the heights in two columns beside it. `letter` is the height of capitals;
 * what is in `existing` is drawn as existing work.
 */
export function sectionDrawing(
  section: Section,
  units: Units,
  letter: number,
  title: string,
  existing: ReadonlySet<string> = NONE,
): Drawing {
  const write = writer(letter);
  const items = [
    ...plainSection(section, existing),
    ...clearHeights(section, units, letter),
    ...widths(section, units, letter),
    ...trenchSizes(section, units, letter),
    ...heightColumns(section, units, write, letter),
  ];
  return { title, items, extent: extentOf(items) };
}

/** The shapes of a section on their ground, without a word. */
export const plainSection = (section: Section, existing: ReadonlySet<string> = NONE): readonly DrawnItem[] => [
  ...grade(section, section.length / 60),
  ...section.shapes
    .filter((shape, i) => !isBehind(shape, i, section.shapes))
    .map((shape) => shapeItem(shape, existing)),
];

const NONE: ReadonlySet<string> = new Set();

/** What is wholly behind a nearer block is not drawn. */
function isBehind(shape: SectionShape, at: number, shapes: readonly SectionShape[]): boolean {
  if (shape.kind !== 'outline' || shape.isCut || shape.part !== 'vehicle') return false;
  const [[from, low], , [to, high]] = shape.points as readonly [Point2, Point2, Point2];
  return shapes.slice(at + 1).some((other) => {
    if (other.kind !== 'outline' || other.part !== 'vehicle') return false;
    const [[otherFrom, otherLow], , [otherTo, otherHigh]] = other.points as readonly [Point2, Point2, Point2];
    return otherFrom <= from + 0.05 && otherTo >= to - 0.05 && otherLow <= low && otherHigh >= high - 0.05;
  });
}

type Write = (at: Point2, words: string, anchor: 'left' | 'middle' | 'right', turn?: number) => DrawnItem;

const writer =
  (letter: number): Write =>
  (at, words, anchor, turn = 0) => ({
    kind: 'text',
    layer: 'dimensions',
    at,
    text: words,
    height: letter,
    turn,
    anchor,
    stays: true,
  });

/** Grade as a line that parts over trenches, and their sides and bottoms. */
function grade({ length, trenches }: Section, letter: number): DrawnItem[] {
  const items: DrawnItem[] = [];
  let at = -2 * letter;
  for (const { from, to, bottom } of trenches) {
    items.push(
      lineItem('grade', [
        [at, 0],
        [from, 0],
      ]),
    );
    items.push(
      lineItem('grade', [
        [from, 0],
        [from, bottom],
        [to, bottom],
        [to, 0],
      ]),
    );
    items.push(
      lineItem('grade', [
        [from, 0],
        [to, 0],
      ]),
    );
    at = to;
  }
  items.push(
    lineItem('grade', [
      [at, 0],
      [length + 2 * letter, 0],
    ]),
  );
  return items;
}

/** A tick across the end of a dimension. */
const tick = ([x, y]: Point2, size: number): DrawnItem =>
  lineItem('dimensions', [
    [x - size, y - size],
    [x + size, y + size],
  ]);

function upright(u: number, from: number, to: number, words: string, letter: number): DrawnItem[] {
  const size = letter * 0.4;
  return [
    lineItem('dimensions', [
      [u, from],
      [u, to],
    ]),
    tick([u, from], size),
    tick([u, to], size),
    writer(letter)([u - letter * 0.35, (from + to) / 2], words, 'middle', 90),
  ];
}

function clearHeights({ ground, shapes }: Section, units: Units, letter: number): DrawnItem[] {
  return ground.flatMap((span) => {
    const { clear, asked } = span;
    if (!clear) return [];
    const rule = asked === null ? '' : `, rule ${printLength(asked, units)}`;
    const bare = `clear ${printLength(clear.height, units)}`;
    const fitting = [`${bare}${rule}`, bare].filter((one) => one.length * letter * 0.8 < clear.height);
    const { words, across } = clearOf(shapes, span, clear, fitting.length > 0 ? fitting : [''], letter);
    return [
      ...upright(across, 0, clear.height, words, letter),
      ...(Math.abs(across - clear.across) > 0.1
        ? [
            lineItem('dimensions', [
              [across, clear.height],
              [clear.across, clear.height],
            ]),
          ]
        : []),
    ];
  });
}

/** What the ground is, and how wide each part of it, under the grade; parts that lie over others stand lower. */
function widths({ ground, low }: Section, units: Units, letter: number): DrawnItem[] {
  const rows: GroundSpan[][] = [];
  for (const span of ground) {
    const row = rows.find((one) => one.at(-1)!.to <= span.from + 0.05);
    if (row) row.push(span);
    else rows.push([span]);
  }
  return rows.flatMap((row, i) =>
    row.flatMap((span) => {
      const y = Math.min(0, low) - letter * (3 + 4.2 * i);
      const middle = (span.from + span.to) / 2;
      const name = span.use === 'stall' ? `stall ${span.name}` : span.use;
      const room = (span.to - span.from) / (letter * 0.75);
      const length = printLength(span.to - span.from, units);
      return [
        lineItem('dimensions', [
          [span.from, y],
          [span.to, y],
        ]),
        ...[span.from, span.to].flatMap((u) => [
          tick([u, y], letter * 0.4),
          lineItem('dimensions', [
            [u, -letter * 0.4],
            [u, y - letter * 0.6],
          ]),
        ]),
        ...(length.length <= room ? [writer(letter)([middle, y + letter * 0.4], length, 'middle')] : []),
        ...(name.length <= room ? [writer(letter)([middle, y - letter * 1.5], name, 'middle')] : []),
      ];
    }),
  );
}

function trenchSizes({ trenches }: Section, units: Units, letter: number): DrawnItem[] {
  return trenches.flatMap(({ from, to, bottom, cover, surface }) => {
    const beside = letter * 1.6;
    const covered = `cover ${printLength(cover, units)}`;
    const deep = printLength(-bottom, units);
    // At a scale that has no room for them the heights at the side and the section through the trench say the same.
    const fits = (words: string, feet: number): boolean => words.length * letter * 0.8 < feet;
    return [
      ...(fits(covered, cover)
        ? [
            ...upright(to + beside, -cover, 0, covered, letter),
            lineItem('dimensions', [
              [to, -cover],
              [to + beside * 1.3, -cover],
            ]),
          ]
        : []),
      ...(fits(deep, -bottom)
        ? [
            ...upright(from - beside * 0.6, bottom, 0, deep, letter),
            lineItem('dimensions', [
              [from, bottom],
              [from - beside, bottom],
            ]),
          ]
        : []),
      ...(fits(surface, to - from) ? [writer(letter)([(from + to) / 2, letter * 0.5], surface, 'middle')] : []),
    ];
  });
}

/** The heights in a column on the side of the section that each is nearer to, lifted apart where they would touch. */
function heightColumns({ heights, length }: Section, units: Units, write: Write, letter: number): DrawnItem[] {
  const step = letter * 1.7;
  return ([-1, 1] as const).flatMap((side) => {
    const edge = side < 0 ? -4 * letter : length + 4 * letter;
    let last = Number.NEGATIVE_INFINITY;
    return heights
      .filter(({ across }) => across < length / 2 === side < 0)
      .flatMap(({ across, elevation, says }) => {
        const y = Math.max(elevation, last + step);
        last = y;
        const words = `${printLength(Math.abs(elevation), units)}${elevation < 0 ? ' below grade' : ''}, ${says}`;
        return [
          lineItem('dimensions', [
            [across, elevation],
            [edge - side * 1.5 * letter, elevation],
            [edge, y],
          ]),
          write([edge + side * letter * 0.5, y - letter / 2], words, side < 0 ? 'right' : 'left'),
        ];
      });
  });
}
