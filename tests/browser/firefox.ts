import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import puppeteer, { type Browser, type ElementHandle, type Page } from 'puppeteer-core';

const NAMES = ['firefox', 'firefox-esr'];

/** What is said where there is no second browser engine to test in. */
export const NO_FIREFOX =
  'NOT RUN: the tests in a second browser engine (tests/browser/firefox.test.ts), for no Firefox was found. Install one (on Debian, "apt-get install firefox-esr") or set FIREFOX_PATH.';

/**
 * A stock Firefox to test with: the one named by FIREFOX_PATH (or nothing else), or one on the PATH; null where there is
 * none. Throws where the named one is not there.
 */
export function findFirefox(): string | null {
  const named = process.env.FIREFOX_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`FIREFOX_PATH names ${named}, which is not there`);
    return named;
  }
  for (const name of NAMES)
    for (const folder of (process.env.PATH ?? '').split(delimiter)) {
      const file = join(folder, name);
      if (folder && existsSync(file)) return file;
    }
  return null;
}

export interface Firefox {
  readonly browser: Browser;
  /** Where its downloads land. */
  readonly downloads: string;
  readonly close: () => Promise<void>;
}

/** Starts it over WebDriver BiDi, which a Firefox speaks as it is: no patched one is needed. */
export async function launchFirefox(executablePath: string): Promise<Firefox> {
  const downloads = mkdtempSync(join(tmpdir(), 'overrow-firefox-'));
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath,
    headless: true,
    defaultViewport: { width: 1440, height: 900 },
    extraPrefsFirefox: { 'browser.download.folderList': 2, 'browser.download.dir': downloads },
  });
  return {
    browser,
    downloads,
    close: async () => {
      await browser.close();
      rmSync(downloads, { recursive: true });
    },
  };
}

/** Waits until a site is open and drawn. */
export async function ready(page: Page): Promise<void> {
  await page.waitForSelector('#page[data-ready=yes][data-rest=here]');
  await page.waitForFunction(
    () => Number(document.querySelector<HTMLElement>('[data-testid=board]')?.dataset.baseMarks ?? 0) > 0,
  );
}

const KINDS = { button: 'button:not([role])', menuitem: '[role=menuitem]' } as const;

/** Presses a button or an entry of a menu by its name. */
export async function press(page: Page, kind: keyof typeof KINDS, name: string): Promise<void> {
  const found = await page.waitForFunction(
    (selector, wanted) =>
      [...document.querySelectorAll(selector)].find(
        ({ ariaLabel, textContent }) => (ariaLabel ?? textContent?.trim()) === wanted,
      ),
    {},
    KINDS[kind],
    name,
  );
  await (found.asElement() as ElementHandle<Element>).click();
}

/** Where a point of the plan, feet, lies in the window once the board keeps still. */
export const onScreen = (page: Page, at: readonly [number, number]): Promise<readonly [number, number]> =>
  page.$eval(
    '[data-testid=board]',
    async (board, [x, y]) => {
      const place = (): readonly [number, number] => {
        const [cx, cy, scale] = (board as HTMLElement).dataset.camera!.split(' ').map(Number) as [
          number,
          number,
          number,
        ];
        const { left, top, width, height } = board.getBoundingClientRect();
        return [left + width / 2 + (x - cx) * scale, top + height / 2 - (y - cy) * scale];
      };
      for (let before = place(); ; ) {
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))));
        const now = place();
        if (now[0] === before[0] && now[1] === before[1]) return now;
        before = now;
      }
    },
    at,
  );
