import { afterEach, beforeEach, vi } from 'vitest';
import { writeSite } from '../../../../routing/site/file/write.ts';
import { moveElements } from '../../../../web/document/edits/moving/move.ts';
import { SMALL } from '../small-site.ts';
import { FakeBrowser, settle, type Tab } from './fake-browser.ts';

export const stateOf = ({ store }: Tab) => store.getState();
export const textOf = (tab: Tab): string => writeSite(stateOf(tab).committed().file);
/** Moves the first column in a tab. */
export const move = (tab: Tab, dx = 1): void => {
  const { file } = stateOf(tab).committed();
  stateOf(tab).apply(moveElements(file, [{ list: 'columns', id: 'C1' }], dx, 0));
};
export const columnX = (tab: Tab): number | undefined => stateOf(tab).file.columns?.[0]?.at[0];

/** The browser of the test that runs. */
export let browser: FakeBrowser;

/** Ends the browser of the test, and puts a new one with nothing kept in its place. */
export function newBrowser(): void {
  browser.end();
  browser = new FakeBrowser();
}

/** Gives each test of a file a browser of its own. */
export function browserForEach(): void {
  beforeEach(() => {
    browser = new FakeBrowser();
  });
  afterEach(async () => {
    browser.end();
    vi.useRealTimers();
    // What a killed tab had handed over is still being written: the next test must not see it.
    await settle();
    vi.restoreAllMocks();
  });
}

/** A tab with the small site open and kept. */
export async function opened(): Promise<Tab> {
  const tab = await browser.open();
  await stateOf(tab).openFile(SMALL);
  await settle();
  return tab;
}
