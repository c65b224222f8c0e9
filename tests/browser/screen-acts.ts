import type { Page } from 'playwright-core';
import { ready } from './open-page.ts';

/** A screen that a person sees, reached from the one before it. */
export interface Screen {
  readonly name: string;
  readonly go: (page: Page) => Promise<void>;
}

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
export const board = (page: Page) => page.getByTestId('board');

export async function pressOnBoard(page: Page, keys: readonly string[]): Promise<void> {
  await board(page).focus();
  for (const key of keys) await page.keyboard.press(key);
  await drawn(page);
}

/** Waits until what was asked for is drawn. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

export async function station(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name }).click();
}

export async function table(page: Page, name: string): Promise<void> {
  const opener = page.locator('.drawer-bar button', { hasText: new RegExp(`^${name}`) });
  if ((await opener.getAttribute('aria-expanded')) !== 'true') await opener.click();
  await page.locator('#drawer-table tbody tr').first().waitFor();
}

export async function shutDialog(page: Page): Promise<void> {
  await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
}

export async function shutTables(page: Page): Promise<void> {
  const open = page.locator('.drawer-bar button[aria-expanded=true]');
  if ((await open.count()) > 0) await open.click();
}

export async function sample(page: Page, name: string, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name, exact: true }).click();
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
  await ready(page);
  await station(page, 'Lay out');
  await shutTables(page);
}
