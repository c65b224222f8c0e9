import { readFile } from 'node:fs/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { opener } from './open.ts';
import { onScreen, ready } from './open-page.ts';

const open = opener();

/** Selects drop D05 of the small sample. */
async function chooseD05(page: Page): Promise<void> {
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'D05' }).waitFor();
}

/** The words in the head, each time they change, with whether a write had ended by then. */
const watchWords = async (context: BrowserContext): Promise<void> => {
  await context.addInitScript(() => {
    const seen: { words: string; ended: number }[] = [];
    let ended = 0;
    // Heard before the page itself hears of it.
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...rest) {
      const transaction = begin.apply(this, rest);
      if (rest[1] === 'readwrite') transaction.addEventListener('complete', () => ended++);
      return transaction;
    };
    new MutationObserver(() => {
      const words = document.querySelector('.keeping')?.textContent ?? '';
      if (words !== seen.at(-1)?.words) seen.push({ words, ended });
    }).observe(document, { subtree: true, childList: true, characterData: true });
    Object.assign(window, { seen });
  });
};

test('the site is said to be kept only after it was written, and the writing begins with the change', async () => {
  const { page, close } = await open({ watch: watchWords });
  await page.getByText('kept in this browser, not in a file yet').waitFor();
  await chooseD05(page);
  await page.evaluate(() => (window as never as { seen: unknown[] }).seen.splice(0));
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.getByText('kept in this browser, not in a file yet').waitFor();
  const seen = await page.evaluate(() => (window as never as { seen: { words: string; ended: number }[] }).seen);
  const before = seen[0]!.ended;
  expect(seen).toEqual([
    { words: 'kept in this browser, not in a file yet', ended: before },
    { words: 'keeping …, not in a file yet', ended: before },
    { words: 'kept in this browser, not in a file yet', ended: before + 1 },
  ]);
  await close();
});

test('Ctrl+S takes what is being typed, and the caret stays there', async () => {
  const { page, close } = await open();
  await chooseD05(page);
  const field = page.getByTestId('selection-panel').getByLabel('cord', { exact: true }).first();
  await field.fill('33');
  const saving = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const read = readSite(await readFile(await (await saving).path(), 'utf8'));
  expect(read.ok && read.file.drops?.find(({ id }) => id === 'D05')?.cord).toBe(33);
  expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.locator('.notice', { hasText: 'Sent to your downloads as Alder Street Library lot.site.json' }).waitFor();
  await page.getByText('kept in this browser, sent to your downloads as Alder Street').waitFor();
  await field.fill('abc');
  await page.keyboard.press('Control+s');
  await page.getByText('Saved without what stands in “cord”, which cannot be taken as it is.').waitFor();
  await field.fill('34');
  await page.reload();
  await ready(page);
  await page.getByRole('button', { name: /^Undo/ }).first().waitFor();
  const again = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const after = readSite(await readFile(await (await again).path(), 'utf8'));
  expect(after.ok && after.file.drops?.find(({ id }) => id === 'D05')?.cord).toBe(34);
  await close();
});

const without = (names: readonly string[]) => async (context: BrowserContext) => {
  await context.addInitScript((gone) => {
    for (const name of gone) Object.defineProperty(window, name, { value: undefined, configurable: true });
  }, names);
};

test('a page that keeps nothing says so and asks before it is left, once there is something to lose', async () => {
  const { page, offences, close } = await open({ watch: without(['indexedDB']) });
  await page.getByRole('alert').getByText('it has no store for pages, or does not let this page use it').waitFor();
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await page.reload();
  await ready(page);
  expect(asked).toEqual([]);
  await chooseD05(page);
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.reload();
  await ready(page);
  expect(asked).toEqual(['beforeunload']);
  expect(offences).toEqual([]);
  await close();
});

test('a page whose work is kept is left without a question', async () => {
  const { page, close } = await open();
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await chooseD05(page);
  await page.keyboard.press('Shift+ArrowUp');
  await page.reload();
  await ready(page);
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  expect(asked).toEqual([]);
  await close();
});

test('a browser without channels or locks between tabs opens the page all the same', async () => {
  const { page, offences, close } = await open({
    watch: async (context) => {
      await without(['BroadcastChannel'])(context);
      await context.addInitScript(() => Object.defineProperty(navigator, 'locks', { value: undefined }));
    },
  });
  await page.getByText('kept in this browser').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test.each(['rejects', 'never answers'] as const)(
  'where the reading of what was kept %s, the page opens in time, says so, and the work comes back with the store',
  async (how) => {
    const { page, close } = await open();
    await chooseD05(page);
    await page.keyboard.press('Shift+ArrowUp');
    await page.getByText('kept in this browser').waitFor();
    await page.addInitScript((way) => {
      const real = IDBObjectStore.prototype.getAll;
      Object.assign(window, { mend: () => (IDBObjectStore.prototype.getAll = real) });
      IDBObjectStore.prototype.getAll = function (this: IDBObjectStore, ...rest) {
        if (way === 'rejects') throw new DOMException('Failed to read large IndexedDB value', 'DataError');
        const request = real.apply(this, rest as never);
        request.addEventListener('success', (event) => event.stopImmediatePropagation(), true);
        return request;
      };
    }, how);
    await page.reload();
    await ready(page);
    await page.getByText(/^The sites that this browser keeps could not be read/).waitFor();
    await expect.poll(() => page.getByRole('button', { name: /^Undo ?: move/ }).count()).toBe(0);
    await page.evaluate(() => (window as never as { mend: () => void }).mend());
    await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
    await expect.poll(() => page.getByText(/could not be read/).count()).toBe(0);
    await close();
  },
);

test('a page that breaks shows why, and hands out what is kept', async () => {
  const { page, close } = await open();
  await chooseD05(page);
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByText('kept in this browser').waitFor();
  await page.addInitScript(() => {
    window.ResizeObserver = class {
      constructor() {
        throw new Error('no sizes here');
      }
    } as never;
  });
  await page.reload();
  await page.getByRole('heading', { name: 'This page stopped' }).waitFor();
  await page.getByText('no sizes here').waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download what this browser keeps' }).click();
  const bundle = JSON.parse(await readFile(await (await saving).path(), 'utf8')) as { sites: { text: string }[] };
  const read = readSite(bundle.sites[0]!.text);
  expect(read.ok && read.file.drops?.find(({ id }) => id === 'D05')?.box).toEqual([52, 10, 11]);
  await page.getByText('One site sent to your downloads.').waitFor();
  await close();
});
