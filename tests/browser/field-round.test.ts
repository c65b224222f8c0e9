import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { ready, seriousFaults } from './open-page.ts';

const open = opener();
const PHONE = { width: 390, height: 844, touch: true, keepsPage: true } as const;

/** A picture of 2000 by 1500 pixels, as a camera hands it over. */
const picture = (page: Page): Promise<Buffer> =>
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

const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).tap();

/** Every button and field of a part of the page that is less than 48 px high or wide. */
const smallTargets = (page: Page, part: string): Promise<readonly string[]> =>
  page.locator(part).evaluate((element) =>
    [...element.querySelectorAll('button, input:not([hidden]), select, summary')].flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      return height > 0 && (height < 47.5 || width < 47.5) ? [`${each.textContent} ${width} x ${height}`] : [];
    }),
  );

test('with the network off a drop is found, set out, measured, photographed and told of, and another’s records come in', async () => {
  const { page, offences, close } = await open(PHONE);
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active?.state === 'activated');
  await page.context().setOffline(true);
  // By its circuit as the door card names it.
  await page.getByRole('searchbox').fill('p1-10/12');
  await expect.poll(() => page.locator('.build-rows li').count()).toBe(1);
  await page.locator('.build-rows li button').first().tap();
  const card = page.getByRole('region', { name: 'Drop D05' });
  await tap(page, 'Set out');
  const facts = card.getByRole('region', { name: 'Setting out of D05' });
  // The sample: lines 2 and 3 at 26 and 53, the box at 52, 9, 11 ft up, beam B3 a foot over it.
  await facts.getByText('Closes: 2 + 26\' 0" and 3 − 1\' 0": 27\' 0".').first().waitFor();
  expect(await facts.locator('[data-point="D05 box"]').textContent()).toContain(`11' 0" up, 1' 0" under B3`);
  await facts.getByText(/One tape from 1: 7 boxes/).tap();
  expect(await facts.locator('li[aria-current]').first().textContent()).toBe(`D05 box 52' 0"`);
  await tap(page, 'Room round the retractor');
  await card.getByRole('img', { name: /Room round the retractor/ }).waitFor({ timeout: 60_000 });
  expect(await card.locator('.room-shape').textContent()).toMatch(/across, before.*cord/i);
  expect(await smallTargets(page, '.build-card')).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);

  await tap(page, 'Measure');
  const along = card.getByLabel('box along', { exact: true });
  await along.fill(`2' 0"`);
  await along.press('Enter');
  // 1 ft farther before line 3 than drawn: at once what that takes, and the drawing as it was.
  await card.getByText(/wire, .* by /).waitFor({ timeout: 30_000 });
  await tap(page, 'Photo');
  await card.getByLabel('Photo of D05').setInputFiles({
    name: 'lift.png',
    mimeType: 'image/png',
    buffer: await picture(page),
  });
  const photo = card.locator('.photos img');
  await photo.waitFor();
  expect(await photo.evaluate((image) => [(image as HTMLImageElement).naturalWidth])).toEqual([1280]);
  await tap(page, 'Note');
  await card.getByLabel('note').fill('beam in the way');
  await card.getByLabel('initials').fill('JB');
  await card.getByLabel('initials').press('Enter');
  await tap(page, 'More');
  await tap(page, /^Pulled/);
  await card.getByRole('button', { name: /^Pulled JB/ }).waitFor();
  await tap(page, /the nearest not done$/);
  await page.getByRole('region', { name: 'Drop D04' }).waitFor();
  await tap(page, 'As drawn');
  await tap(page, /the next in the row$/);
  await card.waitFor();
  await tap(page, 'Close');
  await page.getByRole('searchbox').fill('');

  // Out of the page and back, still without the network.
  await page.reload();
  await ready(page);
  await expect.poll(() => page.locator('li[data-row=D05]').textContent()).toMatch(/off 1' 0"|done/);
  await tap(page, 'Records');
  const dialog = page.getByRole('dialog', { name: 'Records of the field' });
  await dialog.getByText('2 of 16').waitFor();
  await dialog.getByText(/^1, \d+ kB: they stay here/).waitFor();
  expect(await dialog.getByRole('region', { name: 'What this device keeps' }).textContent()).toMatch(
    /agreed to keep it|save to files as well/,
  );
  expect(await seriousFaults(page)).toEqual([]);
  const [saved] = await Promise.all([page.waitForEvent('download'), tap(page, 'Save the records')]);
  const records = await readFile((await saved.path())!, 'utf8');
  expect(saved.suggestedFilename()).toMatch(/\.records\.json$/);
  await tap(page, 'As a link');
  const link = await dialog.getByLabel('link with the records').inputValue();
  expect(link.startsWith(`${page.url().replace(/#.*/, '')}#records=`)).toBe(true);
  expect(offences).toEqual([]);

  // A second person, with a profile of her own, has measured the same box otherwise.
  const other = await open({ width: 390, height: 844, touch: true });
  await other.page.locator('li[data-row=D05] button').tap();
  await tap(other.page, 'Measure');
  const hers = other.page.getByLabel('box along', { exact: true });
  await hers.fill(`1' 6"`);
  await hers.press('Enter');
  await tap(other.page, 'Close');
  await tap(other.page, 'Records');
  await other.page.getByLabel('your initials').fill('RL');
  await other.page.getByLabel('your initials').press('Enter');
  await other.page.getByLabel('records files').setInputFiles({
    name: 'jb.records.json',
    mimeType: 'application/json',
    buffer: Buffer.from(records),
  });
  await other.page.getByText(/marks by .*JB.* new here/).waitFor();
  await tap(other.page, 'Take them in');
  const conflicts = other.page.getByRole('region', { name: 'Two say different things' });
  await conflicts.getByText('D05 box, place').waitFor();
  await other.page.getByRole('dialog').getByText('2 of 16').waitFor();
  // The same again out of the link brings nothing new.
  await other.page.getByLabel('link with records, pasted').fill(link);
  await other.page.getByText(/, 0 of them new here/).waitFor();
  expect(await other.page.getByRole('button', { name: 'Take them in' }).isDisabled()).toBe(true);
  await conflicts.getByRole('button', { name: /^Keep JB/ }).tap();
  await expect.poll(() => conflicts.getByText('D05 box, place').count()).toBe(0);
  await tap(other.page, 'Close');
  await expect.poll(() => other.page.locator('li[data-row=D05]').textContent()).toContain(`off 1' 0"`);
  await tap(other.page, 'Undo');
  await expect.poll(() => other.page.locator('li[data-row=D05]').textContent()).toContain('two say');
  expect(other.offences).toEqual([]);
  await other.close();
  await close();
});
