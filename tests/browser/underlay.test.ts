import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { ready, seriousFaults, tally } from './open-page.ts';
import { dxf, png } from './underlay-files.ts';
import { drop, emptySite, fieldOf, file, ledger, put, seesViolet, shown, violet } from './underlay-page.ts';

const open = opener();

test('a PNG is laid under the plan, scaled by two points, taken back, and there again after a reload', async () => {
  const { page, offences, close } = await open();
  await put(page, file('lot.png', 'image/png', png(1600, 1000)));
  await seesViolet(page);
  const first = await fieldOf(page, 'its width is');

  const { camera } = await tally(page);
  const scale = Number(camera!.split(' ')[2]);
  const box = (await page.getByTestId('board').boundingBox())!;
  await ledger(page).getByRole('button', { name: 'Scale by two points' }).click();
  await page.mouse.click(box.x + 200, box.y + 300);
  await page.mouse.click(box.x + 600, box.y + 300);
  // The field that asks has the keys.
  await ledger(page)
    .getByLabel(/^apart/)
    .waitFor();
  await page.keyboard.type("36'");
  await page.keyboard.press('Enter');
  const scaled = await fieldOf(page, 'its width is');
  // Four hundred pixels of the screen now stand for 36 ft.
  const feet = (text: string): number => {
    const [, whole = '0', inches = '0', over, under] = /(-?\d+)'(?: (\d+)(?: (\d+)\/(\d+))?")?/.exec(text) ?? [];
    return Number(whole) + (Number(inches) + (over ? Number(over) / Number(under) : 0)) / 12;
  };
  expect(Math.abs(feet(scaled) / (feet(first) * (36 / (400 / scale))) - 1)).toBeLessThan(1e-3);

  await page.getByRole('button', { name: /^Undo ?: scale underlay/i }).click();
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(first);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(scaled);

  await page.getByText(/^kept in this browser/).waitFor();
  await page.reload();
  await ready(page);
  await shown(page);
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(scaled);
  await seesViolet(page);
  await page.keyboard.press('Control+z');
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(first);
  expect(offences).toEqual([]);
  await close();
});

