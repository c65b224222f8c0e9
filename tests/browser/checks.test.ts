import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';

const open = opener();

/** A picture of a step, where OVERROW_FILM names a folder for them. */
async function film(page: Page, step: string): Promise<void> {
  const folder = process.env.OVERROW_FILM;
  if (folder) await page.screenshot({ path: `${folder}/${step}.png` });
}

const sound = (page: Page) => page.locator('.finding[data-rule=sound]');
const list = (page: Page) => page.getByRole('region', { name: 'What was looked at' });

test('the sound sentence counts its checks, and the cells open into them', async () => {
  const { page, offences, close } = await open();
  const says = (await sound(page).textContent())!;
  const [, checks, things] = /(\d+) checks on ([\d,]+) things/.exec(says)!;
  expect(says).toContain('Not looked at: the capacity of the structure');

  await page.getByRole('button', { name: /^0 fails/ }).click();
  await list(page).waitFor();
  const rows = list(page).locator('.check-rows li');
  await expect.poll(() => rows.count()).toBe(Number(checks));
  const counted = (await rows.locator('.check-found').allTextContents()).map((text) =>
    Number(text.replace(/^.* of /, '').replaceAll(',', '')),
  );
  expect(counted.reduce((sum, one) => sum + one, 0)).toBe(Number(things!.replaceAll(',', '')));
  await film(page, 'checks-sound');
  await page.getByRole('button', { name: 'Shut the list of checks' }).click();
  await expect.poll(() => list(page).count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

test('the checks of a faulty lot stand worst first, on a phone too', async () => {
  const { page, offences, close } = await open({ width: 390, height: 844, touch: true });
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Hospital lot', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Mill Creek Hospital lot' }).waitFor();
  await page.getByRole('button', { name: /\d+ fails/ }).click();
  await list(page).waitFor();
  const order = await list(page)
    .locator('.check-rows li')
    .evaluateAll((rows) =>
      rows.map((row) => ['fail', 'warn', 'note', 'pass'].indexOf((row as HTMLElement).dataset.severity!)),
    );
  expect(order).toEqual([...order].sort((a, b) => a - b));
  expect(order[0]).toBe(0);
  await film(page, 'checks-phone');
  expect(offences).toEqual([]);
  await close();
});

test('a lot whose chargers go is not called sound, and says why', async () => {
  const { page, offences, close } = await open();
  await sound(page).waitFor();
  // The panel takes its chargers along; the drops stay.
  await page.locator('.drawer-bar button', { hasText: /^Runs/ }).click();
  await page.getByTestId('board').focus();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Delete');
  await page.getByText('not called sound').waitFor();
  await expect.poll(() => sound(page).count()).toBe(0);
  await expect.poll(() => page.locator('.withheld').textContent()).toContain('no stall is served');
  await film(page, 'checks-withheld');
  await page.keyboard.press('Control+z');
  await sound(page).waitFor();
  expect(offences).toEqual([]);
  await close();
});
