import type { Point2, Site } from '../../../routing/site/site.ts';
import { EQUIPMENT_KINDS } from '../../../routing/site/vocabulary.ts';
import { LAYERS, type LayerName } from '../drawing/layers.ts';
import { type Area, top } from './area.ts';
import { drawSymbol } from './base-plan.ts';
import { lineInks } from './circuit-words.ts';
import { type Draft, type Job, NOT_TO_SCALE } from './draft.ts';
import { feederInk } from './feeders-on-plan.ts';
import { inkOf, PENS } from './ink.ts';
import { LEADING } from './letters.ts';
import { wrapped } from './lines-of-text.ts';
import { drawBranches, drawBreaker, drawOneLineSymbol, SYMBOL_HEIGHT } from './one-line-symbols.ts';
import { centred, type Pen } from './pen.ts';
import { flowTables, type Table } from './table.ts';
import { drawTable } from './table-drawing.ts';

/** Something a legend explains: how it is drawn about a point, and what it is. */
interface Entry {
  readonly says: string;
  readonly height: number;
  readonly draw: (pen: Pen, at: Point2) => void;
}

interface Group {
  readonly title: string;
  readonly entries: readonly Entry[];
}

const ROW = 24;
const SYMBOL = 9;
const SIGN_WIDTH = 110;
const GAP = 30;

const ABBREVIATIONS: readonly (readonly [string, string])[] = [
  ['A', 'amperes; line A'],
  ['ACC, VAN', 'accessible, van-accessible stall'],
  ['AWG, #', 'American wire gauge'],
  ['deg, °', 'degrees'],
  ['(E)', 'existing'],
  ['EMT', 'electrical metallic tubing'],
  ['EV', 'electric vehicle'],
  ['G', 'equipment grounding conductor'],
  ['IMC', 'intermediate metal conduit'],
  ['J1', 'first junction box of a home run: P1-3.J1'],
  ['kcmil', 'thousand circular mils'],
  ['kVA, VA', 'kilovolt-amperes, volt-amperes'],
  ['LFMC', 'liquidtight flexible metal conduit'],
  ['N', 'neutral; north'],
  ['P', 'poles: 40 A 2P'],
  ['pilot', 'control pilot conductor of a charger'],
  ['PVC40, PVC80', 'rigid PVC conduit, schedule 40 or 80'],
  ['P1-1,3', 'circuit on spaces 1 and 3 of panel P1'],
  ['P1-3.2', 'second conduit of the third home run of P1'],
  ['RMC', 'rigid metal conduit'],
  ['Z', 'impedance of a transformer'],
];

const line =
  (draw: (pen: Pen, from: Point2, to: Point2) => void): Entry['draw'] =>
  (pen, [x, y]) =>
    draw(pen, [x - 40, y], [x + 40, y]);

const layerLine = (layer: LayerName): Entry => ({
  says: `${LAYERS[layer].says} (${LAYERS[layer].name})`,
  height: ROW,
  draw: line((pen, from, to) => pen.line([from, to], inkOf(layer))),
});

const PLAN_SYMBOLS: Group = {
  title: 'Symbols of the plans',
  entries: [
    {
      says: 'drop: the square is the junction box where the branch ends, the ring the retractor or point that the cord hangs from; one over the other where it hangs under its box',
      height: 40,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 28, y],
            [x - 4, y],
          ],
          inkOf('drops'),
        );
        drawSymbol(pen, 'box', [x - 28, y], SYMBOL, 'drops');
        drawSymbol(pen, 'retractor', [x - 4, y], SYMBOL, 'drops');
        drawSymbol(pen, 'box', [x + 26, y], SYMBOL, 'drops');
        drawSymbol(pen, 'retractor', [x + 26, y], SYMBOL, 'drops');
      },
    },
    {
      says: 'pull box or conduit body, as the site file places it',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'pull-point', at, SYMBOL, 'pullPoints'),
    },
    {
      says: 'junction box where circuits of a home run part, as the plan places it',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'junction', at, SYMBOL, 'pullPoints'),
    },
    {
      says: 'gridline with its label',
      height: 34,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 14, y],
            [x + 40, y],
          ],
          inkOf('gridlines'),
        );
        pen.circle([x - 27, y], 13, PENS.existing);
        const size = pen.lettering.sizes.note;
        pen.text('2', [x - 27, centred(y, size)], { size, weight: 'bold', anchor: 'middle' });
      },
    },
    {
      says: 'match line: the plan goes on on the sheet it names',
      height: ROW,
      draw: line((pen, from, to) => pen.line([from, to], PENS.match)),
    },
    {
      says: 'feeder drawn straight between what it joins: its length is given, not its way; grey where it is existing',
      height: 34,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 40, y + 5],
            [x + 40, y + 5],
          ],
          feederInk({}),
        );
        pen.line(
          [
            [x - 40, y - 6],
            [x + 40, y - 6],
          ],
          feederInk({ existing: true }),
        );
      },
    },
  ],
};

const LINES: Group = {
  title: 'Lines, by layer',
  entries: (
    [
      'raceways',
      'underground',
      'equipment',
      'workingSpace',
      'keepouts',
      'stalls',
      'aisles',
      'columns',
      'members',
    ] as const
  ).map(layerLine),
};

