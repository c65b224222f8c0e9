import type { Page } from 'playwright-core';
import { onScreen } from './open-page.ts';

/** Where D05 of the library lot hangs, feet. */
export const D05 = [52, 9] as const;
export const MOVES = 24;

/** The three margins in the ledger, as they are written. */
export const margins = (page: Page): Promise<readonly string[]> =>
  page.getByTestId('selection-panel').locator('.margin-words').allTextContents();

/** The margins once they keep still: words follow a drag ten times a second. */
export async function stillMargins(page: Page): Promise<readonly string[]> {
  for (let before = await margins(page); ; ) {
    await page.waitForTimeout(200);
    const now = await margins(page);
    if (now.join() === before.join()) return now;
    before = now;
  }
}

/** Presses on a place of the plan and moves so many pixels, in small steps; the hand is not let go. */
export async function drag(page: Page, from: readonly [number, number], dx: number, dy: number): Promise<void> {
  const [x, y] = await onScreen(page, from);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.getByTestId('selection-panel').waitFor();
  for (let i = 1; i <= MOVES; i++) {
    await page.mouse.move(x + (dx * i) / MOVES, y + (dy * i) / MOVES);
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
}

/** The plan coordinates in a group of fields, feet. */
export async function place(page: Page, legend: string): Promise<readonly [number, number]> {
  const texts = await page
    .getByRole('group', { name: legend })
    .locator('input')
    .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));
  const feet = (text: string): number => {
    const [, sign, whole, inches] = /^(-?)(\d+)' (\d+)/.exec(text) ?? [];
    return (sign ? -1 : 1) * (Number(whole) + Number(inches) / 12);
  };
  return [feet(texts[0]!), feet(texts[1]!)];
}
