import axe from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { Served } from './serve.ts';

export interface Opened {
  readonly page: Page;
  /** What the page did that it must not: policy reports, errors, requests to anywhere but its own folder. */
  readonly offences: readonly string[];
  readonly close: () => Promise<void>;
}

export interface OpenOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  readonly touch?: boolean;
  /** Whether the browser may keep the page's files for use without a network; most tests have no use for it. */
  readonly keepsPage?: boolean;
  /** Whether whoever writes is still to be asked for initials, as on a device that is new; most tests are not. */
  readonly asksWho?: boolean;
  /** What is to be watched from before the page loads. */
  readonly watch?: (context: BrowserContext) => Promise<void>;
}

/** How long anything is waited for, milliseconds: it comes at once, but not on a machine that has much else to do. */
export const PATIENCE = 180_000;

/**
 * Opens the built page in a browser profile of its own and waits until a site is open. The file dialogs are those of
 * plain inputs and downloads, which a test can answer.
 */
export async function openPage(browser: Browser, served: Served, options: OpenOptions = {}): Promise<Opened> {
  const { width = 1440, height = 900, theme = 'light', touch = false, keepsPage = false, asksWho = false } = options;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    hasTouch: touch,
    reducedMotion: 'reduce',
    acceptDownloads: true,
    serviceWorkers: keepsPage ? 'allow' : 'block',
  });
  context.setDefaultTimeout(PATIENCE);
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  if (!asksWho) await context.addInitScript(() => localStorage.setItem('overrow.initials-asked', 'yes'));
  await options.watch?.(context);
  const page = await context.newPage();
  const offences: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') offences.push(message.text());
  });
  page.on('pageerror', (error) => offences.push(String(error)));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(served.url) && !url.startsWith('blob:') && !url.startsWith('data:'))
      offences.push(`asked ${url}`);
  });
  await page.goto(served.url);
  await ready(page);
  return { page, offences, close: () => context.close() };
}

/** Waits until a site is open and drawn, and the scripts that the first screen does without have come. */
export async function ready(page: Page): Promise<void> {
  await page.waitForSelector('#page[data-ready=yes][data-rest=here]');
  await drawn(page);
}

/** Waits until a site is drawn. */
export async function drawn(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const board = document.querySelector<HTMLElement>('[data-testid=board]');
    return Number(board?.dataset.baseMarks ?? 0) > 0;
  });
}

/** What the board says of itself: how often and how much it drew, and what it looks at. */
export const tally = (page: Page): Promise<Record<string, string>> =>
  page.getByTestId('board').evaluate((board) => ({ ...(board as HTMLElement).dataset }) as Record<string, string>);

/**
 * Where a point of the plan, feet, lies in the window, once the board keeps still: when a panel opens the board changes its
 * size, and its camera in the frame after.
 */
export const onScreen = (page: Page, at: readonly [number, number]): Promise<readonly [number, number]> =>
  page.getByTestId('board').evaluate(async (board, [x, y]) => {
    const drawn = (): Promise<void> =>
      new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve))));
    const place = (): readonly [number, number] => {
      const [cx, cy, scale] = (board as HTMLElement).dataset.camera!.split(' ').map(Number) as [number, number, number];
      const { left, top, width, height } = board.getBoundingClientRect();
      return [left + width / 2 + (x - cx) * scale, top + height / 2 - (y - cy) * scale];
    };
    for (let before = place(); ; ) {
      await drawn();
      const now = place();
      if (now[0] === before[0] && now[1] === before[1]) return now;
      before = now;
    }
  }, at);

export async function openSample(page: Page, name: string, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Samples' }).click();
  await page.getByRole('menuitem', { name, exact: true }).click();
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
  await ready(page);
}

/** Serious and critical faults that axe finds on the page as it stands, one line each. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: () => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
  });
}
