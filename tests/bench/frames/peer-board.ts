import type { Browser } from 'playwright-core';
import type { SiteFile } from '../../../routing/site/site.ts';
import { servePage } from '../../browser/serve.ts';
import { around, type BoardTimes, DRAG_SCALE, dragged, VIEW, wheeled } from './gestures.ts';
import type { PeerBench } from './peers/main.ts';

/** Frame times of the same drawing in the peer page, which was built into a folder. */
export async function peerBoard(
  browser: Browser,
  folder: string,
  kind: 'nodes' | 'raw',
  site: SiteFile,
): Promise<BoardTimes> {
  const served = await servePage(folder);
  const context = await browser.newContext({ viewport: VIEW });
  const page = await context.newPage();
  await page.goto(served.url);
  await page.waitForFunction(() => 'bench' in window);
  const bench = await page.evaluateHandle(() => (window as unknown as { bench: PeerBench }).bench);
  await bench.evaluate((it, [how, file]) => it.open(how, file), [kind, site] as const);
  await page.waitForTimeout(1500);
  const middle = { x: VIEW.width / 2, y: VIEW.height / 2 };
  const pan = await dragged(page, around(middle, 120), 'middle');
  const zoom = await wheeled(page, middle, 24);
  const drop = site.drops![Math.floor(site.drops!.length / 2)]!;
  const [x, y] = drop.retractor ?? drop.box;
  const at = await bench.evaluate((it, [place, scale]) => it.look(place, scale), [[x, y], DRAG_SCALE] as const);
  await page.waitForTimeout(1500);
  const near = await dragged(page, around(at, 120), 'middle');
  const nudge = await dragged(page, around(at, 12), 'left');
  const drag = await dragged(page, around(at, 40), 'left');
  await context.close();
  await served.close();
  return { pan, zoom, near, nudge, drag };
}
