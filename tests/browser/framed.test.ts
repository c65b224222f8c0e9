import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from './chromium.ts';
import { PATIENCE } from './open-page.ts';
import { servePage } from './serve.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

// Only a host can forbid frames outright: the page must not run in one where its host forgot to.
test.each([
  ['a careless host', false],
  ['a careful host', true],
] as const)('from %s the page does not run inside another page', async (_, careful) => {
  const served = await servePage('dist', careful);
  const outer = createServer((__, response) => {
    response.setHeader('Content-Type', 'text/html');
    response.end(`<iframe src="${served.url}" width="900" height="600"></iframe>`);
  });
  await new Promise<void>((done) => outer.listen(0, '127.0.0.1', done));
  const page = await browser.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.goto(`http://127.0.0.1:${(outer.address() as AddressInfo).port}/`);
  const inner = page.frameLocator('iframe');
  if (careful)
    await expect
      .poll(() => page.frames().some((frame) => frame.parentFrame() && frame.url().startsWith(served.url)))
      .toBe(false);
  else {
    await inner.getByText('Overrow does not run inside another page. Open it by its own address').waitFor();
    await expect.poll(() => inner.getByRole('button').count()).toBe(0);
  }
  await page.close();
  outer.close();
  await served.close();
});
