import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Download, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, openSample, seriousFaults } from './open-page.ts';

const open = opener();

async function ask(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Sheets' }).click();
  await page.getByRole('menuitem', { name }).click();
}

const work = (page: Page, what: string) => page.locator('.work', { hasText: what });

test('sheets tell how far they are while the board stays in hand, can be stopped, and say when they are done', async () => {
  const { page, offences, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  const downloads: Download[] = [];
  page.on('download', (download) => downloads.push(download));
  await ask(page, 'Every sheet, in one ZIP');
  await ask(page, 'Drawing set, ANSI D PDF');
  await ask(page, 'Plan drawing, as DXF');
  const every = work(page, 'Every sheet of Mill Creek Hospital lot');
  const set = work(page, 'Drawing set, ANSI D PDF of');
  await work(page, 'DXF').getByText('waits for the others').waitFor();
  await set.getByRole('button', { name: 'Stop' }).click();
  await expect.poll(() => set.count()).toBe(0);
  // How far it is grows, while the hand works on: what is asked for is the lot as it was then.
  await every.getByText(/\d+ of \d+, /).waitFor();
  const far = (): Promise<number> =>
    every.getByRole('progressbar').evaluate((bar) => (bar as HTMLProgressElement).value);
  const before = await far();
  await page.getByTestId('board').focus();
  await page.keyboard.press('.');
  await page.getByTestId('selection-panel').waitFor();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: /^Undo ?: / }).waitFor();
  await expect.poll(far).toBeGreaterThan(before);
  expect(await seriousFaults(page)).toEqual([]);
  await work(page, 'DXF').getByText('done. It went to your downloads as Mill Creek Hospital lot.dxf').waitFor();
  await every.getByText('done.').waitFor();
  await every.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => every.count()).toBe(0);
  expect(downloads.map((download) => download.suggestedFilename()).sort()).toEqual([
    'Mill Creek Hospital lot.dxf',
    'Mill Creek Hospital lot.sheets.zip',
  ]);
  const zip = downloads.find((download) => download.suggestedFilename().endsWith('.zip'))!;
  const files = unzipSync(new Uint8Array(await readFile((await zip.path())!)));
  expect(Object.keys(files)).toContain('Mill Creek Hospital lot.drawings.pdf');
  expect(offences).toEqual([]);
  await close();
});

test('a name with a sign that no typeface has is told with its place before the set is written, and printed by number', async () => {
  const { page, offences, close } = await open();
  const sample = await readFile('samples/library-lot.site.json', 'utf8');
  const site = JSON.parse(sample) as { name: string; stalls: { label?: string }[] };
  site.name = 'Lot \u{12A0}';
  site.stalls[2]!.label = '\u{12F2}3';
  const picking = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: 'A site file…' }).click();
  const picker = await picking;
  const buffer = Buffer.from(JSON.stringify(site));
  await picker.setFiles({ name: 'signs.site.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { level: 1, name: 'Lot' }).waitFor();
  const download = page.waitForEvent('download');
  await ask(page, 'Drawing set, tabloid PDF');
  const said = page.locator('.notices');
  await said.getByText('The name of the site has \u{12A0}').waitFor();
  await said.getByText('The label of S03 (stalls) has \u{12F2}').waitFor();
  expect(await said.textContent()).toContain('it is printed as [U+12A0].');
  const bytes = await readFile((await (await download).path())!);
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  expect(offences).toEqual([]);
  await close();
});

test('at phone size what is said of a sheet stays in the window, and may be put away', async () => {
  const { page, close } = await open({ width: 390, height: 844, touch: true });
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await ask(page, 'Drawing set, ANSI D PDF');
  const set = work(page, 'Drawing set, ANSI D PDF of Alder Street Library lot');
  const inside = async (): Promise<void> => {
    const box = (await set.boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    expect(box.y + box.height).toBeLessThanOrEqual(844);
  };
  await inside();
  await set.getByText('done.').waitFor();
  await inside();
  await set.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => set.count()).toBe(0);
  await close();
});
