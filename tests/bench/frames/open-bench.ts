import type { Page } from 'playwright-core';
import { launchBrowser } from '../../browser/chromium.ts';
import { openPage, ready } from '../../browser/open-page.ts';
import { servePage } from '../../browser/serve.ts';
import { makeLot } from '../make-lot.ts';
import { VIEW } from './gestures.ts';

export interface OpenRow {
  readonly stalls: number;
  readonly megabytes: number;
  /** By the clock, milliseconds, from the file that is chosen to the drawing on the board: read, planned and painted. */
  readonly drawn: number;
  /** Of the page's own thread, milliseconds of the processor, over the same time: a busy machine stretches it less. */
  readonly thread: number;
}

/** Opens site files of made lots in the built page, in Chromium without a screen; of several times the least. */
export async function openBench(sizes: readonly number[], times = 3): Promise<OpenRow[]> {
  const browser = await launchBrowser();
  const served = await servePage();
  const rows: OpenRow[] = [];
  for (const stalls of sizes) {
    const name = `made lot of ${stalls}`;
    const buffer = Buffer.from(JSON.stringify(makeLot({ name, stalls })));
    let best: OpenRow | null = null;
    for (let time = 0; time < times; time++) {
      // A page of its own each time: what the last one had worked out is forgotten.
      const { page, close } = await openPage(browser, served, VIEW);
      await ready(page);
      const row = await opened(page, { name, stalls, buffer });
      if (best === null || row.thread < best.thread) best = row;
      await close();
    }
    rows.push(best!);
  }
  await served.close();
  await browser.close();
  return rows;
}

interface Lot {
  readonly name: string;
  readonly stalls: number;
  readonly buffer: Buffer;
}

async function opened(page: Page, { name, stalls, buffer }: Lot): Promise<OpenRow> {
  const client = await page.context().newCDPSession(page);
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: /^A site file/ }).click();
  const chooser = await choosing;
  const before = await spent(client);
  const start = performance.now();
  await chooser.setFiles({ name: 'bench.site.json', mimeType: 'application/json', buffer });
  await page.waitForFunction(
    ([title, marks]) =>
      document.querySelector('h1')?.textContent === title &&
      Number(document.querySelector<HTMLElement>('[data-testid=board]')?.dataset.baseMarks) > marks,
    [name, stalls] as const,
    { timeout: 300_000, polling: 50 },
  );
  const drawn = performance.now() - start;
  const after = await spent(client);
  return {
    stalls,
    megabytes: buffer.length / 1e6,
    drawn,
    thread: after - before,
  };
}

interface Client {
  readonly send: (
    method: 'Performance.getMetrics',
  ) => Promise<{ readonly metrics: readonly { readonly name: string; readonly value: number }[] }>;
}

/** Milliseconds that the page's thread has worked so far. */
async function spent(client: Client): Promise<number> {
  const { metrics } = await client.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
}
