import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { launchBrowser } from './chromium.ts';
import { onScreen, openPage, openSample, ready } from './open-page.ts';
import { servePage } from './serve.ts';
import { pdf } from './underlay-files.ts';

let browser: Browser;
const folders: string[] = [];

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  for (const folder of folders) rmSync(folder, { recursive: true });
});

/** A copy of the built page, to be changed as a host changes it. */
function copied(): string {
  const folder = mkdtempSync(join(tmpdir(), 'overrow-page-'));
  folders.push(folder);
  cpSync('dist', folder, { recursive: true });
  return folder;
}

/** Waits until the browser keeps the whole page, and answers for it. */
const kept = (page: Page): Promise<unknown> =>
  page.waitForFunction(async () => {
    const { active } = await navigator.serviceWorker.ready;
    return active?.state === 'activated' && navigator.serviceWorker.controller !== null;
  });

async function sheet(page: Page, name: string | RegExp): Promise<Buffer> {
  await page.getByRole('button', { name: 'Sheets' }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('menuitem', { name }).click()]);
  return readFile((await download.path())!);
}

async function moveD05(page: Page): Promise<void> {
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
}

test('without network and host the page opens again with the work in it, and writes every sheet', async () => {
  const served = await servePage();
  const { page, offences, close } = await openPage(browser, served, { keepsPage: true });
  await kept(page);
  await moveD05(page);
  await served.close();
  await page.context().setOffline(true);
  await page.reload();
  await ready(page);
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.getByRole('button', { name: 'Keys' }).click();
  await expect
    .poll(() => page.getByTestId('page-version').textContent())
    .toMatch(/^Version \d+\.\d+\.\d+, build [0-9a-f]{7}\. Kept in this browser: it opens without a network too\.$/);
  await page.keyboard.press('Escape');
  // The parts that are loaded when they are asked for: the reader of PDF files, a sample, the writers of sheets.
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Put a site plan underneath/ }).click(),
  ]);
  await chooser.setFiles({ name: 'plan.pdf', mimeType: 'application/pdf', buffer: Buffer.from(await pdf()) });
  await page.waitForSelector('[data-testid=underlay][data-state=shown]');
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  const set = await readPdf(await sheet(page, 'Drawing set, ANSI D PDF'));
  expect(set.pages.length).toBeGreaterThan(5);
  const names = Object.keys(unzipSync(new Uint8Array(await sheet(page, 'Every sheet, in one ZIP'))));
  for (const ending of ['.drawings.pdf', '.dxf', '.svg', '.xlsx', '.runs.csv', '.ifc', '.plan.json'])
    expect(names).toContain(`Quarry Road fleet yard${ending}`);
  expect(offences.filter((offence) => !offence.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
  await close();
});

/** Makes a newer version of a copy: its page says so, and parts that the older one loads late have another name. */
function updateHost(folder: string): void {
  const assets = readdirSync(join(folder, 'assets'));
  const late = assets.filter((name) => /^(fleet-yard|hospital-lot|read-pdf)/.test(name));
  expect(late.length).toBeGreaterThanOrEqual(3);
  for (const name of late) rmSync(join(folder, 'assets', name));
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  writeFileSync(join(folder, 'index.html'), index.replace(/(name="version" content=")[^"]*/, '$19.9.9, build fffffff'));
  const list = readFileSync(join(folder, 'sw.js'), 'utf8')
    .replace(/\{url:"assets\/(fleet-yard|hospital-lot|read-pdf)[^}]*\},/g, '')
    .replace(/(url:"index\.html",revision:")[^"]*/, '$1another');
  writeFileSync(join(folder, 'sw.js'), list);
}

/** How many tabs hold the page open, by the lock that they share. */
const pagesOpen = (page: Page): Promise<number> =>
  page.evaluate(
    async () => ((await navigator.locks.query()).held ?? []).filter(({ name }) => name === 'overrow.page').length,
  );

test('a host that is updated takes nothing from an open tab; the newer version is offered and taken when asked', async () => {
  const folder = copied();
  const served = await servePage(folder);
  const { page, offences, close } = await openPage(browser, served, { keepsPage: true });
  await kept(page);
  await moveD05(page);
  updateHost(folder);
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const offer = page.locator('.notice', { hasText: 'A newer version of Overrow is ready.' });
  await offer.waitFor();
  // The version that stands goes on, with parts that the host no longer has, and so it does after a reload.
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  await page.reload();
  await ready(page);
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  const version = (): Promise<string | null> => page.locator('meta[name=version]').getAttribute('content');
  await expect.poll(() => version()).not.toContain('9.9.9');
  // While the page is open in another tab as well, nothing is taken away from under that one.
  const other = await page.context().newPage();
  await other.goto(served.url);
  await ready(other);
  await offer.getByRole('button', { name: 'Load it' }).click();
  await page.getByText('Overrow is open in 1 more tab: close them, then load it here.').waitFor();
  await other.close();
  await expect.poll(() => pagesOpen(page)).toBe(1);
  await Promise.all([page.waitForEvent('load'), offer.getByRole('button', { name: 'Load it' }).click()]);
  await ready(page);
  await expect.poll(() => version()).toBe('9.9.9, build fffffff');
  await expect.poll(() => page.locator('h1').textContent()).toBe('Mill Creek Hospital lot');
  expect(offences).toEqual([]);
  await close();
  await served.close();
});

test('where nothing is kept and the host was updated, a part that is gone is told with what to do, and nothing is lost', async () => {
  const folder = copied();
  const served = await servePage(folder);
  const { page, close } = await openPage(browser, served, { width: 390, height: 844, touch: true });
  for (const name of readdirSync(join(folder, 'assets'))) rmSync(join(folder, 'assets', name));
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Fleet yard' }).click();
  const inWindow = async (words: string): Promise<void> => {
    const said = page.locator('.notice', { hasText: words });
    await said.waitFor();
    await expect.poll(() => said.textContent()).toContain('save the site to a file and load the page anew');
    const box = (await said.boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  };
  await inWindow('The sample was not opened');
  await page.getByRole('button', { name: 'Sheets' }).click();
  await page.getByRole('menuitem', { name: 'Plan drawing, as DXF' }).click();
  await inWindow('Plan drawing, as DXF of Alder Street Library lot was not written');
  await expect.poll(() => page.locator('h1').textContent()).toBe('Alder Street Library lot');
  await close();
  await served.close();
});

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
  const { pages } = await readPdf(await sheet(page, /utility/));
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
  await kept(page);
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
