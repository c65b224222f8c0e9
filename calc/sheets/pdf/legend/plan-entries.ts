import { SHEET_PARTS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { cloudOutline } from '../../drawing/revision-clouds.ts';
import { inkOf, PENS } from '../kit/ink.ts';
import { centred } from '../kit/pen.ts';
import { drawDelta } from '../kit/revision/delta.ts';
import { drawKeynote } from '../kit/title/keynotes.ts';
import { drawSymbol } from '../plans/base-plan.ts';
import { feederInk, feedersInPlan } from '../plans/feeders-on-plan.ts';
import { lineInks } from '../schedules/circuit-words.ts';
import { type Group, layerLine, lineEntry, ROW, SYMBOL } from './entries.ts';

export const PLAN_SYMBOLS: Group = {
  title: 'Symbols of the plans',
  of: ['plan', 'enlarged'],
  entries: [
    {
      isOn: ({ site }) => site.drops.length > 0,
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
      says: 'keynote: its words stand beside the plan, else on the general sheet that its title block names',
      height: ROW,
      draw: (pen, at) => drawKeynote(pen, at, 1, pen.lettering.sizes.note),
    },
    {
      isOn: ({ site }) => site.pullpoints.length > 0,
      says: 'pull box or conduit body, as drawn',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'pull-point', at, SYMBOL, 'pullPoints'),
    },
    {
      isOn: ({ plan }) => plan.boxes.some(({ kind }) => kind === 'junction'),
      says: 'junction box where circuits of a home run part, as the plan places it',
      height: ROW,
      draw: (pen, at) => drawSymbol(pen, 'junction', at, SYMBOL, 'pullPoints'),
    },
    {
      isOn: ({ plan }) => plan.handholes.length > 0,
      says: 'handhole in the ground where conduits part or are pulled, its cover at grade',
      height: 30,
      draw: (pen, at) => drawSymbol(pen, 'handhole', at, SYMBOL, 'pullPoints'),
    },
    {
      isOn: ({ site }) => site.gridlines.x.length + site.gridlines.y.length > 0,
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
      isOn: ({ hasMatchLines }) => hasMatchLines,
      says: 'match line: the plan continues on the sheet it names',
      height: ROW,
      draw: lineEntry((pen, from, to) => pen.line([from, to], PENS.match)),
    },
    {
      isOn: ({ site }) => site.sections.length > 0,
      says: 'section, cut from mark to mark and looked at the way that they point: its number and its sheet',
      height: 34,
      draw: (pen, [x, y]) => {
        pen.line(
          [
            [x - 40, y],
            [x - 16, y],
          ],
          inkOf('sections'),
        );
        pen.line(
          [
            [x - 40, y],
            [x - 34, y - 9],
            [x - 28, y],
          ],
          inkOf('sections'),
          true,
        );
        const size = pen.lettering.sizes.small;
        pen.text('1/E-301', [x - 8, centred(y, size)], { size, weight: 'bold' });
      },
    },
    {
      isOn: ({ site }) => feedersInPlan(site).some(({ isRouted }) => !isRouted),
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

export const LINE_ENTRIES: Group = {
  title: 'Lines, by layer',
  of: ['plan', 'enlarged', 'raised', 'sections'],
  entries: (
    [
      'raceways',
      'underground',
      'existingRaceways',
      'existingUnderground',
      'equipment',
      'workingSpace',
      'property',
      'easements',
      'keepouts',
      'stalls',
      'aisles',
      'aisleStripes',
      'columns',
      'members',
    ] as const
  ).map((layer) => ({ ...layerLine(layer), isOn: ({ layers }) => layers.has(layer) })),
};

export const RAISED_LINES: Group = {
  title: 'Raised view and sections',
  of: ['raised', 'sections'],
  entries: (['framing', 'vehicles', 'inletZones', 'cords', 'grade'] as const).map(layerLine),
};

export function colours(site: Site): Group {
  const volts = [...new Set(site.chargers.map((charger) => charger.volts))].sort((a, b) => a - b);
  return {
    title: 'Colors of the lines',
    of: ['plan', 'enlarged', 'strips', 'circuits', 'panels'],
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

export const REVISION: Group = {
  title: 'Revision',
  of: SHEET_PARTS,
  entries: [
    {
      says: 'cloud with the delta of its revision: round what changed since the version that the title block names; a delta alone: the row, line or view beside it reads otherwise',
      height: 40,
      draw: (pen, [x, y]) => {
        pen.line(cloudOutline({ minX: x - 34, minY: y - 8, maxX: x + 14, maxY: y + 8 }, 10), inkOf('revisions'), true);
        drawDelta(pen, [x + 32, y - 6], '1');
      },
    },
  ],
};
