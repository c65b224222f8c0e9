import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, seriousFaults } from './open-page.ts';

const open = opener();

const form = (page: Page) => page.getByTestId('selection-panel').getByRole('region', { name: 'Renumber' });
const openForm = (page: Page): Promise<void> => page.locator('summary', { hasText: 'Renumber' }).click();

async function type(page: Page, label: string, text: string): Promise<void> {
  await form(page).getByLabel(label, { exact: true }).fill(text);
  await form(page).getByLabel(label, { exact: true }).press('Enter');
}

/** The board's labels of stalls, by their panel. */
async function labelOf(page: Page, at: readonly [number, number]): Promise<string> {
  await page.getByTestId('board').press('Escape');
  await page.mouse.click(...(await onScreen(page, at)));
  return page.getByRole('region', { name: 'Stall' }).getByLabel('label').inputValue();
}

test('the whole row of one stall gets labels in order from its other end, by a step, in one named step', async () => {
  const { page, offences, close } = await open();
  await page.mouse.click(...(await onScreen(page, [74.5, 12])));
  const before = await labelOf(page, [74.5, 12]);
  await openForm(page);
  await expect.poll(() => form(page).textContent()).toContain('Its whole row: 8 stalls');
  const ends = await form(page).getByLabel('begins at').locator('option').allTextContents();
  expect(ends).toHaveLength(2);
  await form(page).getByLabel('begins at').selectOption({ label: ends[1]! });
  await type(page, 'prefix', 'A-');
  await type(page, 'first number', '100 + 1');
  await type(page, 'step', '2');
  await expect.poll(() => form(page).getByTestId('renumbered').textContent()).toContain('becomes A-101');
  await form(page).getByRole('button', { name: 'Renumber 8 stalls' }).press('Enter');
  await page.getByRole('button', { name: /^Undo ?: renumber 8 stalls/ }).waitFor();
  expect(await labelOf(page, [74.5, 12])).toMatch(/^A-1(01|15)$/);
  await page.getByRole('button', { name: /^Undo ?: renumber 8 stalls/ }).click();
  expect(await labelOf(page, [74.5, 12])).toBe(before);
  expect(offences).toEqual([]);
  await close();
});

test('all stalls are numbered row by row, there and back; who else has a label of theirs is told', async () => {
  const { page, offences, close } = await open();
  await page.mouse.move(...(await onScreen(page, [-9, 27])));
  await page.mouse.down();
  await page.mouse.move(...(await onScreen(page, [84, -27])), { steps: 4 });
  await page.mouse.up();
  await openForm(page);
  await form(page).getByLabel('of these').selectOption({ label: '16 stalls' });
  await form(page).getByLabel('rows go').selectOption('turning');
  await type(page, 'first number', '201');
  await form(page).getByRole('button', { name: 'Renumber 16 stalls' }).click();
  await page.getByRole('button', { name: /^Undo ?: renumber 16 stalls/ }).waitFor();
  const ends = [await labelOf(page, [5.5, 12]), await labelOf(page, [74.5, 12])].map(Number);
  expect(Math.abs(ends[0]! - ends[1]!)).toBe(7);
  await openForm(page);
  await type(page, 'first number', '205');
  await form(page).getByText('4 other stalls have labels of these, and keep them.').waitFor();
  const widths = await form(page).evaluate((section) =>
    [...section.children].map((child) => child.getBoundingClientRect().right - section.getBoundingClientRect().right),
  );
  expect(Math.max(...widths)).toBeLessThan(1);
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});

test('chargers are named anew along their stalls and stay selected; a name that is taken is refused', async () => {
  const { page, offences, close } = await open();
  await page.getByTestId('board').focus();
  await page.keyboard.press('Control+a');
  await openForm(page);
  await form(page).getByLabel('of these').selectOption({ label: '16 chargers' });
  await type(page, 'prefix', 'S');
  await type(page, 'first number', '1');
  await expect.poll(() => form(page).getByRole('alert').textContent()).toMatch(/S01 is taken: stall S01 has that name/);
  await expect
    .poll(() =>
      form(page)
        .getByRole('button', { name: /^Renumber/ })
        .isDisabled(),
    )
    .toBe(true);
  await type(page, 'prefix', 'CH-');
  await form(page).getByRole('button', { name: 'Renumber 16 chargers' }).click();
  await page.getByRole('button', { name: /^Undo ?: renumber 16 chargers/ }).waitFor();
  await expect.poll(() => page.getByTestId('selection-panel').textContent()).not.toContain('EV01');
  expect(offences).toEqual([]);
  await close();
});
