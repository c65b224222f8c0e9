import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type ReadPdf, readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { opener } from './open.ts';
import { onScreen } from './open-page.ts';

const open = opener();

async function saved(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return { name: download.suggestedFilename(), bytes: await readFile((await download.path())!) };
}

test('sheets are priced by the list that is open, as the page is', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  const panel = page.getByRole('region', { name: 'Price', exact: true });
  const list = await saved(page, () => panel.getByRole('button', { name: 'Save the prices' }).click());
  const choosing = page.waitForEvent('filechooser');
  await panel.getByRole('button', { name: 'Open a price file…' }).click();
  await (await choosing).setFiles({
    name: 'own.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(withoutStraps(list.bytes.toString('utf8'))),
  });
  await panel.getByText('Prices: own.csv').waitFor();
  const shown = await panel.locator('.sums .sum dd').textContent();
  await page.getByRole('button', { name: 'Sheets' }).click();
  const cost = await saved(page, () => page.getByRole('menuitem', { name: 'Cost, as CSV' }).click());
  const text = cost.bytes.toString('utf8');
  expect(text).toContain('Prices: own.csv.');
  expect(text).toMatch(/^strap.*no price/m);
  const price = Number(/^price,.*?([\d.]+)\s*$/m.exec(text)?.[1]);
  expect(price).toBeCloseTo(Number(shown!.replace(/[$,]/g, '')), 2);
  expect(offences).toEqual([]);
  await close();
});

/** A list that lacks a price, so that what is priced by it is told from what is priced by another. */
const withoutStraps = (list: string): string =>
  list
    .split(/\r?\n/)
    .filter((line) => !line.startsWith('strap'))
    .join('\r\n');

test('an alternative is saved as a revision: clouds round what was moved in it', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await page.getByRole('button', { name: 'Branch the open site into an alternative' }).click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
  await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).click();
  const changes = page.locator('.changes-since');
  await changes.locator('summary').click();
  await expect.poll(() => changes.getByRole('button', { name: 'Save the drawing set with clouds' }).count()).toBe(0);
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).click();
  await changes.locator('summary').click();
  const set = await saved(page, () =>
    changes.getByRole('button', { name: 'Save the drawing set with clouds' }).click(),
  );
  expect(set.name).toBe('Alder Street Library lot, alternative 2.changes.pdf');
  const pdf: ReadPdf = await readPdf(set.bytes);
  const words = pdf.pages.map(({ texts }) => texts.map(({ text }) => text).join(' ')).join(' ');
  expect(words.replace(/\s+/g, ' ')).toContain('D05 (drops) moved');
  const svg = await saved(page, () => changes.getByRole('button', { name: 'Save the SVG with clouds' }).click());
  expect(svg.name).toBe('Alder Street Library lot, alternative 2.changes.svg');
  expect(new TextDecoder().decode(svg.bytes)).toContain('class="G-ANNO-REVS"');
  expect(offences).toEqual([]);
  await close();
});

