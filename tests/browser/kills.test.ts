import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { FLAGS, findChromium } from './chromium.ts';
import { PATIENCE, ready } from './open-page.ts';
import { type Served, servePage } from './serve.ts';

let served: Served;
beforeAll(async () => {
  served = await servePage();
});
afterAll(() => served.close());

interface Running {
  readonly browser: Browser;
  readonly page: Page;
  /** Kills every process of the browser at once, as a power cut would end them. */
  readonly kill: () => Promise<void>;
}

/** A browser of its own process group, with its profile in a folder that outlives it. */
async function start(profile: string): Promise<Running> {
  await rm(join(profile, 'DevToolsActivePort'), { force: true });
  const own = ['--headless=new', '--no-sandbox', '--remote-debugging-port=0', `--user-data-dir=${profile}`];
  const child = spawn(await findChromium(), [...FLAGS, ...own, 'about:blank'], { detached: true, stdio: 'ignore' });
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portOf(profile)}`);
  const page = await browser.contexts()[0]!.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto(served.url);
  await ready(page);
  return { browser, page, kill: () => killed(child) };
}

async function portOf(profile: string): Promise<string> {
  for (let tries = 0; tries < 300; tries++) {
    const text = await readFile(join(profile, 'DevToolsActivePort'), 'utf8').catch(() => '');
    const [port] = text.split('\n');
    if (port) return port;
    await new Promise((go) => setTimeout(go, 100));
  }
  throw new Error('the browser did not say where it listens');
}

function killed(child: ChildProcess): Promise<void> {
  const ended = new Promise<void>((go) => child.once('exit', () => go()));
  process.kill(-child.pid!, 'SIGKILL');
  return ended;
}

/** Which moves of drop D05 the page has: the names of its past, and its y in feet. */
const placeOf = (page: Page): Promise<{ readonly words: string; readonly y: string }> =>
  page.evaluate(() => {
    const field = [...document.querySelectorAll<HTMLInputElement>('[data-testid=selection-panel] input')].find(
      (input) => document.querySelector(`label[for="${CSS.escape(input.id)}"]`)?.textContent === 'y',
    );
    return { words: document.querySelector('.keeping')?.textContent ?? '', y: field?.value ?? '' };
  });

async function chooseD05(page: Page): Promise<void> {
  const board = page.getByTestId('board');
  await board.focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('.');
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'D05' }).waitFor();
}

const feet = (y: string): number => Number(/^(-?\d+)'/.exec(y)?.[1]);

// A few kills at each time, in the midst of it or once the page says that it is kept: what it said is there.
test('killed at any moment after edits, what was said to be kept comes back, and every edit is soon said to be', async () => {
  const profile = await mkdtemp(join(tmpdir(), 'overrow-kill-'));
  const told: string[] = [];
  try {
    let running = await start(profile);
    await chooseD05(running.page);
    let before = feet((await placeOf(running.page)).y);
    for (const [moves, wait] of [
      [1, 0],
      [1, 40],
      [1, 'kept'],
      [6, 0],
      [6, 40],
      [6, 'kept'],
    ] as const) {
      for (let i = 0; i < moves; i++) await running.page.keyboard.press('Shift+ArrowUp');
      if (wait === 'kept') await expect.poll(async () => (await placeOf(running.page)).words).toMatch(/^kept/);
      else await running.page.waitForTimeout(wait);
      const { words } = await placeOf(running.page);
      await running.kill();
      running = await start(profile);
      await chooseD05(running.page);
      const after = feet((await placeOf(running.page)).y);
      const lost = before + moves - after;
      told.push(
        `${moves} moves, killed ${wait === 'kept' ? 'once kept' : `after ${wait} ms`}, "${words}": ${lost} lost`,
      );
      expect(lost, told.at(-1)).toBeGreaterThanOrEqual(0);
      if (words.startsWith('kept')) expect(lost, told.at(-1)).toBe(0);
      await expect.poll(() => running.page.locator('.alert').count()).toBe(0);
      before = after;
    }
    await running.kill();
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    console.log(told.join('\n'));
  }
});
