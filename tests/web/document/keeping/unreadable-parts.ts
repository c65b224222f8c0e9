import { vi } from 'vitest';
import { SMALL } from '../small-site.ts';
import { settle, type Tab } from './fake-browser.ts';
import { stateOf } from './kept-tab.ts';

/** Lets time pass, and the store do its work in between, which the clock of the test does not drive. */
export async function pass(ms: number): Promise<void> {
  for (let past = 0; past < ms; past += 1000) {
    await vi.advanceTimersByTimeAsync(1000);
    await settle();
  }
}

/** The page then opens its sample. */
export async function sampleIn(tab: Tab): Promise<void> {
  await stateOf(tab).openFile({ ...SMALL, name: 'Sample' });
  await settle();
}
