import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { openSample, seriousFaults } from './open-page.ts';

const open = opener();

test('figures open to their steps, and an existing feeder to what it can carry', async () => {
  const { page, offences, close } = await open();
  await openSample(page, 'Library lot', 'Alder Street Library lot');
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await page.locator('tr[data-row=EV01]').click();
  const panel = page.getByTestId('selection-panel');
  for (const [ask, step] of [
    ['Why these margins?', 'left of the cord'],
    ['Why #8 and 40 A?', 'design load: 40 A'],
    [/V at the box\?$/, 'drop in all'],
    ['Why this cord?', 'drop of the cord'],
  ] as const) {
    await panel.getByText(ask).first().click();
    await panel.getByText(step).first().waitFor();
  }
  await panel.getByRole('button', { name: 'P1', exact: true }).first().click();
  await panel.getByText('Why these figures?').click();
  await panel.getByText('loaded:').first().waitFor();
  await panel.getByRole('button', { name: 'F1', exact: true }).click();
  const ways = panel.getByRole('region', { name: 'What it can carry' });
  await ways.getByText('208 V now').waitFor();
  await expect.poll(() => ways.locator('tbody tr').count()).toBeGreaterThan(4);
  // The load of the service is told at its equipment.
  await page.getByTestId('board').focus();
  await page.keyboard.press('g');
  await page.keyboard.type('SE1');
  await page.keyboard.press('Enter');
  const load = panel.getByRole('region', { name: 'Load calculation' });
  await load.getByText('fits 400 A', { exact: false }).waitFor();
  await expect.poll(() => load.locator('tbody tr').count()).toBe(3);
  await load.getByText('Why this load?').click();
  await load.getByText('transformer to ask the utility for').first().waitFor();
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});
