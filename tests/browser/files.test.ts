import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Download, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { opener } from './open.ts';
import { onScreen, openSample, ready } from './open-page.ts';

const open = opener();

/** Five things are wrong here, in places of every kind: a type, a value, a field, an id, a reference. */
const BROKEN = JSON.stringify({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'Broken',
  stalls: [{ id: 'S1', at: [0, 'zero'], width: -9, depth: 18, heading: 90, color: 'red' }],
  drops: [{ id: 'S1', box: [0, 0, 11], cord: 25 }],
  chargers: [{ id: 'E1', drop: 'D9', stalls: [], from: 'P1', amps: 32, volts: 208, phases: 1 }],
  equipment: [{ id: 'P1', kind: 'panelboard', at: [0, 0], size: [1, 1, 1], entry: [0, 0, 0] }],
});

async function openText(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: 'A site file…' }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

const textOf = async (download: Download): Promise<string> => readFile(await download.path(), 'utf8');

test('a broken file shows every error with its place and leaves the open site as it was', async () => {
  const { page, offences, close } = await open();
  await openText(page, 'broken.site.json', BROKEN);
  const dialog = page.getByRole('dialog', { name: 'broken.site.json was not opened' });
  await dialog.waitFor();
  const read = readSite(BROKEN);
  const expected = read.ok ? [] : read.errors.map(({ place }) => place);
  expect(expected).toHaveLength(5);
  await expect.poll(() => dialog.locator('tbody th').allTextContents()).toEqual(expected);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('h1').textContent()).toBe('Alder Street Library lot');
  await expect.poll(() => page.getByRole('button', { name: 'Runs 16' }).count()).toBe(1);
  expect(offences).toEqual([]);
  await close();
});

test('a site that was changed and saved is the same when it is opened again', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.keyboard.press('Shift+ArrowUp');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const download = await saving;
  expect(download.suggestedFilename()).toBe('Alder Street Library lot.site.json');
  const saved = await textOf(download);
  const read = readSite(saved);
  expect(read.ok && read.file.drops?.find(({ id }) => id === 'D05')?.box).toEqual([52, 10, 11]);
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  await openText(page, 'mine.site.json', saved);
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot' }).waitFor();
  const again = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  expect(await textOf(await again)).toBe(saved);
  await close();
});

test('saving an unchanged sample gives the sample, white space aside', async () => {
  const { page, close } = await open();
  const saving = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const saved = await textOf(await saving);
  expect(JSON.parse(saved)).toEqual(JSON.parse(readFileSync('samples/library-lot.site.json', 'utf8')));
  await close();
});

test('a file dropped on the page is opened', async () => {
  const { page, close } = await open();
  const text = JSON.stringify({ format: 'overrow/site', version: 1, units: 'm', name: 'Dropped here' });
  await page.evaluate((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], 'dropped.site.json', { type: 'application/json' }));
    for (const type of ['dragover', 'drop'])
      document.body.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
  }, text);
  await page.getByRole('heading', { level: 1, name: 'Dropped here' }).waitFor();
  await close();
});

test('the work is found again after the page is loaded anew, and can still be undone', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.reload();
  await ready(page);
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).click();
  await page.getByRole('button', { name: /^Redo ?: move drop D05/ }).waitFor();
  await close();
});

test('runs and takeoff come out as CSV, lengths in the site’s units, with the cautions under them', async () => {
  const { page, offences, close } = await open();
  for (const [name, head] of [
    ['Runs, as CSV', 'charger,drop,'],
    ['Takeoff, as CSV', 'item,spec,quantity,unit,'],
  ] as const) {
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Sheets' }).click();
    await page.getByRole('menuitem', { name }).click();
    const text = await textOf(await saving);
    expect(text.startsWith(`\ufeff${head}`)).toBe(true);
    expect(text).toContain('For planning by qualified persons.');
    expect(text.split('\r\n').length).toBeGreaterThan(16);
  }
  expect(offences).toEqual([]);
  await close();
});
