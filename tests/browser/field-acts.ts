import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { seriousFaults } from './open-page.ts';

/** A picture of 2000 by 1500 pixels, as a camera hands it over. */
export const picture = (page: Page): Promise<Buffer> =>
  page
    .evaluate(async () => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [2000, 1500];
      const paint = canvas.getContext('2d')!;
      for (let i = 0; i < 400; i++) {
        paint.fillStyle = `hsl(${i * 37} 60% 50%)`;
        paint.fillRect((i * 97) % 2000, (i * 61) % 1500, 160, 120);
      }
      const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
      return [...new Uint8Array(await blob!.arrayBuffer())];
    })
    .then((bytes) => Buffer.from(bytes));

export const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).tap();

/** Every button and field of a part of the page that is less than 48 px high or wide. */
export const smallTargets = (page: Page, part: string): Promise<readonly string[]> =>
  page.locator(part).evaluate((element) =>
    [...element.querySelectorAll('button, input:not([hidden]), select, summary')].flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      return height > 0 && (height < 47.5 || width < 47.5) ? [`${each.textContent} ${width} x ${height}`] : [];
    }),
  );

/** Volts at the box without load and under it are entered, held to the plan, and pass or fail. */
export async function testVolts(page: Page, card: Locator): Promise<void> {
  await tap(page, 'Test');
  const tests = card.getByRole('region', { name: 'Tests of EV05' });
  const read = async (label: string, figure: string): Promise<void> => {
    await tests.getByLabel(label, { exact: true }).fill(figure);
    await tests.getByLabel(label, { exact: true }).press('Enter');
  };
  await read('at the box without load', '208');
  await tests
    .locator('[data-test="volts open"]')
    .getByText(/^Passes · JB/)
    .waitFor();
  const loaded = tests.locator('[data-test="volts loaded"]');
  await read('at the box under load', '206');
  await loaded.getByText(/state the load it was read at/).waitFor();
  await read('load', '32');
  await loaded.getByText(/^Passes · JB/).waitFor();
  // 6 V below what the plan expects there: a poor termination, though 198 V is a fine voltage.
  await read('at the box under load', '198');
  await loaded.getByText(/^Fails: .* under 20/).waitFor();
  await tests.getByRole('button', { name: 'tripped', exact: true }).tap();
  await tests
    .locator('[data-test="fault trip"]')
    .getByText(/^Passes · JB/)
    .waitFor();
  expect(await smallTargets(page, '.build-card')).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
}

/** A pull card opens by one tap, and by the address that a code on paper holds; what is not held here is said to be so. */
export async function cardByItsAddress(page: Page): Promise<void> {
  await page.locator('li[data-row=D05] button').tap();
  await tap(page, 'Pull card');
  const card = page.getByRole('dialog', { name: 'P1-10/12' });
  await card.getByText('Charger EV05, P1 to D05, 40 A breaker').waitFor();
  await card.getByText(/^\d+ ft$/).waitFor();
  const shut = async (): Promise<void> => {
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
  };
  await shut();
  const go = (hash: string) => page.evaluate((to) => location.assign(to), hash);
  const lot = encodeURIComponent('Alder Street Library lot');
  await go(`#card=circuit/EV05/${lot}`);
  await card.waitFor();
  expect(await smallTargets(page, 'dialog[open]')).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
  // On to a conduit's contents, and from there to another circuit.
  await card.getByRole('button', { name: /^1\. P1-/ }).tap();
  const conduit = page.getByRole('dialog', { name: /^P1-\d\.1$/ });
  await conduit.getByRole('button', { name: /\(EV05\)/ }).waitFor();
  expect(await page.evaluate(() => location.hash)).toBe('');
  await shut();
  await go(`#card=circuit/EV05/${encodeURIComponent('Another lot')}`);
  await page
    .getByRole('dialog')
    .getByText(/in the site “Another lot”, which this device does not hold/)
    .waitFor();
  await shut();
  await go(`#card=circuit/EV99/${lot}`);
  await page
    .getByRole('dialog')
    .getByText(/This site has no circuit of charger EV99/)
    .waitFor();
  await shut();
  // Of a site that this device keeps while another is open: it is opened, and the card stands.
  await tap(page, 'Open');
  await page.getByRole('menuitem', { name: 'Fleet yard', exact: true }).tap();
  await page.getByRole('heading', { level: 1, name: 'Quarry Road fleet yard' }).waitFor();
  await go(`#card=circuit/EV05/${lot}`);
  await card.waitFor();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Alder Street Library lot');
  await shut();
}
