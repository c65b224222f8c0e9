import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
  const folder = mkdtempSync(join(tmpdir(), 'open-bench-'));
  const rows: OpenRow[] = [];
  for (const stalls of sizes) {
    const name = `made lot of ${stalls}`;
    const text = JSON.stringify(makeLot({ name, stalls }));
    // From a file, as people do: what is handed over by the browser's driver is unpacked by the page's own thread.
    const path = join(folder, `${stalls}.site.json`);
    writeFileSync(path, text);
    let best: OpenRow | null = null;
    for (let time = 0; time < times; time++) {
      // A page of its own each time: what the last one had worked out is forgotten.
      const { page, close } = await openPage(browser, served, VIEW);
      await ready(page);
      const row = await opened(page, { name, stalls, path, megabytes: text.length / 1e6 });
      if (best === null || row.thread < best.thread) best = row;
      await close();
    }
    rows.push(best!);
  }
  await served.close();
  await browser.close();
  rmSync(folder, { recursive: true });
  return rows;
}

interface Lot {
  readonly name: string;
  readonly stalls: number;
  readonly path: string;
  readonly megabytes: number;
}

async function opened(page: Page, { name, stalls, path, megabytes }: Lot): Promise<OpenRow> {
  const session = await page.context().newCDPSession(page);
  const events: Stamp[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as typeof events)));
  const ended = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['devtools.timeline'], excludedCategories: ['*'] },
  });
  // Stamped in the page the moment it is drawn: who asks from outside is answered after what comes next, quantities say.
  await page.evaluate(
    ([title, marks]) =>
      new MutationObserver((_, watch) => {
        const board = document.querySelector<HTMLElement>('[data-testid=board]');
        if (document.querySelector('h1')?.textContent !== title || !(Number(board?.dataset.baseMarks) > marks)) return;
        watch.disconnect();
        console.timeStamp('drawn');
        document.body.dataset.drawn = 'yes';
      }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true }),
    [name, stalls] as const,
  );
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: /^A site file/ }).click();
  const chooser = await choosing;
  await page.evaluate(() => console.timeStamp('chosen'));
  await chooser.setFiles(path);
  await page.waitForSelector('body[data-drawn=yes]', { timeout: 300_000 });
  await session.send('Tracing.end');
  await ended;
  const at = (message: string): Stamp => events.find(({ args }) => args?.data?.message === message)!;
  const [chosen, drawn] = [at('chosen'), at('drawn')];
  return { stalls, megabytes, drawn: (drawn.ts - chosen.ts) / 1000, thread: (drawn.tts - chosen.tts) / 1000 };
}

/** A stamp in a browser's trace: microseconds of the clock, and of the processor in its thread. */
interface Stamp {
  readonly ts: number;
  readonly tts: number;
  readonly args?: { readonly data?: { readonly message?: string } };
}
