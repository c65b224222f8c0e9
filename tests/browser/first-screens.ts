import type { Page } from 'playwright-core';
import { onScreen } from './open-page.ts';
import { drawn, pressOnBoard, type Screen, shutDialog, shutTables, station, table } from './screen-acts.ts';

const tables = ['Runs', 'Margins', 'Takeoff', 'Cost', 'Cuts', 'Setting out'] as const;

/** The screens of work on the board and in the field, each soon reached from the last. */
export const FIRST_SCREENS: readonly Screen[] = [
  {
    name: 'lot',
    go: async (page) => {
      await station(page, 'Lay out');
      await shutTables(page);
    },
  },
  {
    name: 'drop',
    go: async (page) => {
      await pressOnBoard(page, ['.', '.', '.', '.', '.']);
      await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'D05' }).waitFor();
    },
  },
  {
    name: 'raceway',
    go: async (page) => {
      await pressOnBoard(page, ['f']);
      const [x, y] = await onScreen(page, [65.5, 0]);
      await page.mouse.click(x, y);
      await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'R1' }).waitFor();
    },
  },
  {
    name: 'several',
    go: async (page) => {
      await pressOnBoard(page, ['Control+a']);
      await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: '16 drops' }).waitFor();
      // Both forms of a selection are opened: each is to be read, reached and touched.
      await page.locator('.arrange summary', { hasText: 'Renumber' }).click();
      await page.locator('.arrange summary', { hasText: 'Move, copy, turn' }).click();
    },
  },
  {
    name: 'member-loads',
    go: async (page) => {
      await pressOnBoard(page, ['Escape', 'Escape']);
      await page.getByLabel('color every beam and purlin by what it carries').check();
      await pressOnBoard(page, ['f']);
      const [x, y] = await onScreen(page, [26, -17.5]);
      await page.mouse.click(x, y);
      await page.getByTestId('member-loads').scrollIntoViewIfNeeded();
    },
  },
  {
    name: 'coverage',
    go: async (page) => {
      await page.getByTestId('loads-legend').getByRole('button', { name: 'Stop' }).click();
      await pressOnBoard(page, ['Escape', 'Escape']);
      await page.getByLabel('shade every stall by what is in reach').check();
    },
  },
  {
    name: 'proposal',
    go: async (page) => {
      await page.locator('summary', { hasText: 'Propose what is missing' }).click();
      const form = page.getByRole('region', { name: 'Propose' });
      await form.getByLabel('propose', { exact: true }).selectOption('equipment');
      await form.getByRole('button', { name: 'Propose panels' }).click();
      await page.getByTestId('proposed').scrollIntoViewIfNeeded();
    },
  },
  {
    name: 'price',
    go: async (page) => {
      await page.getByTestId('coverage-legend').getByRole('button', { name: 'Stop' }).click();
      await station(page, 'Price');
    },
  },
  { name: 'build', go: (page) => station(page, 'Build') },
  {
    name: 'build-drop',
    go: async (page) => {
      await page.locator('li[data-row=D05] button, tr[data-row=D05] th button').first().click();
      await page.getByRole('button', { name: /^(As drawn|Hangs as drawn)/ }).click();
    },
  },
  {
    name: 'build-measured',
    go: async (page) => {
      const measure = page.getByRole('button', { name: 'Measure', exact: true });
      if (await page.locator('.build-card').isVisible()) await measure.click();
      await page.getByLabel('box up').fill(`10' 6"`);
      await page.getByLabel('box up').press('Enter');
      await drawn(page);
    },
  },
  {
    name: 'build-tests',
    go: async (page) => {
      const test = page.getByRole('button', { name: 'Test', exact: true });
      if (await page.locator('.build-card').isVisible()) await test.click();
      else await page.getByText('Tests of EV05', { exact: true }).click();
      const volts = page.getByLabel('at the box without load');
      await volts.scrollIntoViewIfNeeded();
      await volts.fill('230');
      await volts.press('Enter');
      await page.getByText(/^Fails: /).waitFor();
    },
  },
  {
    name: 'pull-card',
    go: async (page) => {
      await page.evaluate(() => location.assign('#card=circuit/EV05/Alder%20Street%20Library%20lot'));
      await page.getByText('cut each to').waitFor();
    },
  },
  {
    name: 'build-set-out',
    go: async (page) => {
      await shutDialog(page);
      // At the desk the card has it without being asked.
      const setOut = page.getByRole('button', { name: 'Set out', exact: true });
      if (await page.locator('.build-card').isVisible()) await setOut.click();
      const tape = page.locator('.row-tape summary').first();
      if ((await page.locator('.set-out').count()) > 0) await tape.click();
      await drawn(page);
    },
  },
  {
    name: 'build-more',
    go: async (page) => {
      const card = page.locator('.build-card');
      if (!(await card.isVisible())) return;
      await card.getByRole('button', { name: 'More', exact: true }).click();
      await page.locator('.checklist').waitFor();
    },
  },
  {
    name: 'records',
    go: async (page) => {
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('menuitem', { name: 'Records of the field…' }).click();
      await page.getByRole('dialog', { name: 'Records of the field' }).waitFor();
    },
  },
  {
    name: 'open-items',
    go: async (page) => {
      await page.getByRole('button', { name: 'Open items and handover', exact: true }).click();
      await page.getByRole('list', { name: 'Open items' }).locator('li').first().waitFor();
    },
  },
  ...tables.map((name) => ({
    name: `table-${name.toLowerCase().replace(' ', '-')}`,
    go: async (page: Page) => {
      if (name === 'Runs') {
        await shutDialog(page);
        await station(page, 'Lay out');
      }
      await table(page, name);
    },
  })),
  {
    name: 'one-line',
    go: async (page) => {
      await page.locator('.drawer-bar button', { hasText: /^One-line/ }).click();
      await page.getByRole('region', { name: 'One-line' }).getByText('208Y/120 V, 3 phase').first().waitFor();
    },
  },
  {
    name: 'charging-day',
    go: async (page) => {
      await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
      const make = page.getByRole('button', { name: 'Make the day', exact: true });
      if (await page.locator('.day-says').isHidden()) await make.click();
      await page.locator('.day-says').waitFor();
    },
  },
  {
    name: 'panel-schedule',
    go: (page) => table(page, 'Panels'),
  },
];
