import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { opener } from './open.ts';
import { openSample } from './open-page.ts';

const open = opener();

/** A site of its own name with one change in it, opened as a file. */
async function work(page: Page, name: string): Promise<void> {
  await page.evaluate((title) => {
    const data = new DataTransfer();
    const text = JSON.stringify({ format: 'overrow/site', version: 1, units: 'ft', name: 'as it came' });
    data.items.add(new File([text], `${title}.site.json`));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  }, name);
  await page.getByRole('heading', { level: 1, name: 'as it came' }).waitFor();
  const dialog = await list(page);
  await dialog.getByRole('button', { name: 'Rename as it came' }).first().click();
  await dialog.getByLabel('New name of as it came').fill(name);
  await page.keyboard.press('Enter');
  await dialog.getByRole('heading', { level: 3, name, exact: true }).waitFor();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('heading', { level: 1, name, exact: true }).waitFor();
}

async function list(page: Page) {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Kept work…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Kept work' });
  await dialog.waitFor();
  return dialog;
}

test('fourteen sites are kept, all of them stand in the list, and are found by typing', async () => {
  const { page, offences, close } = await open();
  const names = Array.from({ length: 14 }, (_, i) => `Job ${i + 1}`);
  for (const name of names) await work(page, name);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  const newest = page.getByRole('menuitem', { name: /^Job/ });
  await expect.poll(() => newest.count()).toBe(5);
  await page.getByRole('menuitem', { name: 'All 14…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Kept work' });
  await dialog.getByText('14 sites').waitFor();
  await expect
    .poll(() => dialog.getByRole('heading', { level: 3, name: /^Job/ }).allTextContents())
    .toEqual([...names].reverse());
  await dialog.getByLabel('Find by name').fill('job 1');
  await dialog.getByText('6 of 14').waitFor();
  await dialog.getByLabel('Find by name').fill('JOB 7');
  await dialog.getByText('1 of 14').waitFor();
  await dialog.getByRole('button', { name: 'Open Job 7' }).click();
  await page.getByRole('heading', { level: 1, name: 'Job 7', exact: true }).waitFor();
  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'Job 7', exact: true }).waitFor();
  await (await list(page)).getByText('14 sites').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a card says what the site is; it is renamed, removed, taken back and deleted from the list', async () => {
  const { page, offences, close } = await open();
  await page.getByTestId('board').focus();
  for (const key of ['.', 'Shift+ArrowUp']) await page.keyboard.press(key);
  await page.getByRole('button', { name: /^Undo/ }).first().waitFor();
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  const dialog = await list(page);
  const card = (name: string) => dialog.getByRole('listitem', { name, exact: true });
  const library = card('Alder Street Library lot');
  await library.getByText(/^16 stalls, 16 drops, \$\d\d,\d{3} by /).waitFor();
  await library.getByText('in this browser; in no file yet').waitFor();
  await expect.poll(() => library.locator('svg path').first().getAttribute('d')).toMatch(/^M\d+ \d+L/);
  await expect
    .poll(() =>
      card('Quarry Road fleet yard')
        .getByRole('button', { name: /^Remove/ })
        .isDisabled(),
    )
    .toBe(true);
  await library.getByRole('button', { name: /^Keep a copy/ }).click();
  await dialog.getByLabel('Name of the copy of Alder Street Library lot').fill('Alder, issued 60 %');
  await page.keyboard.press('Enter');
  await dialog.getByText('A copy of “Alder Street Library lot” is kept as “Alder, issued 60 %”.').waitFor();
  await card('Alder, issued 60 %')
    .getByText(/^16 stalls, 16 drops/)
    .waitFor();
  await card('Alder, issued 60 %')
    .getByRole('button', { name: /^Remove/ })
    .click();
  await dialog.getByText('Bin, 1').click();
  await dialog.getByRole('button', { name: 'Delete…' }).click();
  await dialog.getByRole('button', { name: 'Yes, delete it for good' }).click();
  await dialog.getByText('“Alder, issued 60 %” is deleted.').waitFor();
  await library.getByRole('button', { name: /^Rename/ }).click();
  await dialog.getByLabel('New name of Alder Street Library lot').fill('Alder, as priced');
  await page.keyboard.press('Enter');
  await card('Alder, as priced')
    .getByRole('button', { name: /^Remove/ })
    .click();
  await dialog.getByText('“Alder, as priced” is in the bin.').waitFor();
  await dialog.getByRole('button', { name: 'Take it back' }).click();
  await card('Alder, as priced')
    .getByRole('button', { name: /^Remove/ })
    .click();
  await dialog.getByText('Bin, 1').click();
  await dialog.getByRole('button', { name: 'Take back Alder, as priced' }).click();
  await card('Alder, as priced').getByRole('button', { name: /^Open/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Alder, as priced' }).waitFor();
  await page.getByRole('button', { name: /^Undo ?: name the site/i }).waitFor();
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  await list(page);
  await card('Alder, as priced')
    .getByRole('button', { name: /^Remove/ })
    .click();
  await dialog.getByText('Bin, 1').click();
  await dialog.getByRole('button', { name: 'Delete…' }).click();
  await dialog.getByRole('button', { name: 'Yes, delete it for good' }).click();
  await dialog.getByText('“Alder, as priced” is deleted.').waitFor();
  await dialog.getByText('one site').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('all kept sites go into one file, and it is read back beside what is there', async () => {
  const { page, offences, close } = await open();
  await work(page, 'First');
  await work(page, 'Second');
  const dialog = await list(page);
  const saving = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save all kept sites in one file' }).click();
  const download = await saving;
  expect(download.suggestedFilename()).toMatch(/^kept-sites-\d{4}-\d\d-\d\d\.json$/);
  const text = await readFile(await download.path(), 'utf8');
  const one = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save as a file: First' }).click();
  const read = readSite(await readFile(await (await one).path(), 'utf8'));
  expect(read.ok && read.file.name).toBe('First');
  await dialog.getByRole('button', { name: 'Remove First' }).click();
  await dialog.getByText('Bin, 1').waitFor();
  const chooser = page.waitForEvent('filechooser');
  await dialog.getByRole('button', { name: 'Read such a file back…' }).click();
  await (await chooser).setFiles({ name: 'all.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await dialog.getByText('One site brought back from all.json, 1 was here already.').waitFor();
  await dialog.getByRole('heading', { level: 3, name: 'First' }).waitFor();
  const where = dialog.getByRole('region', { name: 'Where the work is' });
  await where.getByText(/^\d.* used, .* left$/).waitFor();
  await where.getByText(/the browser has agreed to keep it|when the browser runs short of room/).waitFor();
  expect(offences).toEqual([]);
  await close();
});
