import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { startSite } from '../../calc/propose/start-site.ts';
import { writeSite } from '../../routing/site/file/write.ts';
import { opener } from './open.ts';
import { ready, seriousFaults } from './open-page.ts';

const open = opener();

async function dropIn(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate((content) => {
    const files = new DataTransfer();
    files.items.add(new File([content], 'dropped.site.json'));
    document.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
  }, text);
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await ready(page);
}

const waysTab = (page: Page) => page.locator('.drawer-bar button', { hasText: /^Ways/ });
const work = (page: Page) => page.getByRole('button', { name: /^Work out the ways/ });

test('the ways are worked out beside the page, told as dots, plans and figures, gone through by keys, and each opens as a site', async () => {
  const { page, offences, close } = await open();
  await dropIn(page, 'Two stalls', writeSite(startSite({ name: 'Two stalls', stalls: 2, rows: 1 })));
  await waysTab(page).click();
  await work(page).click();
  await page.getByText(/combinations of mount, supply and charger were looked at/).waitFor();
  await page.getByRole('button', { name: 'Work out the ways of it anew' }).waitFor();
  const cards = page.locator('.way-card');
  const dots = page.locator('.way-scatter').getByRole('option');
  const rows = page.getByRole('region', { name: 'All figures of the ways' }).locator('tbody tr');
  const count = await cards.count();
  expect(count).toBeGreaterThanOrEqual(4);
  expect([await dots.count(), await rows.count()]).toEqual([count, count]);

  // By price from the first on; the card and the row of the same way are marked with it.
  const picture = page.getByRole('listbox');
  await picture.focus();
  await page.keyboard.press('Home');
  const cheapest = (await dots.and(page.locator('[aria-selected=true]')).getAttribute('aria-label'))!;
  expect(cheapest).toMatch(/^W\d\d, .*: \$[\d,]+, energy a car gets in its stay [\d.]+ kWh/);
  const id = cheapest.slice(0, 3);
  await expect.poll(() => page.locator('.way-card[data-chosen]').textContent()).toContain(id);
  await expect.poll(() => picture.getAttribute('aria-activedescendant')).toContain(id);
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => dots.and(page.locator('[aria-selected=true]')).getAttribute('aria-label')).not.toBe(cheapest);
  await page.keyboard.press('Home');
  expect(await seriousFaults(page)).toEqual([]);

  // Those that nothing beats are the same everywhere.
  await page.getByRole('checkbox', { name: /only those that nothing beats/ }).check();
  await expect.poll(() => cards.count()).toBe(await page.locator('.way-best').count());
  await expect.poll(() => cards.count()).toBeLessThan(count);

  await picture.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Two stalls: / }).waitFor();
  await page.getByText('These are the ways of Two stalls, as it was when they were asked for.').waitFor();
  // The lot as it was is kept beside it.
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: /^Two stalls(?!:)/ }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('stopped, it keeps the ways that are done', async () => {
  const { page, close } = await open();
  await waysTab(page).click();
  await work(page).click();
  await page.locator('.way-card').first().waitFor();
  await page.getByRole('button', { name: 'Stop, and keep those that are done' }).click();
  await page.getByText(/^Stopped: \d+ (is|are) done/).waitFor();
  const done = await page.locator('.way-card').count();
  expect(done).toBeGreaterThan(0);
  await expect.poll(() => page.locator('.work').count()).toBe(0);
  // Nothing goes on behind it.
  await page.waitForTimeout(1500);
  await expect.poll(() => page.locator('.way-card').count()).toBe(done);
  // What stands on the page is as it was.
  await expect.poll(() => page.locator('h1').textContent()).toBe('Alder Street Library lot');
  await close();
});
