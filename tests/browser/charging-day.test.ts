import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeLot } from '../bench/make-lot.ts';
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
  expect(await clock.locator('tbody tr').count()).toBe(64);
  expect(await clock.getByRole('row', { name: /^09:00/ }).textContent()).toMatch(/^09:00\d+\.\d A320\.0 A/);

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
  expect(await drawn.getAttribute('aria-label')).toBe(`car 21 at ${charger}`);
  // Of 1078 units 52 lie before six and 26 after ten in the evening: 10:20 to 13:47, in whole quarters.
  expect(await drawn.getAttribute('aria-valuetext')).toMatch(/^10:15 to 14:00,/);
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
  expect(await focused()).toBe(`row ${charger}`);
  await page.keyboard.press('Enter');
  await expect.poll(focused).toBe('car 20');
  expect(await drawn.getAttribute('aria-valuetext')).toMatch(/^06:00 to 10:00,/);
  await page.keyboard.press('+');
  await expect.poll(focused).toBe('car 21');
  expect(await page.locator('[data-car="21"]').getAttribute('aria-valuetext')).toMatch(/^10:00 to 14:00,/);
  await page.keyboard.press('Delete');
  await expect.poll(() => page.locator('[data-car="21"]').count()).toBe(0);
  await says.filter({ hasText: '21 cars' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('hours, cords and tariff of a day are set on the page; what cannot be worked is told and mended there', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  const says = page.locator('.day-says');
  await says.filter({ hasText: '06:00 to 22:00' }).waitFor();
  const settings = page.locator('summary', { hasText: 'Hours, cords and tariff of the day' });
  await settings.click();
  const type = async (label: string, text: string) => {
    const field = page.getByLabel(label, { exact: true });
    await field.fill(text);
    await field.press('Tab');
  };
  const money = async () => Number(/([\d.]+) a billing period/.exec((await says.textContent())!)![1]);
  const before = await money();
  // Twice the days of a period are twice its energy; the demand is as it was.
  await page.getByRole('button', { name: 'Remove demand price 1' }).click();
  await expect.poll(money).toBeLessThan(before);
  const energy = await money();
  await type('such days a billing period', '42');
  await expect.poll(money).toBeCloseTo(2 * energy, 1);
  // Prices that leave hours without one.
  await page.getByRole('button', { name: 'Remove energy price 1' }).click();
  while ((await page.getByRole('button', { name: /^Remove energy price/ }).count()) > 0)
    await page
      .getByRole('button', { name: /^Remove energy price/ })
      .first()
      .click();
  await type('energy 1 from', '07:00');
  await type('energy 1 to', '21:00');
  await page.locator('.day-whole .fault', { hasText: 'tariff.energy: no price at 06:00' }).waitFor();
  await type('energy 1 from', '00:00');
  await type('energy 1 to', '00:00');
  await says.waitFor();
  await type('energy 1 price', '0.10');
  await type('such days a billing period', '10');
  // Kilowatt-hours of a day, ten days, ten cents.
  const kwh = Number(/; (\d+) kWh/.exec((await says.textContent())!)![1]);
  await expect.poll(money).toBeGreaterThan(kwh - 1);
  expect(await money()).toBeLessThan(kwh + 1);
  await page.getByLabel('begins', { exact: true }).fill('25:00');
  await page.getByText('a time such as 16:30').waitFor();
  await page.keyboard.press('Escape');
  await type('ends', '23:00');
  await says.filter({ hasText: '06:00 to 23:00' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('hundreds of chargers have their rows and figures, a screenful of them drawn', async () => {
  const { page, offences, close } = await open();
  const lot = makeLot({ name: 'many', stalls: 300 });
  const days = [
    { id: 'd', from: '06:00', to: '20:00', population: { kind: 'workplace' as const, cars: 320, seed: 3 } },
  ];
  await page.evaluate(
    (content) => {
      const files = new DataTransfer();
      files.items.add(new File([content], 'many.site.json'));
      document.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
    },
    JSON.stringify({ ...lot, days }),
  );
  await page.getByRole('heading', { level: 1, name: 'many' }).waitFor();
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  await page.locator('.day-says', { hasText: '315 cars' }).waitFor();
  // Five of the 320 come before six or after eight.
  const rows = page.locator('.day-row');
  const places = () => rows.evaluateAll((all) => all.map((one) => Number((one as SVGGElement).dataset.place)));
  expect((await places()).slice(0, 3)).toEqual([0, 1, 2]);
  expect((await places()).length).toBeLessThan(60);
  // By keys to the last row, which is drawn then, and back.
  await page.locator('[data-item]').first().focus();
  await page.keyboard.press('End');
  await expect.poll(async () => (await places()).at(-1)).toBe(299);
  const focused = () =>
    page.evaluate(() => (document.activeElement?.closest('.day-row') as SVGGElement | null)?.dataset.place);
  await expect.poll(focused).toBe('299');
  await page.keyboard.press('Home');
  await expect.poll(focused).toBe('0');
  // By wheel or finger.
  await page.locator('.day-rows').evaluate((frame) => {
    frame.scrollTop = frame.scrollHeight / 2;
  });
  await expect.poll(async () => (await places()).includes(150)).toBe(true);
  // Wherever it stands, rows fill the frame from its top to its bottom.
  for (const share of [0.3, 1]) {
    const bare = await page.locator('.day-rows').evaluate(async (frame, part) => {
      frame.scrollTop = part * (frame.scrollHeight - frame.clientHeight);
      await new Promise((done) => setTimeout(done, 300));
      const seen = frame.getBoundingClientRect();
      const { top, bottom } = frame.querySelector('.day-bars')!.getBoundingClientRect();
      return Math.max(top - seen.top, seen.bottom - bottom);
    }, share);
    expect(bare).toBeLessThan(3);
  }
  const table = page.getByRole('region', { name: 'Cars', exact: true });
  expect(await table.locator('table').getAttribute('aria-rowcount')).toBe('321');
  expect(await table.locator('tbody tr').count()).toBeLessThan(80);
  expect(offences).toEqual([]);
  await close();
});
