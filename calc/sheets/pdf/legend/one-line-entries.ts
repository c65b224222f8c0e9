import { EQUIPMENT_KINDS } from '../../../../routing/site/schema/vocabulary.ts';
import { PENS } from '../kit/ink.ts';
import { drawBranches, drawBreaker } from '../one-line/circuit-symbols.ts';
import { drawOneLineSymbol } from '../one-line/one-line-symbols.ts';
import { SYMBOL_HEIGHT } from '../one-line/symbol-pen.ts';
import type { Entry, Group } from './entries.ts';

export const ONE_LINE: Group = {
  title: 'One-line',
  of: ['one-line'],
  entries: [
    ...EQUIPMENT_KINDS.map(
      (kind): Entry => ({
        isOn: ({ site }) => site.equipment.some((one) => one.kind === kind),
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
