import { expect, test } from 'vitest';
import { D05, drag, margins, place } from './board-page.ts';
import { opener } from './open.ts';
import { onScreen } from './open-page.ts';

const open = opener();

test('arrows nudge by three inches, with shift by a foot, each hold of the key one entry of undo', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  await expect.poll(() => place(page, 'box')).toEqual([52, 9]);
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => place(page, 'box')).toEqual([52.25, 9]);
  await page.keyboard.press('Shift+ArrowUp');
  await expect.poll(() => place(page, 'box')).toEqual([52.25, 10]);
  await expect.poll(() => place(page, 'retractor')).toEqual([52.25, 10]);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => place(page, 'box')).toEqual([52, 9]);
  await close();
});

test('the keys alone go to a drop and move it', async () => {
  const { page, close } = await open();
  await page.getByTestId('board').focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('.');
  await expect
    .poll(() => page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).textContent())
    .toBe('D05');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => place(page, 'box')).toEqual([52, 9.25]);
  await page.keyboard.press('Escape');
  await page.getByTestId('lot-panel').waitFor();
  await close();
});

test('a length typed as a tape reads is taken over, and one that says nothing is told so', async () => {
  const { page, close } = await open();
  const [x, y] = await onScreen(page, D05);
  await page.mouse.click(x, y);
  const cord = page.getByLabel('cord', { exact: true });
  await cord.fill(`12' 6`);
  await cord.press('Enter');
  await expect.poll(() => cord.inputValue()).toBe(`12' 6"`);
  expect((await margins(page))[0]).toContain('short');
  await cord.fill('twelve');
  await expect.poll(() => cord.getAttribute('aria-invalid')).toBe('true');
  await page.getByRole('alert').waitFor();
  await cord.press('Escape');
  await expect.poll(() => cord.inputValue()).toBe(`12' 6"`);
  await close();
});

test('how far a drop is dragged can be typed, by distance and angle or by its place, and put back', async () => {
  const { page, offences, close } = await open();
  await drag(page, D05, 40, 0);
  await page.keyboard.type("2' 6");
  await page.mouse.up();
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await expect.poll(() => place(page, 'box')).toEqual([52, 11.5]);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Undo ?: move drop D05/ }).waitFor();
  await expect.poll(() => page.getByTestId('board').getAttribute('data-doing')).toBe('nothing');
  await drag(page, [52, 11.5], 40, 0);
  await page.keyboard.press('t');
  await page.keyboard.type('50');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9');
  await page.keyboard.press('Enter');
  await page.mouse.up();
  await expect.poll(() => place(page, 'box')).toEqual([50, 9]);
  await drag(page, [50, 9], 40, 0);
  await page.keyboard.type('3');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(() => place(page, 'box')).toEqual([50, 9]);
  await expect.poll(() => page.locator('.type-in').count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});
