import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, seriousFaults } from './open-page.ts';

const open = opener();

test('what the tape says at a drop is recorded, told beside the drawing, taken over, and undone', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  const row = page.locator('tr[data-row=D05]');
  await row.locator('th button').click();
  const form = page.getByRole('region', { name: 'As built' });
  await form.getByRole('button', { name: 'Hangs as drawn, checked today' }).click();
  await form.getByText('as drawn', { exact: true }).waitFor();
  expect(await row.textContent()).toMatch(/\d{4}-\d{2}-\d{2}/);
  // Three inches lower than drawn, by a sum.
  const up = form.getByRole('group', { name: 'box as built' }).getByLabel('z', { exact: true });
  await up.fill(`11' - 3"`);
  await up.press('Enter');
  await form.getByText('0\' 3" away').waitFor();
  const day = form.getByLabel('checked on');
  await day.fill('2026-13-45');
  await day.press('Enter');
  await form.getByText('expected a day such as 2026-05-31').waitFor();
  await day.fill('2026-05-31');
  await day.press('Enter');
  await expect.poll(() => row.textContent()).toContain('2026-05-31');
  expect(await seriousFaults(page)).toEqual([]);
  await form.getByRole('button', { name: 'Draw it where it was built' }).click();
  await form.getByText('as drawn', { exact: true }).waitFor();
  await expect.poll(() => row.textContent()).toContain('10\' 9"');
  await page.getByTestId('board').focus();
  await page.keyboard.press('Control+z');
  await form.getByText('0\' 3" away').waitFor();
  await form.getByRole('button', { name: 'Forget the record' }).click();
  await page.getByRole('button', { name: /^Undo ?: forget D05 as built/i }).waitFor();
  expect(await row.textContent()).toContain('not yet checked');
  expect(offences).toEqual([]);
  await close();
});

test('in the Build station the pointer is told from the nearest gridlines, in Lay out by its x and y', async () => {
  const { page, offences, close } = await open();
  const coordinates = page.getByTestId('coordinates');
  const point = async (x: number, y: number): Promise<void> => {
    const [px, py] = await onScreen(page, [x, y]);
    await page.mouse.move(px, py);
  };
  // The library lot has lines 1 to 4 at x 0, 26, 53 and 79, and line A at y 0.
  await point(28, 3);
  expect(await coordinates.textContent()).toMatch(/x 2[78]' \d+"y [23]' \d+"/);
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  await point(28, 3);
  await coordinates.getByText(/^[12]' \d+" past line 2, [23]' \d+" past line A$/).waitFor();
  expect(offences).toEqual([]);
  await close();
});