function colours(site: Site): Group {
  const volts = [...new Set(site.chargers.map((charger) => charger.volts))].sort((a, b) => a - b);
  return {
    title: 'Colors of the lines',
    entries: (volts.length === 0 ? [208] : volts).map((one) => ({
      says: `lines A, B and C at ${one} V between lines (custom, no source)`,
      height: ROW,
      draw: (pen, [x, y]) => {
        [...lineInks(one)].forEach(([letter, ink], i) => {
          pen.circle([x - 30 + 26 * i, y], 3.2, null, ink);
          pen.text(letter, [x - 24 + 26 * i, centred(y, pen.lettering.sizes.small)], {
            size: pen.lettering.sizes.small,
          });
        });
      },
    })),
  };
}

const STRIP_SYMBOLS: Group = {
  title: 'Run strips',
  entries: [
    {
      says: 'conduit along a raceway, its bends as dots; underground dashed',
      height: 34,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 40, y + 5],
            [x + 40, y + 5],
          ],
          { ...PENS.medium, weight: 0.5 },
        );
        pen.circle([x, y + 5], 1.6, null, PENS.medium.colour);
        pen.line(
          [
            [x - 40, y - 6],
            [x + 40, y - 6],
          ],
          { ...PENS.medium, weight: 0.5, dash: [3, 1.5] },
        );
      },
    },
    {
      says: 'tap between a raceway and a box or an entry; the way from box to retractor',
      height: ROW,
      draw: line((pen, from, to) => pen.line([from, to], { ...PENS.plain, dash: [1.2, 1] })),
    },
    {
      says: 'finished grade',
      height: ROW,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 40, y],
            [x + 40, y],
          ],
          PENS.existing,
        );
        for (let tick = x - 36; tick < x + 38; tick += 9)
          pen.line(
            [
              [tick, y],
              [tick - 3, y - 3],
            ],
            PENS.existingHair,
          );
      },
    },
  ],
};

const ONE_LINE: Group = {
  title: 'One-line',
  entries: [
    ...EQUIPMENT_KINDS.map(
      (kind): Entry => ({
        says:
          kind === 'transformer'
            ? 'transformer, delta to grounded wye'
            : kind === 'source'
              ? 'source: the utility’s service'
              : kind,
        height: SYMBOL_HEIGHT + 10,
        draw: (pen, [x, y]) => drawOneLineSymbol(pen, kind, 'P1', [x, y + SYMBOL_HEIGHT / 2], 1),
      }),
    ),
    {
      says: 'breaker on a feeder; a grey feeder is existing',
      height: 40,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x, y + 16],
            [x, y - 16],
          ],
          PENS.heavy,
        );
        drawBreaker(pen, [x, y], PENS.heavy.colour, 1);
      },
    },
    {
      says: 'branches and loads: in the panel schedules',
      height: 36,
      draw: (pen, [x, y]) => drawBranches(pen, [x, y + 12], 16),
    },
  ],
};

/** The legend: no standard symbol exists for a cord drop or a retractor, so that the set defines its own. */
export function legendSheet(job: Job): Draft {
  const { site, shape, lettering } = job;
  const columns = [[PLAN_SYMBOLS, LINES, colours(site), STRIP_SYMBOLS], [ONE_LINE], []];
  const width = (shape.field.width - (columns.length - 1) * GAP) / columns.length;
  const areaAt = (column: number): Area => ({ ...shape.field, x: shape.field.x + column * (width + GAP), width });
  return {
    key: 'legend',
    series: 'E-0',
    title: 'Legend, symbols and abbreviations',
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      columns.forEach((groups, column) => {
        let y = top(shape.field);
        for (const group of groups) {
          drawGroup(pen, group, areaAt(column), y);
          y -= groupHeight(pen, group, width) + 16;
        }
      });
      const [parts = []] = flowTables([abbreviationTable(width)], areaAt(columns.length - 1), lettering);
      for (const part of parts) drawTable(pen, part);
    },
  };
}

const abbreviationTable = (width: number): Table => ({
  short: 'abbreviations',
  title: 'Abbreviations',
  width,
  columns: [{ head: 'Sign' }, { head: 'Meaning' }],
  rows: ABBREVIATIONS,
});

function linesFor(pen: Pen, { says }: Entry, width: number): readonly string[] {
  return wrapped(says, width - SIGN_WIDTH - 6, pen.lettering.sizes.small, pen.lettering);
}

const entryHeight = (pen: Pen, entry: Entry, width: number): number =>
  Math.max(entry.height, linesFor(pen, entry, width).length * pen.lettering.sizes.small * LEADING + 6);

const groupHeight = (pen: Pen, { entries }: Group, width: number): number =>
  pen.lettering.sizes.head * 1.8 + entries.reduce((sum, entry) => sum + entryHeight(pen, entry, width), 0);

function drawGroup(pen: Pen, group: Group, { x, width }: Area, from: number): void {
  const { head, small } = pen.lettering.sizes;
  let y = from - head;
  pen.text(group.title.toUpperCase(), [x, y], { size: head, weight: 'bold' });
  y -= head * 0.8;
  for (const entry of group.entries) {
    const height = entryHeight(pen, entry, width);
    const middle = y - height / 2;
    entry.draw(pen, [x + SIGN_WIDTH / 2 - 6, middle]);
    const lines = linesFor(pen, entry, width);
    lines.forEach((words, i) => {
      const base = centred(middle, small) + ((lines.length - 1) / 2 - i) * small * LEADING;
      pen.text(words, [x + SIGN_WIDTH, base], { size: small });
    });
    y -= height;
  }
}
