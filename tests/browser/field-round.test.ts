import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { cardByItsAddress, picture, smallTargets, tap, testVolts } from './field-acts.ts';
import { opener } from './open.ts';
import { ready, seriousFaults } from './open-page.ts';

const open = opener();
const PHONE = { width: 390, height: 844, touch: true, keepsPage: true, asksWho: true } as const;

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
  await expect.poll(() => facts.locator('[data-point="D05 box"]').textContent()).toContain(`11' 0" up, 1' 0" under B3`);
  await facts.getByText(/One tape from 1: 7 boxes/).tap();
  await expect.poll(() => facts.locator('li[aria-current]').first().textContent()).toBe(`D05 box 52' 0"`);
  await tap(page, 'Room round the retractor');
  await card.getByRole('img', { name: /Room round the retractor/ }).waitFor();
  await expect.poll(() => card.locator('.room-shape').textContent()).toMatch(/across, before.*cord/i);
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
  await card.getByText(/wire, .* by /).waitFor();
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
  await expect.poll(() => card.getByLabel('initials').inputValue()).toBe('JB');
  await tap(page, 'More');
  await tap(page, /^Pulled/);
  await card.getByRole('button', { name: /^Pulled JB/ }).waitFor();
  // The inspector writes down what is there: one thing as planned, one that is not.
  await card.getByRole('button', { name: 'As planned: EV05 Conductors' }).tap();
  await expect.poll(() => card.locator('[data-line="EV05 Conductors"]').textContent()).toMatch(/ok.*as planned JB/);
  const breaker = card.locator('[data-line="EV05 Breaker, 2 poles"]');
  await breaker.getByLabel('measured').fill('about sixty');
  await expect.poll(() => breaker.textContent()).toContain('a number, A');
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
  await expect
    .poll(() => dialog.getByRole('region', { name: 'What this device keeps' }).textContent())
    .toMatch(/agreed to keep it|save to files as well/);
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
    page.waitForEvent('download'),
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
  await expect.poll(() => other.page.getByRole('button', { name: 'Take them in' }).isDisabled()).toBe(true);
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
