import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { opener } from './open.ts';

const open = opener();

test('a day opens, its ceiling dragged, held to and undone; the least limit is found in a worker that can be stopped', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  const says = page.locator('.day-says');
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();

  // Lower and lower leaves more of them short, at once.
  const ceiling = page.locator('.day-controls .day-ceiling input');
  const short = async (amps: number): Promise<number> => {
    await ceiling.fill(String(amps));
    const text = (await says.textContent()) ?? '';
    return Number(/(\d+) of \d+ cars? leave/.exec(text)?.[1] ?? 0);
  };
  const shorts = [];
  for (const amps of [200, 100, 60, 20]) shorts.push(await short(amps));
  expect(shorts).toEqual(shorts.toSorted((a, b) => a - b));
  expect(shorts.at(-1)).toBeGreaterThan(4);

  // The dragged figure is a question until it is taken.
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  await page.getByRole('button', { name: 'Hold P1 to 20 A' }).click();
  await page.getByText('what if it were 20 A').waitFor();
  await undo.click();
  await page.getByText('what if it were 320 A').waitFor();
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();

  // A row is chosen for the board.
  await page.locator('.day-row .day-mark').nth(2).click();
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).waitFor();
  await page.locator('.day-row-ground[data-chosen=true]').first().waitFor();

  const find = page.getByRole('button', { name: /^Find the best there could be/ });
  await find.click();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await find.click();
  const best = page.getByRole('region', { name: 'The best there could be' });
  await best.getByText('the least limit with which one serves all is').waitFor();
  const told = (await best.textContent()) ?? '';
  const least = Number(/serves all is ([\d.]+) A/.exec(told)![1]);
  const ofRules = Array.from(told.matchAll(/: (\d+) A serves all/g), ([, amps]) => Number(amps));
  expect(ofRules).toHaveLength(4);
  for (const one of ofRules) expect(one).toBeGreaterThanOrEqual(Math.floor(least));
  await page
    .getByRole('button', { name: `Hold P1 to ${ofRules[0]} A` })
    .first()
    .click();
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('cars are moved by hand and by keys, undone; a chosen time stands on the board with the volts; cars go to a file and back', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  const bar = page.locator('[data-car="4"]');
  const words = () => bar.getAttribute('aria-valuetext');
  await bar.scrollIntoViewIfNeeded();
  const before = (await words())!;
  expect(before).toContain(' to 15:36');

  // By hand the end of the stay, a population becoming a list of cars with it.
  const box = (await bar.locator('.day-stay').boundingBox())!;
  await page.mouse.move(box.x + box.width - 3, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width - 3 - box.width / 2, box.y + box.height / 2, { steps: 5 });
  await page.locator('.day-car[data-held=true]').waitFor();
  await page.mouse.up();
  await expect.poll(words).not.toContain(' to 15:36');
  expect(Number(/ to (\d+):/.exec((await words())!)![1])).toBeLessThan(12);
  await undo.click();
  await expect.poll(words).toBe(before);

  // By keys: an hour later, and a quarter of an hour longer; the keys stay with the car.
  await bar.focus();
  for (const press of ['ArrowRight', 'ArrowRight', 'Shift+ArrowRight']) await page.keyboard.press(press);
  await expect.poll(words).toMatch(/^07:10 to 16:21/);
  expect(await page.evaluate(() => globalThis.document.activeElement?.getAttribute('data-car'))).toBe('4');
  for (let i = 0; i < 3; i++) await undo.click();
  await expect.poll(words).toBe(before);
  // And in the table behind the drawing.
  const leaves = page.getByLabel('car 5 leaves', { exact: true });
  await leaves.fill('13:00');
  await leaves.press('Enter');
  await expect.poll(words).toContain(' to 13:00');

  // A time: who charges stands on the board, the volts beside it.
  await page.getByRole('region', { name: 'A time of the day' }).getByRole('slider').fill('12');
  await page.locator('.day-supply', { hasText: /^\d+ chargers? on, [\d.]+ kW\. .*P1 20\d\.\d V/ }).waitFor();

  await page.getByText('The load by the clock').click();
  const clock = page.getByRole('region', { name: 'Load by the clock' });
  // From six to ten in the evening, a row for each quarter of an hour.
  await expect.poll(() => clock.locator('tbody tr').count()).toBe(64);
  await expect.poll(() => clock.getByRole('row', { name: /^09:00/ }).textContent()).toMatch(/^09:00\d+\.\d A320\.0 A/);

  const [sent] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the cars (CSV)' }).click(),
  ]);
  const lines = readFileSync(await sent.path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(lines).toHaveLength(21);
  expect(lines[5]).toMatch(/^06:40,13:00,13\.4,/);
  const picker = page.getByLabel(/^Cars from a file/);
  await picker.setInputFiles({ name: 'cars.csv', mimeType: 'text/csv', buffer: Buffer.from('8:00,noon,5') });
  await page.getByText('cars.csv: line 1: expected a departure such as 16:40').waitFor();
  await picker.setInputFiles({
    name: 'cars.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(lines.slice(0, 4).join('\n')),
  });
  await page.locator('.day-says', { hasText: '3 cars' }).waitFor();
  await undo.click();
  await page.locator('.day-says', { hasText: '20 cars' }).waitFor();
  // The least ceiling is set with one act and taken back with one.
  await page.getByRole('button', { name: 'Find the least ceiling of each panel under the rule' }).click();
  await page.getByRole('button', { name: /^Set the managed amperes: P1 \d+ A$/ }).click();
  await page.getByText(/^what if it were (?!320)\d+ A$/).waitFor();
  await page.locator('.day-says', { hasText: 'nobody leaves with less' }).waitFor();
  await undo.click();
  await page.getByText('what if it were 320 A').waitFor();
  await page.getByText('Energy and cost of each stall a billing period').click();
  await page.getByRole('region', { name: 'Meters' }).getByRole('row').nth(16).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a car is drawn in a row by hand and by keys, and goes again; ceiling, load and bars are seen at once', async () => {
  const { page, offences, close } = await open();
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  const says = page.locator('.day-says');
  await says.filter({ hasText: '20 cars' }).waitFor();
  // Nothing has to be scrolled for the ceiling, the load and several bars.
  const bottomOf = async (selector: string) => {
    const box = (await page.locator(selector).first().boundingBox())!;
    return box.y + box.height;
  };
  for (const selector of ['.day-controls .day-ceiling input', '.day-load', '.day-row[data-place="5"]'])
    expect(await bottomOf(selector)).toBeLessThan(900);
  expect(await page.evaluate(() => document.scrollingElement!.scrollHeight)).toBe(900);

  const empty = page.locator('.day-empty');
  const charger = (await empty.first().getAttribute('data-item'))!.replace('row ', '');
  const ground = page.locator('.day-row', { has: empty }).first().locator('.day-row-ground');
  await ground.scrollIntoViewIfNeeded();
  const box = (await ground.boundingBox())!;
  const at = (share: number) => [box.x + share * box.width, box.y + box.height / 2] as const;
  // A third of the way, and let go with Escape: nothing is drawn.
  await page.mouse.move(...at(0.3));
  await page.mouse.down();
  await page.mouse.move(...at(0.5), { steps: 4 });
  await page.locator('.day-car[data-held=true]').waitFor();
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await says.filter({ hasText: '20 cars' }).waitFor();
  await page.mouse.move(...at(0.3));
  await page.mouse.down();
  await page.mouse.move(...at(0.5), { steps: 4 });
  await page.mouse.up();
  await says.filter({ hasText: '21 cars' }).waitFor();
  const drawn = page.locator('[data-car="20"]');
  await expect.poll(() => drawn.getAttribute('aria-label')).toBe(`car 21 at ${charger}`);
  // Of 1078 units 52 lie before six and 26 after ten in the evening: 10:20 to 13:47, in whole quarters.
  await expect.poll(() => drawn.getAttribute('aria-valuetext')).toMatch(/^10:15 to 14:00,/);
  // What it asks is typed in the table behind.
  const asks = page.getByLabel('car 21 asks', { exact: true });
  await asks.fill('2 * 40');
  await asks.press('Enter');
  await expect.poll(() => drawn.getAttribute('aria-valuetext')).toContain('of 80.0 kWh');
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  await undo.click();
  await undo.click();
  await says.filter({ hasText: '20 cars' }).waitFor();

  // By keys: down to the empty row, a car drawn in it, one more after it, and both taken away.
  await page.locator('[data-car]').first().focus();
  await page.keyboard.press('End');
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-item'));
  for (let i = 0; i < 20 && (await focused()) !== `row ${charger}`; i++) await page.keyboard.press('ArrowUp');
  await expect.poll(() => focused()).toBe(`row ${charger}`);
  await page.keyboard.press('Enter');
  await expect.poll(focused).toBe('car 20');
  await expect.poll(() => drawn.getAttribute('aria-valuetext')).toMatch(/^06:00 to 10:00,/);
  await page.keyboard.press('+');
  await expect.poll(focused).toBe('car 21');
  await expect.poll(() => page.locator('[data-car="21"]').getAttribute('aria-valuetext')).toMatch(/^10:00 to 14:00,/);
  await page.keyboard.press('Delete');
  await expect.poll(() => page.locator('[data-car="21"]').count()).toBe(0);
  await says.filter({ hasText: '21 cars' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});
