import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { ready, seriousFaults } from './open-page.ts';

const open = opener();
const PHONE = { width: 390, height: 844, touch: true, keepsPage: true, asksWho: true } as const;

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

/** Volts at the box without load and under it are entered, held to the plan, and pass or fail. */
async function testVolts(page: Page, card: Locator): Promise<void> {
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
async function cardByItsAddress(page: Page): Promise<void> {
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
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Alder Street Library lot');
  await shut();
}

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
  // Asked once, before the first mark: it is written under the name.
  await page.getByRole('dialog', { name: 'Who writes?' }).getByLabel('your initials').fill('JB');
  expect(await smallTargets(page, 'dialog[open]')).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
  await tap(page, 'Go on');
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
  expect(await card.getByLabel('initials').inputValue()).toBe('JB');
  await tap(page, 'More');
  await tap(page, /^Pulled/);
  await card.getByRole('button', { name: /^Pulled JB/ }).waitFor();
  // The inspector writes down what is there: one thing as planned, one that is not.
  await card.getByRole('button', { name: 'As planned: EV05 Conductors' }).tap();
  await expect.poll(() => card.locator('[data-line="EV05 Conductors"]').textContent()).toMatch(/ok.*as planned JB/);
  const breaker = card.locator('[data-line="EV05 Breaker, 2 poles"]');
  await breaker.getByLabel('measured').fill('about sixty');
  expect(await breaker.textContent()).toContain('a number, A');
  await breaker.getByLabel('measured').fill('60 A');
  await breaker.getByLabel('measured').press('Enter');
  await expect.poll(() => breaker.textContent()).toMatch(/deviates.*Recorded: 60 A JB/);
  expect(await smallTargets(page, '.build-card')).toEqual([]);
  await testVolts(page, card);
  await tap(page, /the nearest not done$/);
  await page.getByRole('region', { name: 'Drop D04' }).waitFor();
  await tap(page, 'As drawn');
  await tap(page, /the next in the row$/);
  await card.waitFor();
  await tap(page, 'Close');
  await page.getByRole('searchbox').fill('');

  await cardByItsAddress(page);

  // Out of the page and back, still without the network.
  await page.reload();
  await ready(page);
  await expect.poll(() => page.locator('li[data-row=D05]').textContent()).toMatch(/off 1' 0"|done/);
  await tap(page, 'Records');
  const dialog = page.getByRole('dialog', { name: 'Records of the field' });
  await dialog.getByText('2 of 16').waitFor();
  await dialog.getByText(/^1, \d+ kB: sent with the records/).waitFor();
  // The test that failed stands open for the lot.
  await dialog.getByText(/^EV05, voltage, at the box under load: fails/).waitFor();
  expect(await dialog.getByRole('region', { name: 'What this device keeps' }).textContent()).toMatch(
    /agreed to keep it|save to files as well/,
  );
  expect(await seriousFaults(page)).toEqual([]);
  const [saved] = await Promise.all([page.waitForEvent('download'), tap(page, 'Save the records')]);
  const records = await readFile((await saved.path())!, 'utf8');
  expect(saved.suggestedFilename()).toMatch(/\.records\.json$/);
  await tap(page, 'As a link');
  const [packed] = await Promise.all([page.waitForEvent('download'), tap(page, 'With photos')]);
  expect(packed.suggestedFilename()).toMatch(/\.records\.zip$/);
  await dialog.getByText('1 of 1 photos in it').waitFor();
  const link = await dialog.getByLabel('link with the records').inputValue();
  expect(link.startsWith(`${page.url().replace(/#.*/, '')}#records=`)).toBe(true);

  // All that is still open in one list: what was not tested, what deviates until somebody answers it.
  await tap(page, 'Open items and handover');
  const list = page.getByRole('dialog', { name: 'Open items and handover' });
  await tap(page, /^Deviations not answered/);
  await list.getByText(/Breaker, 2 poles: 60 A; expected/).waitFor();
  await list.getByRole('button', { name: 'Answer EV05' }).tap();
  await list.getByLabel('EV05, what is made of it').fill('changed to what is planned tomorrow');
  await tap(page, 'Write it down');
  await expect.poll(() => list.getByText(/Breaker, 2 poles: 60 A/).count()).toBe(0);
  await list.getByText(/Place of the box: .* 1' 0" from the drawing/).waitFor();
  expect(await smallTargets(page, 'dialog:has(.handover)')).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
  const [handed] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    tap(page, 'Hand over: set as built, checklist, open items'),
  ]);
  const files = unzipSync(await readFile((await handed.path())!));
  const names = Object.keys(files).map((name) => name.replace(/^[^.]*/, ''));
  expect(names.sort()).toEqual([
    '.as-built.pdf',
    '.checklist.csv',
    '.open-items.csv',
    '.records.zip',
    '.setting-out.csv',
    '.site.json',
  ]);
  const of = (ending: string) => files[Object.keys(files).find((name) => name.endsWith(ending))!]!;
  expect(strFromU8(of('.checklist.csv'))).toMatch(/EV05,"Breaker, 2 poles",.*60 A,JB,.*DEVIATES/);
  // The photo is in the set: a picture of a camera's kind.
  expect(Buffer.from(of('.as-built.pdf')).toString('latin1')).toContain('DCTDecode');
  await list.getByRole('button', { name: 'Close' }).tap();
  expect(offences).toEqual([]);

  // A second person, with a profile of her own, has measured the same box otherwise.
  const other = await open({ width: 390, height: 844, touch: true, asksWho: true });
  await other.page.locator('li[data-row=D05] button').tap();
  await tap(other.page, 'Measure');
  const hers = other.page.getByLabel('box along', { exact: true });
  await hers.fill(`1' 6"`);
  await hers.press('Enter');
  // Who closes the question writes all the same.
  await tap(other.page, 'Without initials');
  await other.page.getByText(/6" away/).waitFor();
  await tap(other.page, 'Close');
  await tap(other.page, 'Records');
  await other.page.getByLabel('your initials').fill('RL');
  await other.page.getByLabel('your initials').press('Enter');
  await other.page.getByLabel('records files').setInputFiles({
    name: 'jb.records.zip',
    mimeType: 'application/zip',
    buffer: await readFile((await packed.path())!),
  });
  await other.page.getByText(/marks by .*JB.* new here, with a photo/).waitFor();
  await tap(other.page, 'Take them in');
  const conflicts = other.page.getByRole('region', { name: 'Two say different things' });
  await conflicts.getByText('D05 box, place').waitFor();
  await other.page.getByRole('dialog').getByText('2 of 16').waitFor();
  // The same again out of the link brings nothing new.
  await other.page.getByLabel('link with records, pasted').fill(link);
  await other.page.getByText(/, 0 of them new here/).waitFor();
  expect(JSON.parse(records).records.length).toBeGreaterThan(5);
  expect(await other.page.getByRole('button', { name: 'Take them in' }).isDisabled()).toBe(true);
  await conflicts.getByRole('button', { name: /^Keep JB/ }).tap();
  await expect.poll(() => conflicts.getByText('D05 box, place').count()).toBe(0);
  await tap(other.page, 'Close');
  await expect.poll(() => other.page.locator('li[data-row=D05]').textContent()).toContain(`off 1' 0"`);
  // His photo came with them.
  await other.page.locator('li[data-row=D05] button').tap();
  await tap(other.page, 'Photo');
  await other.page.locator('.photos img').waitFor();
  await tap(other.page, 'Close');
  await tap(other.page, 'Undo');
  await expect.poll(() => other.page.locator('li[data-row=D05]').textContent()).toContain('two say');
  expect(other.offences).toEqual([]);
  await other.close();
  await close();
});
