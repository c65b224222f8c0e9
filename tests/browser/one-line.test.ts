import { expect, test } from 'vitest';
import { opener } from './open.ts';

const open = opener();

test('the one-line and the board choose for each other; a charger goes to other lines by hand and by keys, and undo takes it back', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^One-line/ }).click();
  const frame = page.getByRole('region', { name: 'One-line' });
  const panel = page.getByTestId('selection-panel');
  const chip = (id: string, lines: string) =>
    frame.getByRole('button', { name: `${id} on ${lines} of P1`, exact: true });

  // Chosen there, chosen on the board; and the other way round.
  await frame.getByRole('button', { name: /^P1 panelboard/ }).click();
  await panel.getByRole('heading', { level: 2, name: 'P1' }).waitFor();
  await page.getByTestId('board').focus();
  await page.keyboard.press('Escape');
  await page.keyboard.press('.');
  await panel.getByRole('heading', { level: 2, name: 'D01' }).waitFor();
  await frame.locator('[data-charger=EV01][aria-pressed=true]').waitFor();

  // By hand.
  const own = await frame
    .locator('[data-lines]')
    .filter({ has: page.locator('[data-charger=EV02]') })
    .getAttribute('data-lines');
  const other = ['AB', 'BC', 'CA'].find((lines) => lines !== own)!;
  await chip('EV02', own!).scrollIntoViewIfNeeded();
  const from = (await chip('EV02', own!).boundingBox())!;
  const to = frame.locator(`[data-panel=P1] [data-target="P1 ${other}"]`);
  const head = (await to.boundingBox())!;
  await page.mouse.move(from.x + 8, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(head.x + 20, head.y + 8, { steps: 4 });
  await page.locator('.move-held', { hasText: `EV02 to ${other} of P1` }).waitFor();
  await page.mouse.up();
  await chip('EV02', other).waitFor();
  await page.getByRole('button', { name: 'Undo', exact: false }).first().click();
  await chip('EV02', own!).waitFor();

  // By keys: picked up with Space, put down with Enter; Escape lets go.
  await chip('EV02', own!).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Escape');
  await chip('EV02', own!).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press(head.y > from.y ? 'ArrowDown' : 'ArrowUp');
  await page.keyboard.press('Enter');
  const now = frame.locator('[data-lines]').filter({ has: page.locator('[data-charger=EV02]') });
  await expect.poll(() => now.getAttribute('data-lines')).not.toBe(own);
  expect(offences).toEqual([]);
  await close();
});

test('a circuit is moved to another space by hand and by keys, stays there, and undo takes it back', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^Panels/ }).click();
  const circuit = page.locator('[data-circuit=EV02]');
  const space = page.locator('td.serves:has([data-circuit=EV02])');
  await circuit.waitFor();
  const own = Number(await space.getAttribute('data-space'));
  const free = page.locator('td.serves', { hasText: /^space$/ }).last();
  const last = Number(await free.getAttribute('data-space')) - 2;

  await page.locator(`td.serves[data-space="${last}"]`).scrollIntoViewIfNeeded();
  await circuit.focus();
  await page.keyboard.press('Space');
  for (let at = own; at + 2 <= last; at += 2) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  const there = own + 2 * Math.floor((last - own) / 2);
  await page.locator(`td.serves[data-space="${there}"] [data-circuit=EV02]`, { hasText: 'kept' }).waitFor();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await page.locator(`td.serves[data-space="${own}"] [data-circuit=EV02]`).waitFor();

  await circuit.scrollIntoViewIfNeeded();
  const from = (await circuit.boundingBox())!;
  const to = (await page.locator(`td.serves[data-space="${own + 4}"]`).boundingBox())!;
  await page.mouse.move(from.x + 6, from.y + 6);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + 8, { steps: 4 });
  await page.locator('.move-held', { hasText: `EV02 to ${own + 4}, ${own + 6}` }).waitFor();
  await page.mouse.up();
  await page.locator(`td.serves[data-space="${own + 4}"] [data-circuit=EV02]`).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a charger is dragged to another board, hangs there after the page is opened anew, and undo takes it back', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Fleet yard', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Quarry Road fleet yard' }).waitFor();
  await page.locator('.drawer-bar button', { hasText: /^One-line/ }).click();
  const at = (panel: string) => page.locator(`[data-panel=${panel}] [data-charger=EV01]`);
  // The boards stand side by side at the far end of the supply.
  const toBoards = () =>
    page.getByRole('region', { name: 'One-line' }).evaluate((frame) => frame.scrollTo(0, frame.scrollHeight));
  await toBoards();
  await at('P1').scrollIntoViewIfNeeded();
  const from = (await at('P1').boundingBox())!;
  const to = (await page.locator('[data-panel=P2] [data-target^="P2 "]').first().boundingBox())!;
  await page.mouse.move(from.x + 8, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(to.x + 20, to.y + 8, { steps: 6 });
  await page.locator('.move-held', { hasText: /^EV01 to [ABC]{2} of P2/ }).waitFor();
  await page.mouse.up();
  await at('P2').waitFor();
  await expect.poll(() => at('P1').count()).toBe(0);

  await page.getByText(/^kept in this browser/).waitFor();
  await page.reload();
  await page.locator('.drawer-bar button', { hasText: /^One-line/ }).click();
  await toBoards();
  await at('P2').waitFor();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await at('P1').waitFor();
  await expect.poll(() => at('P2').count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

test('a way of using a feeder that stands opens as a site of its own', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Fleet yard', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Quarry Road fleet yard' }).waitFor();
  await page.locator('.drawer-bar button', { hasText: /^One-line/ }).click();
  await page
    .getByRole('region', { name: 'One-line' })
    .getByRole('button', { name: /^feeder F1/ })
    .click();
  const ways = page.getByRole('region', { name: 'What it can carry' });
  await ways.getByRole('button', { name: 'Price each of these' }).click();
  await ways
    .getByText(/^\$[\d,]+, (as now|(more|less) by).*; day overnight: \d+ of 971 kWh, .* a billing period/)
    .first()
    .waitFor();
  await ways.locator('summary').click();
  await ways.getByRole('button', { name: 'Open it at 480 V behind 225 kVA' }).click();
  await page.getByRole('heading', { level: 1, name: 'Quarry Road fleet yard, F1 at 480 V, 225 kVA' }).waitFor();
  await page.getByText(/^Load management holds the chargers of T1 to \d+ A/).waitFor();
  expect(offences).toEqual([]);
  await close();
});
