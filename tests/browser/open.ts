import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from './chromium.ts';
import { type Opened, type OpenOptions, openPage } from './open-page.ts';
import { type Served, servePage } from './serve.ts';

/** The page as a file's tests open it, each time in a profile of its own. */
export type Open = (options?: OpenOptions) => Promise<Opened>;

/** Has a browser and the served page stand while the tests of a file run; gives what opens the page in it. */
export function opener(): Open {
  let browser: Browser;
  let served: Served;
  beforeAll(async () => {
    [browser, served] = await Promise.all([launchBrowser(), servePage()]);
  });
  afterAll(async () => {
    await browser.close();
    await served.close();
  });
  return (options) => openPage(browser, served, options);
}
