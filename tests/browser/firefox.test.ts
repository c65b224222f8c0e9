import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'puppeteer-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { type Firefox, findFirefox, launchFirefox, NO_FIREFOX, onScreen, press, ready } from './firefox.ts';
import { PATIENCE } from './open-page.ts';
import { type Served, servePage } from './serve.ts';

const path = findFirefox();
if (path === null) console.warn(NO_FIREFOX);

describe.skipIf(path === null)('in a second browser engine', () => {
  let firefox: Firefox;
  let served: Served;
  let page: Page;
  let offences: string[];

  beforeAll(async () => {
    [firefox, served] = await Promise.all([launchFirefox(path!), servePage()]);
  });
  afterAll(async () => {
    await firefox.close();
    await served.close();
  });
  beforeEach(async () => {
    const context = await firefox.browser.createBrowserContext();
    page = await context.newPage();
    page.setDefaultTimeout(PATIENCE);
    offences = [];
    page.on('console', (message) => {
      if (message.type() === 'error') offences.push(message.text());
    });
    page.on('pageerror', (error) => offences.push(String(error)));
    await page.evaluateOnNewDocument(() => {
      document.addEventListener('securitypolicyviolation', (event) => {
        console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
      });
    });
    await page.goto(served.url);
    await ready(page);
  });
  afterEach(async () => {
    expect(offences).toEqual([]);
    await page.browserContext().close();
  });

  const says = (selector: string): Promise<string> => page.$eval(selector, (element) => element.textContent ?? '');
  /** Waits until the button for it says what would be taken back. */
  const canUndo = (what: string): Promise<unknown> =>
    page.waitForFunction(
      (words) =>
        [...document.querySelectorAll('button')].some(
          ({ ariaLabel, textContent }) =>
            /^Undo/.test(ariaLabel ?? textContent) && `${ariaLabel}${textContent}`.includes(words),
        ),
      {},
      what,
    );

  async function downloaded(name: string, ask: () => Promise<void>): Promise<Buffer> {
    const file = join(firefox.downloads, name);
    await ask();
    await expect
      .poll(() => existsSync(file) && !readdirSync(firefox.downloads).some((each) => each.endsWith('.part')))
      .toBe(true);
    return readFileSync(file);
  }

  async function sheet(name: string, file: string): Promise<Buffer> {
    return downloaded(file, async () => {
      await press(page, 'button', 'Sheets');
      await press(page, 'menuitem', name);
    });
  }

  async function dragD05(): Promise<void> {
    const [x, y] = await onScreen(page, [52, 9]);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const step of [4, 10, 20]) await page.mouse.move(x + step, y - step);
    await page.mouse.up();
  }

  test('the page opens, keeps to its policy, and opens every sample', async () => {
    expect(await says('h1')).toBe('Alder Street Library lot');
    for (const [name, title] of [
      ['Fleet yard', 'Quarry Road fleet yard'],
      ['Hospital lot', 'Mill Creek Hospital lot'],
    ] as const) {
      await press(page, 'button', 'Samples');
      await press(page, 'menuitem', name);
      await page.waitForFunction((wanted) => document.querySelector('h1')?.textContent === wanted, {}, title);
      await ready(page);
    }
  });

  test('a lot is drawn from nothing', async () => {
    await press(page, 'button', 'Open');
    await press(page, 'menuitem', 'An empty site');
    await page.waitForFunction(() => document.querySelector('h1')?.textContent === 'New site');
    await page.focus('[data-testid=board]');
    await page.keyboard.press('s');
    const click = async (at: readonly [number, number]): Promise<void> => {
      const [x, y] = await onScreen(page, at);
      await page.mouse.move(x, y, { steps: 3 });
      await page.mouse.down();
      await page.mouse.up();
    };
    await click([-57, -18]);
    const [x, y] = await onScreen(page, [0, -18]);
    await page.mouse.move(x, y, { steps: 3 });
    await page.keyboard.type("9' * 6");
    await page.keyboard.press('Enter');
    await page.focus('[data-testid=board]');
    await page.keyboard.press('Enter');
    const saved = await downloaded('New site.site.json', () => press(page, 'button', 'Save'));
    const read = readSite(saved.toString('utf8'));
    expect(read.ok && read.file.stalls?.map(({ width }) => width)).toEqual([9, 9, 9, 9, 9, 9]);
  });

  test('a drop is dragged, and is found as it was left when the page is loaded anew', async () => {
    await dragD05();
    await canUndo('move drop D05');
    const place = (): Promise<string> =>
      page.$$eval('[data-testid=selection-panel] input', (inputs) =>
        inputs.map((input) => (input as HTMLInputElement).value).join(' '),
      );
    const left = await place();
    await page.reload();
    await ready(page);
    await canUndo('move drop D05');
    const [x, y] = await onScreen(page, [52, 9]);
    await page.mouse.click(x + 20, y - 20);
    await page.waitForSelector('[data-testid=selection-panel]');
    await expect.poll(() => place()).toBe(left);
  });

  test('the drawing set and the ZIP of every sheet are written', async () => {
    const set = await readPdf(await sheet('Drawing set, ANSI D PDF', 'Alder Street Library lot.drawings.pdf'));
    expect(set.title).toBe('Alder Street Library lot: drawing set');
    const zip = await sheet('Every sheet, in one ZIP', 'Alder Street Library lot.sheets.zip');
    const files = unzipSync(new Uint8Array(zip));
    expect(Object.keys(files)).toContain('Alder Street Library lot.dxf');
    expect(Object.values(files).every(({ length }) => length > 200)).toBe(true);
  });

  test('without its host the page opens again, with the work in it and every part of it', async () => {
    const host = await servePage();
    await page.goto(host.url);
    await ready(page);
    await page.waitForFunction(async () => {
      const { active } = await navigator.serviceWorker.ready;
      return active?.state === 'activated' && navigator.serviceWorker.controller !== null;
    });
    await dragD05();
    await canUndo('move drop D05');
    await host.close();
    await page.reload();
    await ready(page);
    await canUndo('move drop D05');
    await press(page, 'button', 'Samples');
    await press(page, 'menuitem', 'Fleet yard');
    await page.waitForFunction(() => document.querySelector('h1')?.textContent === 'Quarry Road fleet yard');
    const dxf = await sheet('Plan drawing, as DXF', 'Quarry Road fleet yard.dxf');
    expect(dxf.toString('utf8')).toContain('SECTION');
    // The browser tells of its own look for a newer version, which has no host to go to.
    offences = offences.filter((offence) => !/sw\.js|ServiceWorker/i.test(offence));
  });
});
