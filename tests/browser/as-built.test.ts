import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, seriousFaults } from './open-page.ts';

const open = opener();

test('what the tape reads is written from gridlines, told beside the drawing, drawn, and taken back', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  const row = page.locator('tr[data-row=D05]');
  await row.locator('th button').click();
  const form = page.getByRole('region', { name: 'As built', exact: true });
  const box = form.getByRole('group', { name: 'box', exact: true });
  const along = box.getByLabel('box along', { exact: true });
  const setOut = `${await row.locator('td').nth(1).textContent()}`;
  await box.getByText(`drawn ${setOut}`).waitFor();
  // Nothing is claimed before it is measured: the first figure of the tape is the record. Two feet and a half farther.
  const sign = setOut.includes('−') ? '-' : '';
  const was = await along.inputValue();
  const side = box.getByLabel('box along, side of the line');
  await expect.poll(() => side.inputValue()).toBe(sign === '-' ? '-1' : '1');
  // A figure below nothing lies on the other side of the line.
  await along.fill(`${was} ${sign === '-' ? '-' : '+'} 2' 6"`);
  await along.press('Enter');
  await form.getByText('2\' 6" away', { exact: true }).waitFor();
  await expect.poll(() => row.textContent()).toMatch(/\d{4}-\d{2}-\d{2}/);
  // At once, and the drawing as it was: both margins side by side, and the finding that it hangs elsewhere.
  const cord = form.locator('.built-table tr[data-kind=cord]');
  const [drawn, built] = await cord.locator('td').allTextContents();
  expect(drawn).toMatch(/spare$/);
  expect(built).not.toBe(drawn);
  await expect.poll(() => row.locator('td').nth(1).textContent()).toBe(setOut);
  await page.getByText(/D05 was built 2' 6" from where it is drawn/).waitFor();
  // Another line reads the same place anew, and writes nothing.
  const undo = page.getByRole('button', { name: /^Undo/ });
  const name = await undo.textContent();
  await box.getByLabel('box along, measured from').selectOption({ label: 'line 4' });
  await expect.poll(() => along.inputValue()).not.toBe(was);
  await expect.poll(() => undo.textContent()).toBe(name);
  // x, y and z of the site are within reach, and sums are taken.
  await box.getByText('x, y and z of the box').click();
  const up = box.getByRole('group', { name: 'box as built' }).getByLabel('z', { exact: true });
  await up.fill(`11' - 3"`);
  await up.press('Enter');
  await expect.poll(() => box.getByLabel('box up').inputValue()).toBe('10\' 9"');
  const day = form.getByLabel('checked on');
  await day.fill('2026-13-45');
  await day.press('Enter');
  await form.getByText('a day such as 2026-05-31').waitFor();
  await day.fill('2026-05-31');
  await day.press('Enter');
  await form.getByLabel('initials').fill('JB');
  await form.getByLabel('initials').press('Enter');
  await expect.poll(() => row.textContent()).toContain('2026-05-31 JB');
  expect(await seriousFaults(page)).toEqual([]);
  await form.getByRole('button', { name: 'Draw it where it was built' }).click();
  await form.getByText('as drawn', { exact: true }).first().waitFor();
  await expect.poll(() => row.textContent()).toContain('10\' 9"');
  await page.getByTestId('board').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => row.textContent()).not.toContain('10\' 9"');
  await form.getByRole('button', { name: 'Forget the record' }).click();
  await page.getByRole('button', { name: /^Undo ?: forget D05 as built/i }).waitFor();
  await expect.poll(() => row.textContent()).toContain('not yet checked');
  expect(offences).toEqual([]);
  await close();
});

test('in the Build station neither hand nor keys change the drawing, and no field or tool is there that would', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  const row = page.locator('tr[data-row=D05]');
  await row.locator('th button').click();
  const before = await row.textContent();
  await expect(page.locator('.tool-bar .draw-action').count()).resolves.toBe(0);
  const panel = page.getByTestId('selection-panel');
  for (const label of ['cord', 'mount', 'made for cords', 'breaker', 'connector rests at'])
    await expect.poll(() => panel.getByLabel(label, { exact: true }).count()).toBe(0);
  await expect.poll(() => panel.getByRole('button', { name: 'Delete' }).count()).toBe(0);
  const [bx, by] = await dropOnScreen(page, 'D05');
  await page.mouse.move(bx, by);
  await page.mouse.down();
  await page.mouse.move(bx + 60, by + 30, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => row.textContent()).toBe(before);
  await row.locator('th button').click();
  await page.getByTestId('board').focus();
  for (const key of ['ArrowLeft', 'Shift+ArrowUp', 'Delete', 'Backspace', 'Control+x', 's', 'r'])
    await page.keyboard.press(key);
  await page.getByText('Build keeps the drawing as it is').waitFor();
  await expect.poll(() => page.getByText('Build keeps the drawing as it is').count()).toBe(1);
  await expect.poll(() => row.textContent()).toBe(before);
  await expect.poll(() => page.getByTestId('board').getAttribute('data-tool')).toBe('select');
  await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
  expect(offences).toEqual([]);
  await close();
});

/** Where a drop of the open sample hangs on the screen. */
async function dropOnScreen(page: Page, id: string): Promise<readonly [number, number]> {
  const { drops } = JSON.parse(readFileSync('samples/library-lot.site.json', 'utf8')) as {
    drops: { id: string; retractor: [number, number, number] }[];
  };
  const [x, y] = drops.find((drop) => drop.id === id)!.retractor;
  return onScreen(page, [x, y]);
}

test('in the Build station the pointer is told from the nearest gridlines, in Lay out by its x and y', async () => {
  const { page, offences, close } = await open();
  const coordinates = page.getByTestId('coordinates');
  const point = async (x: number, y: number): Promise<void> => {
    const [px, py] = await onScreen(page, [x, y]);
    await page.mouse.move(px, py);
  };
  // The library lot has lines 1 to 4 at x 0, 26, 53 and 79, and line A at y 0.
  await point(28, 3);
  await expect.poll(() => coordinates.textContent()).toMatch(/x 2[78]' \d+"y [23]' \d+"/);
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  await point(28, 3);
  await coordinates.getByText(/^[12]' \d+" past line 2, [23]' \d+" past line A$/).waitFor();
  expect(offences).toEqual([]);
  await close();
});
