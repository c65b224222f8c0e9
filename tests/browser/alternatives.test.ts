import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from './chromium.ts';
import { openPage } from './open-page.ts';
import { type Served, servePage } from './serve.ts';

let browser: Browser;
let served: Served;
beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), servePage()]);
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

test('a site that was never changed and the alternative branched from it are both kept, side by side', async () => {
  const { page, offences, close } = await openPage(browser, served);
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await page.getByRole('button', { name: 'Branch the open site into an alternative' }).click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
  await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).click();
  const heads = page
    .getByRole('region', { name: 'Alternatives' })
    .or(page.getByLabel('Alternatives'))
    .locator('thead th');
  await expect
    .poll(() => heads.allTextContents())
    .toEqual(['figure', 'Alder Street Library lot, alternative 2 (open)', 'Alder Street Library lot']);
  await page.getByText('What the open site changes in Alder Street Library lot: no element').waitFor();
  expect(offences).toEqual([]);
  await close();
});
