import { EQUIPMENT_KINDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import { cloudOutline } from '../../drawing/revision-clouds.ts';
import { inkOf, PENS } from '../kit/ink.ts';
import { drawKeynote } from '../kit/keynotes.ts';
import { centred, type Pen } from '../kit/pen.ts';
import { drawDelta } from '../kit/revised.ts';
import { drawBranches, drawBreaker, drawOneLineSymbol, SYMBOL_HEIGHT } from '../one-line/one-line-symbols.ts';
import { drawSymbol } from '../plans/base-plan.ts';
import { feederInk } from '../plans/feeders-on-plan.ts';
import { lineInks } from '../schedules/circuit-words.ts';

/** Something a legend explains: how it is drawn about a point, and what it is. */
export interface Entry {
  readonly says: string;
  readonly height: number;
  readonly draw: (pen: Pen, at: Point2) => void;
}

export interface Group {
  readonly title: string;
  readonly entries: readonly Entry[];
}

const ROW = 24;
const SYMBOL = 9;

const line =
  (draw: (pen: Pen, from: Point2, to: Point2) => void): Entry['draw'] =>
  (pen, [x, y]) =>
    draw(pen, [x - 40, y], [x + 40, y]);

const layerLine = (layer: LayerName): Entry => ({
  says: `${LAYERS[layer].says} (${LAYERS[layer].name})`,
  height: ROW,
  draw: line((pen, from, to) => pen.line([from, to], inkOf(layer))),
});

export const PLAN_SYMBOLS: Group = {
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
      says: 'keynote: its words stand beside the plan',
      height: ROW,
      draw: (pen, at) => drawKeynote(pen, at, 1, pen.lettering.sizes.note),
    },
    {
      says: 'pull box or conduit body, as drawn',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'pull-point', at, SYMBOL, 'pullPoints'),
    },
    {
      says: 'junction box where circuits of a home run part, as the plan places it',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'junction', at, SYMBOL, 'pullPoints'),
    },
    {
      says: 'handhole in the ground where conduits part or are pulled, its cover at grade; size and rating in the setting-out schedule',
      height: 30,
      draw: (pen, at) => drawSymbol(pen, 'handhole', at, SYMBOL, 'pullPoints'),
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

export const LINES: Group = {
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
      'aisleStripes',
      'columns',
      'members',
    ] as const
  ).map(layerLine),
};

export const RAISED_LINES: Group = {
  title: 'Raised view and sections',
  entries: (['framing', 'vehicles', 'inletZones', 'cords', 'grade'] as const).map(layerLine),
};

export function colours(site: Site): Group {
  const volts = [...new Set(site.chargers.map((charger) => charger.volts))].sort((a, b) => a - b);
  return {
    title: 'Colors of the lines',
    entries: (volts.length === 0 ? [208] : volts).map((one) => ({
      says: `lines A, B and C at ${one} V between lines (custom of the trade)`,
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

export const STRIP_SYMBOLS: Group = {
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
      says: 'stub between a raceway and a box or equipment; the way from box to retractor',
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

export const ONE_LINE: Group = {
  title: 'One-line',
  entries: [
    ...EQUIPMENT_KINDS.map(
      (kind): Entry => ({
        says:
          kind === 'transformer'
            ? 'transformer, delta to grounded wye'
            : kind === 'source'
              ? 'source: the utility’s point of connection'
              : kind === 'service'
                ? 'service equipment: disconnect, metering, main bonding jumper'
                : kind,
        height: SYMBOL_HEIGHT + 10,
        draw: (pen, [x, y]) => drawOneLineSymbol(pen, kind, 'P1', [x, y + SYMBOL_HEIGHT / 2], 1),
      }),
    ),
    {
      says: 'overcurrent device of a feeder, or main, at the end where it stands; a grey feeder is existing',
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

export const REVISION: Group = {
  title: 'Revision',
  entries: [
    {
      says: 'cloud with the delta of its revision: round what changed since the version that the title block names',
      height: 40,
      draw: (pen, [x, y]) => {
        pen.line(cloudOutline({ minX: x - 34, minY: y - 8, maxX: x + 14, maxY: y + 8 }, 10), inkOf('revisions'), true);
        drawDelta(pen, [x + 32, y - 6], '1');
      },
    },
  ],
};
