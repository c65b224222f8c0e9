import { expect, test } from 'vitest';
import { makeLot } from '../bench/make-lot.ts';
import { opener } from './open.ts';

const open = opener();

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
  await expect.poll(() => money()).toBeLessThan(kwh + 1);
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
    const rows = page.locator('.day-rows');
    await rows.evaluate((frame, part) => {
      frame.scrollTop = part * (frame.scrollHeight - frame.clientHeight);
    }, share);
    const bare = (): Promise<number> =>
      rows.evaluate((frame) => {
        const seen = frame.getBoundingClientRect();
        const { top, bottom } = frame.querySelector('.day-bars')!.getBoundingClientRect();
        return Math.max(top - seen.top, seen.bottom - bottom);
      });
    await expect.poll(bare).toBeLessThan(3);
  }
  const table = page.getByRole('region', { name: 'Cars', exact: true });
  await expect.poll(() => table.locator('table').getAttribute('aria-rowcount')).toBe('321');
  await expect.poll(() => table.locator('tbody tr').count()).toBeLessThan(80);
  expect(offences).toEqual([]);
  await close();
});
