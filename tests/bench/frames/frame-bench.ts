import { launchBrowser } from '../../browser/chromium.ts';
import { makeLot } from '../make-lot.ts';
import type { BoardTimes } from './gestures.ts';
import { ownBoard } from './own-board.ts';
import { peerBoard } from './peer-board.ts';

export interface FrameRow {
  readonly stalls: number;
  readonly board: string;
  readonly gesture: string;
  readonly median: number;
  readonly p95: number;
  readonly script: number;
}

const GESTURES: readonly (readonly [keyof BoardTimes, string])[] = [
  ['pan', 'pan the whole lot'],
  ['zoom', 'zoom the whole lot'],
  ['near', 'pan from near'],
  ['nudge', 'drag a drop by a few feet'],
  ['drag', 'drag a drop off its raceway'],
];

/**
 * Frame times of the built page beside the same drawing in two other ways, in Chromium without a screen.
 * @param peers folder of the built peer page
 */
export async function frameBench(peers: string, sizes: readonly number[]): Promise<FrameRow[]> {
  const browser = await launchBrowser();
  const rows: FrameRow[] = [];
  for (const stalls of sizes) {
    const site = makeLot({ name: `made lot of ${stalls}`, stalls });
    const boards: readonly (readonly [string, () => Promise<BoardTimes>])[] = [
      ['the page, plan and all', () => ownBoard(browser, site)],
      ['the page, raised', () => ownBoard(browser, site, true)],
      ['raw canvas, no plan', () => peerBoard(browser, peers, 'raw', site)],
      ['a node a shape, no plan', () => peerBoard(browser, peers, 'nodes', site)],
    ];
    for (const [board, run] of boards) {
      const times = await run();
      for (const [key, gesture] of GESTURES) {
        const { median, p95, script } = times[key];
        rows.push({ stalls, board, gesture, median, p95, script });
      }
    }
  }
  await browser.close();
  return rows;
}
