import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { boundaries } from '../../../web/board/kinds/boundaries.ts';
import type { BoardInk } from '../../../web/board/painting/ink.ts';
import { type BoardPen, boardFrame } from '../../../web/board/pictures/frame.ts';
import { BUBBLE, bubblesOf } from '../../../web/board/pictures/steel/gridlines.ts';
import { sceneOf } from '../../../web/board/scene/scene.ts';

const WIDE = 7;
/** No lettering of the board is higher. */
const HIGH = 15;

/** Where a pen puts words, their left ends and middles. */
function wordsPen(): { readonly pen: BoardPen; readonly put: { words: string; x: number; y: number }[] } {
  const put: { words: string; x: number; y: number }[] = [];
  const own: Record<string, unknown> = {
    measureText: (text: string) => ({ width: text.length * WIDE }),
    fillText: (words: string, x: number, y: number) => put.push({ words, x, y }),
  };
  const pen = new Proxy(own, { get: (at, name: string) => at[name] ?? (() => {}), set: () => true });
  return { pen: pen as unknown as BoardPen, put };
}

const read = readSite(readFileSync(new URL('../../../samples/library-lot.site.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the sample is read');
const site = toSite(read.file);
const planned = plan(site);

test('no bubble of a gridline covers the name of a boundary, wherever it runs and at whatever scale; alone it stands where it does among others', () => {
  const view = { width: 1400, height: 800 };
  let beside = 0;
  fc.assert(
    fc.property(
      fc.record({
        scale: fc.double({ min: 1.5, max: 12, noNaN: true }),
        // Along the gridlines' far ends, where their bubbles stand, and a little off.
        aside: fc.double({ min: -12, max: 12, noNaN: true }),
        upright: fc.boolean(),
        panned: fc.double({ min: -20, max: 20, noNaN: true }),
      }),
      ({ scale, aside, upright, panned }) => {
        const { maxX, maxY, minX, minY } = sceneOf(site, planned).extent;
        const path = upright
          ? ([
              [maxX + aside, minY - 60],
              [maxX + aside, maxY + 60],
            ] as const)
          : ([
              [minX - 60, maxY + aside],
              [maxX + 60, maxY + aside],
            ] as const);
        const scene = sceneOf({ ...site, boundaries: [{ id: 'BL1', path, name: 'N 01 W' }] } as never, planned);
        const camera = { x: (minX + maxX) / 2 + panned, y: (minY + maxY) / 2 + panned, scale };
        const frame = boardFrame(camera, view, {} as BoardInk, { scene, station: 'layout', margins: false });
        const { pen, put } = wordsPen();
        boundaries.pictures[0]!.draw(pen, frame, scene.boundaries.items, {} as never);
        const [{ words, x, y }] = put as [(typeof put)[number]];
        for (const bubble of bubblesOf(frame, site.gridlines, scene.extent)) {
          const isApart =
            bubble.x + BUBBLE <= x ||
            bubble.x - BUBBLE >= x + words.length * WIDE ||
            bubble.y + BUBBLE <= y - HIGH / 2 + 2 ||
            bubble.y - BUBBLE >= y + HIGH / 2 - 2;
          expect(isApart).toBe(true);
          if (Math.abs(bubble.y - y) < 60 && Math.abs(bubble.x - x) < 200) beside++;
        }
      },
    ),
  );
  expect(beside).toBeGreaterThan(20);
});
