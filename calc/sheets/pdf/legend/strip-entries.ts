import { PENS } from '../kit/ink.ts';
import { type Group, lineEntry, ROW } from './entries.ts';

export const STRIP_SYMBOLS: Group = {
  title: 'Run strips',
  of: ['strips'],
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
      draw: lineEntry((pen, from, to) => pen.line([from, to], { ...PENS.plain, dash: [1.2, 1] })),
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
