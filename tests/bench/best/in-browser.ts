import { loadavg } from 'node:os';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { launchBrowser } from '../../browser/chromium.ts';
import { servePage } from '../../browser/serve.ts';
import type { AskBest, WorkerTimes } from './main.ts';

export interface BestTimes extends WorkerTimes {
  /** Runs that wanted a processor on the whole machine, mean of a minute, before the first try: over 0 stretches times. */
  readonly load: number;
}

/**
 * The least times of some tries of the page's own worker in Chromium; the first also fills the browser's cache.
 *
 * @param folder of the built page beside this file
 */
export async function bestInBrowser(folder: string, day: DayInput, tries: number): Promise<BestTimes> {
  const load = loadavg()[0]!;
  const served = await servePage(folder);
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(served.url);
    await page.waitForFunction(() => 'askBest' in window);
    const ask = (): Promise<WorkerTimes> =>
      page.evaluate((input) => (window as unknown as { askBest: AskBest }).askBest(input), day);
    let least = await ask();
    for (let i = 1; i < tries; i++) {
      const one = await ask();
      least = {
        ...one,
        certified: Math.min(one.certified, least.certified),
        whole: Math.min(one.whole, least.whole),
      };
    }
    return { ...least, load };
  } finally {
    await browser.close();
    await served.close();
  }
}