test('a quote, an allowance and a line of what is out are entered in place, held against the day of the bid, and kept', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  const panel = page.getByRole('region', { name: 'Price', exact: true });
  const type = async (label: string, text: string): Promise<void> => {
    const field = panel.getByLabel(label, { exact: true });
    await field.fill(text);
    await field.press('Enter');
  };
  const direct = panel.locator('.sums div', { hasText: /^direct cost/ }).locator('dd');
  await panel.getByRole('button', { name: 'Add a quote' }).click();
  const taking = panel.getByRole('button', { name: 'Take the quote in' });
  await expect.poll(() => taking.isDisabled()).toBe(true);
  await type('quote of', 'gear');
  // Looking something up on the board takes the form away, not what stands in it.
  await page.keyboard.press('.');
  await page.getByTestId('selection-panel').waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => panel.getByLabel('quote of', { exact: true }).inputValue()).toBe('gear');
  await type('all its material, $', '41000');
  await panel.getByLabel('cover another item').selectOption('panelboard');
  await panel.getByLabel('cover another item').selectOption('breaker');
  await type('valid until', '12/31/2026');
  const before = await direct.textContent();
  await taking.click();
  await panel.getByText('Quote gear: valid until 2026-12-31; no day of the bid').waitFor();
  await expect.poll(() => direct.textContent()).not.toBe(before);
  await type('day of the bid', '2027-01-02');
  await panel.getByText(/rows stand on a quote that ran out/).waitFor();
  const bill = page.getByRole('region', { name: 'Cost', exact: true });
  await bill.getByText(/on a quote that ran out: \d+, summed below/).waitFor();
  await type('new allowance for', 'signs');
  const without = await direct.textContent();
  await type('allowance for signs, $', '2500');
  await expect.poll(() => direct.textContent()).not.toBe(without);
  await type('nor is', 'rock');
  await panel.getByLabel('not in the price, 5').waitFor();
  await panel.getByRole('button', { name: 'Take this line away' }).first().click();
  await expect.poll(() => panel.getByLabel(/^not in the price/).count()).toBe(4);
  await page.reload();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  await panel.getByText('Quote gear RAN OUT').waitFor();
  await expect.poll(() => panel.getByLabel('allowance for signs, $').inputValue()).toBe('2500');
  await expect.poll(() => panel.getByLabel('not in the price, 4').inputValue()).toBe('rock');
  await panel.getByRole('button', { name: 'Take this quote away' }).click();
  await panel.getByText(/quote that ran out/).waitFor({ state: 'detached' });
  expect(offences).toEqual([]);
  await close();
});

test("a supplier's words are asked once, near matches first, and known when its list is read again", async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  const panel = page.getByRole('region', { name: 'Price', exact: true });
  const openList = async (wire: number): Promise<void> => {
    const choosing = page.waitForEvent('filechooser');
    await panel.getByRole('button', { name: 'Open a price file…' }).click();
    const rows = ['Part Number,Description,UOM,Price', `W8,8 STR THHN BLK CU,MFT,${wire}`, 'Z1,FORK LIFT,EA,9000'];
    await (await choosing).setFiles({ name: 's.csv', mimeType: 'text/csv', buffer: Buffer.from(rows.join('\n')) });
  };
  await openList(9000);
  await panel.getByText('2 lines are in words that are not known here').waitFor();
  const wire = panel.getByLabel('8 STR THHN BLK CU', { exact: true });
  await expect.poll(() => wire.locator('option').nth(1).textContent()).toBe('near: conductor, 8 AWG copper THWN-2');
  const price = page.locator('.sums .sum dd');
  const before = await price.textContent();
  await wire.selectOption('conductor, 8 AWG copper THWN-2');
  await expect.poll(() => price.textContent()).not.toBe(before);
  await panel.getByLabel('FORK LIFT', { exact: true }).selectOption('nothing that is needed here');
  await panel.getByText('FORK LIFT: nothing.').waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  const after = await price.textContent();
  await openList(18000);
  await expect.poll(() => price.textContent()).not.toBe(after);
  await expect.poll(() => panel.getByText(/not known here/).count()).toBe(0);
  await panel.getByRole('button', { name: 'Back to invented' }).click();
  await panel.getByText('FORK LIFT: nothing.').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a price is changed in the bill, stays after a reload, and what a line is made of is shown on the board', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  const bill = page.getByRole('region', { name: 'Cost', exact: true });
  await bill.getByRole('button', { name: 'drops' }).click();
  const price = page.locator('.sums .sum dd');
  const before = Number((await price.textContent())!.replace(/[$,]/g, ''));
  const field = bill.getByLabel('unit price, retractor cord');
  await field.fill('1240');
  await field.press('Enter');
  // 16 retractors at $1,000 more, and all that is laid on material.
  await expect
    .poll(async () => Number((await price.textContent())!.replace(/[$,]/g, '')))
    .toBeGreaterThan(before + 16_000);
  const after = await price.textContent();
  await bill.getByRole('button', { name: 'retractor' }).click();
  await bill.getByRole('button', { name: 'D03', exact: true }).click();
  await page.getByRole('heading', { name: /D03/ }).waitFor();
  await page.keyboard.press('Escape');
  await page.reload();
  await page.getByRole('button', { name: 'Price', exact: true }).click();
  await expect.poll(() => price.textContent()).toBe(after);
  await page.getByText('Prices: own prices, else invented prices').waitFor();
  expect(offences).toEqual([]);
  await close();
});