test('several underlays lie in an order, each by its own, and are there again after a reload', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(1600, 1000)));
  const width = await fieldOf(page, 'its width is');
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    ledger(page).getByRole('button', { name: 'Lay another over it…' }).click(),
  ]);
  await chooser.setFiles({ ...file('lot.dxf', 'application/dxf', dxf()) });
  const list = ledger(page).getByRole('list', { name: 'Underlays, the highest first' });
  const order = (): Promise<string[]> => list.locator('.underlay-name').allTextContents();
  await expect.poll(order).toEqual(['lot.dxf', 'lot.png']);
  // The one just laid is spoken of; the first keeps its size.
  await expect.poll(() => fieldOf(page, 'a unit of it is')).toBe('0\' 1"');
  await ledger(page).getByLabel('locked in place').check();
  await list.getByRole('button', { name: 'lot.png', exact: true }).click();
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(width);
  await expect.poll(() => ledger(page).getByLabel('locked in place').isChecked()).toBe(false);
  await seesViolet(page);

  await list.getByLabel('show lot.png').uncheck();
  await expect.poll(() => violet(page)).toBe(0);
  await list.getByRole('button', { name: 'raise lot.png' }).click();
  await expect.poll(order).toEqual(['lot.png', 'lot.dxf']);
  await list.getByLabel('show lot.png').check();
  await seesViolet(page);
  expect(await seriousFaults(page)).toEqual([]);
  const folder = process.env.OVERROW_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/underlays.png` });

  await page.getByText(/^kept in this browser/).waitFor();
  await page.reload();
  await ready(page);
  await shown(page);
  await expect.poll(order).toEqual(['lot.png', 'lot.dxf']);
  await seesViolet(page);
  for (const name of [/^Undo ?: show underlay/i, /^Undo ?: raise underlay/i]) {
    await page.getByRole('button', { name }).waitFor();
    await page.keyboard.press('Control+z');
  }
  await expect.poll(order).toEqual(['lot.dxf', 'lot.png']);
  await list.getByRole('button', { name: 'lot.dxf', exact: true }).click();
  await ledger(page).getByRole('button', { name: 'Remove', exact: true }).click();
  await expect.poll(() => list.count()).toBe(0);
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(width);
  expect(offences).toEqual([]);
  await close();
});

test('an underlay is moved by the hand, squared up and locked', async () => {
  const { page, offences, close } = await open();
  await put(page, file('lot.png', 'image/png', png(800, 500)));
  const at = async (): Promise<readonly string[]> => [await fieldOf(page, 'x'), await fieldOf(page, 'y')];
  const before = await at();
  await ledger(page).getByRole('button', { name: 'Move', exact: true }).click();
  const box = (await page.getByTestId('board').boundingBox())!;
  await page.mouse.move(box.x + 400, box.y + 300);
  await page.mouse.down();
  await page.mouse.move(box.x + 440, box.y + 330, { steps: 5 });
  await expect.poll(() => at()).not.toEqual(before);
  await page.mouse.up();
  await page.getByRole('button', { name: /^Undo ?: move underlay/i }).waitFor();
  await page.keyboard.press('Escape');
  await ledger(page).getByRole('button', { name: 'Square up' }).click();
  await page.mouse.click(box.x + 200, box.y + 200);
  await page.mouse.click(box.x + 600, box.y + 240);
  expect(Number.parseFloat(await fieldOf(page, 'turned'))).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 1);
  await ledger(page).getByLabel('locked in place').check();
  await expect.poll(() => ledger(page).getByRole('button', { name: 'Move', exact: true }).count()).toBe(0);
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});

test('a long import tells how far it is while the board stays in hand; stopped, it leaves what was there', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(800, 500)));
  const width = await fieldOf(page, 'its width is');
  // 290,000 lines, made in the page: some seconds of reading, and none is to be waited for.
  await page.evaluate(() => {
    const line = `0\nLINE\n8\nC-TOPO\n10\n1.25\n20\n2.5\n11\n310.125\n21\n420.875\n${'1000\nsurveyed\n'.repeat(9)}`;
    const text = `0\nSECTION\n2\nENTITIES\n${line.repeat(290_000)}0\nENDSEC\n0\nEOF\n`;
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'survey.dxf'));
    const { body } = document;
    const seen = new Set<number>();
    new MutationObserver(() => {
      const bar = document.querySelector<HTMLProgressElement>('.underlay-reading progress');
      if (!bar) return;
      seen.add(bar.value);
      body.dataset.told = String(seen.size);
    }).observe(body, { subtree: true, childList: true, attributes: true, attributeFilter: ['value'] });
    document
      .querySelector('.board-paper')!
      .dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  const reading = ledger(page).getByRole('status').filter({ hasText: 'Reading survey.dxf' });
  await reading.waitFor();
  await page.waitForFunction(() => Number(document.body.dataset.told) >= 3);
  // The board answers meanwhile.
  const before = (await tally(page)).camera;
  await page.getByTestId('board').focus();
  await page.keyboard.press('+');
  await expect.poll(async () => (await tally(page)).camera).not.toBe(before);
  await expect.poll(() => reading.count()).toBe(1);
  await reading.getByRole('button', { name: 'Stop' }).click();
  await reading.waitFor({ state: 'detached' });
  await page.waitForTimeout(300);
  await expect.poll(() => ledger(page).getAttribute('data-state')).toBe('shown');
  await expect.poll(() => ledger(page).getByRole('list', { name: 'Underlays, the highest first' }).count()).toBe(0);
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(width);
  await expect.poll(() => page.locator('.notice').count()).toBe(0);
  await page.getByRole('button', { name: /^Undo ?: lay lot.png under the drawing/i }).waitFor();
  // The next one is read as ever.
  await drop(page, file('lot.dxf', 'application/dxf', dxf()));
  await ledger(page).getByText('layers, 1 line of words.').waitFor();
  expect(offences).toEqual([]);
  await close();
});
