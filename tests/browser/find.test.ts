import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, openSample, seriousFaults } from './open-page.ts';
import { screenFaults } from './screen-faults.ts';

const open = opener();

test('at a desk: its key, a name and Enter go to a drop of 240, and the board has the keys', async () => {
  const { page, offences, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.getByTestId('board').focus();
  await page.keyboard.press('g');
  const dialog = page.getByRole('dialog', { name: 'Find' });
  await dialog.waitFor();
  await page.keyboard.type('d117');
  await expect.poll(() => dialog.getByRole('listitem').first().textContent()).toContain('D117');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
  const panel = page.getByTestId('selection-panel');
  await expect.poll(() => panel.getByRole('heading', { level: 2 }).textContent()).toBe('D117');
  const x = await panel.getByRole('group', { name: 'box' }).getByLabel('x', { exact: true }).inputValue();
  const y = await panel.getByRole('group', { name: 'box' }).getByLabel('y', { exact: true }).inputValue();
  const feet = (text: string): number => Number.parseInt(text, 10);
  const [px, py] = await onScreen(page, [feet(x), feet(y)]);
  const board = (await page.getByTestId('board').boundingBox())!;
  expect(px).toBeGreaterThan(board.x + 20);
  expect(px).toBeLessThan(board.x + board.width - 20);
  expect(py).toBeGreaterThan(board.y + 20);
  expect(py).toBeLessThan(board.y + board.height - 20);
  await page.keyboard.press('m');
  await expect.poll(() => page.getByTestId('board').getAttribute('data-tool')).toBe('measure');
  expect(offences).toEqual([]);
  await close();
});

test('on a phone: a tap, a number, and one of what bears it', async () => {
  const { page, offences, close } = await open({ width: 390, height: 844, touch: true });
  await page.getByRole('button', { name: 'Lay out' }).tap();
  await page.getByRole('button', { name: 'Find', exact: true }).tap();
  const dialog = page.getByRole('dialog', { name: 'Find' });
  await dialog.getByLabel('Name or label').fill('5');
  expect(await screenFaults(page, true)).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press('ArrowDown');
  await dialog.getByRole('button', { name: /^D05 drop/ }).tap();
  await dialog.waitFor({ state: 'detached' });
  await expect
    .poll(() => page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent())
    .toBe('D05');
  expect(await page.getByTestId('board').evaluate((board) => board.getBoundingClientRect().bottom > 100)).toBe(true);
  expect(offences).toEqual([]);
  await close();
});

test('a lot of matches is bounded, and none is told', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Find' });
  await page.keyboard.type('d');
  await expect.poll(() => dialog.getByRole('listitem').count()).toBe(30);
  await expect.poll(() => dialog.getByRole('status').textContent()).toMatch(/^\d{3} found, the first 30 shown/);
  await page.keyboard.type('oes not stand here');
  await expect.poll(() => dialog.getByRole('status').textContent()).toBe('Nothing here goes by that.');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
  await close();
});
