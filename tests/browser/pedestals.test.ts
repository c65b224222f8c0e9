import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { libraryLot } from '../bench/samples/library-lot.ts';
import { opener } from './open.ts';
import { onScreen, ready, seriousFaults } from './open-page.ts';

const open = opener();
const FILM = process.env.OVERROW_FILM;
const picture = async (page: Page, name: string): Promise<void> => {
  if (FILM) await page.screenshot({ path: `${FILM}/${name}.png` });
};

async function openLot(page: Page): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: /^A site file/ }).click();
  const buffer = Buffer.from(JSON.stringify(libraryLot()));
  await (await choosing).setFiles({ name: 'lot.site.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { level: 1, name: libraryLot().name }).waitFor();
  await ready(page);
}

test('drops mounted on pedestals come down in one step, are told to have no way, and get one in the ground', async () => {
  const { page, offences, close } = await open();
  await openLot(page);
  await page.getByTestId('board').click({ position: { x: 30, y: 30 } });
  await page.keyboard.press('Control+a');
  const ledger = page.locator('.ledger');
  await ledger.getByLabel('mount').selectOption('pedestal');
  const notice = page.locator('.notice');
  await notice.getByText(/^16 drops are pedestals now: boxes down at 3' 0", retractors taken away\./).waitFor();
  await expect.poll(() => notice.first().textContent()).toMatch(/16 chargers have no way that comes down to them/);
  await picture(page, 'pedestals-1-mounted');
  expect(await seriousFaults(page)).toEqual([]);
  await ledger.getByRole('button', { name: 'Propose the way to 16 chargers in the ground' }).click();
  await page.getByRole('button', { name: /^Undo ?: draw in/i }).waitFor();
  await ledger.getByRole('button', { name: /^Propose the way/ }).waitFor({ state: 'detached' });
  await picture(page, 'pedestals-2-ways');
  await page.getByRole('button', { name: /^Undo ?: draw in/i }).click();
  // One step took all of them down, and takes them all back.
  await page.getByRole('button', { name: /^Undo ?: set the mount of 16 drops/i }).click();
  await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: false }).first().isDisabled()).toBe(true);
  expect(offences).toEqual([]);
  await close();
});

test('an aisle says what it is for, and its clear height goes by it', async () => {
  const { page, offences, close } = await open();
  await openLot(page);
  const [x, y] = await onScreen(page, [40, 30]);
  await page.mouse.click(x, y);
  const ledger = page.locator('.ledger');
  await ledger.getByText(`13' 6"`).waitFor();
  await ledger.getByLabel('kind').selectOption('access');
  await ledger.getByText(`8' 2 1/16"`).waitFor();
  await picture(page, 'pedestals-3-access-aisle');
  await ledger.getByLabel('kind').selectOption('fire');
  await picture(page, 'pedestals-4-fire-lane');
  expect(offences).toEqual([]);
  await close();
});
