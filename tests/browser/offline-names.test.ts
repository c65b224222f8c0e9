import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { launchBrowser } from './chromium.ts';
import { openPage, ready } from './open-page.ts';
import { servePage } from './serve.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Opens the library lot under a name and for a client. */
async function openNamed(page: Page, name: string, client: string): Promise<void> {
  const lot = JSON.parse(await readFile('samples/library-lot.site.json', 'utf8')) as object;
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'A site file…' }).click();
  const chooser = await choosing;
  const text = JSON.stringify({ ...lot, name, project: { client } });
  await chooser.setFiles({ name: 'lot.site.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await ready(page);
}

/** The texts of the page for the utility, which has the name and the client. */
async function letter(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Sheets' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('menuitem', { name: /utility/ }).click(),
  ]);
  const { pages } = await readPdf(await readFile((await download.path())!));
  return pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join('\n');
}

/** Typefaces that the browser keeps, by their names: with the page from its first visit, and because a site needed them. */
const keptFaces = (page: Page): Promise<Record<'first' | 'later', readonly string[]>> =>
  page.evaluate(async () => {
    const faces = { first: [] as string[], later: [] as string[] };
    for (const name of await caches.keys())
      for (const { url } of await (await caches.open(name)).keys()) {
        const face = /assets\/([a-z-]+)-.{8}\.woff(?:\?|$)/.exec(url)?.[1];
        if (face) faces[name === 'overrow-typefaces' ? 'later' : 'first'].push(face);
      }
    return { first: faces.first.sort(), later: faces.later.sort() };
  });

const FIRST = [
  'arabic',
  'cyrillic-extended',
  'devanagari',
  'greek',
  'greek-extended',
  'hebrew',
  'latin-extended',
  'thai',
];

test('typefaces of wide scripts are kept once a site with such names is opened, and print without a network; before that it is said why not', async () => {
  const served = await servePage();
  const { page, offences, close } = await openPage(browser, served, { keepsPage: true });
  await page.waitForFunction(async () => {
    const { active } = await navigator.serviceWorker.ready;
    return active?.state === 'activated' && navigator.serviceWorker.controller !== null;
  });
  expect(await keptFaces(page)).toEqual({ first: FIRST, later: [] });
  await openNamed(page, '駐車場のスタンド', 'Σταθμός');
  await expect.poll(async () => (await keptFaces(page)).later).toEqual(['japanese']);
  await page.context().setOffline(true);
  await served.close();
  await page.reload();
  await ready(page);
  const printed = await letter(page);
  expect(printed).toContain('駐車場のスタンド');
  expect(printed).toContain('Σταθμός');
  expect(printed).not.toContain('U+');
  // Another script, whose typeface nothing has asked for while there was a network.
  await openNamed(page, 'Lot 주차', 'Ωμέγα');
  const numbered = await letter(page);
  expect(numbered).toContain('Lot [U+C8FC U+CC28]');
  expect(numbered).toContain('Ωμέγα');
  const said = page.locator('.notice', { hasText: 'The name of the site has 주 차, whose typeface has not come yet' });
  await expect.poll(() => said.textContent()).toContain('write the sheets again once there is a network');
  await said.getByRole('button', { name: 'Close' }).click();
  expect(offences.filter((offence) => !/ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED/.test(offence))).toEqual([]);
  await close();
});
