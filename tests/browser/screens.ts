import type { Page } from 'playwright-core';
import { startSite } from '../../calc/propose/start-site.ts';
import { writeSite } from '../../routing/site/file/write.ts';
import { onScreen, ready } from './open-page.ts';

/** A screen that a person sees, reached from the one before it. */
export interface Screen {
  readonly name: string;
  readonly go: (page: Page) => Promise<void>;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const board = (page: Page) => page.getByTestId('board');

async function pressOnBoard(page: Page, keys: readonly string[]): Promise<void> {
  await board(page).focus();
  for (const key of keys) await page.keyboard.press(key);
  await drawn(page);
}

/** Waits until what was asked for is drawn. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

async function station(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name }).click();
}

async function table(page: Page, name: string): Promise<void> {
  const opener = page.locator('.drawer-bar button', { hasText: new RegExp(`^${name}`) });
  if ((await opener.getAttribute('aria-expanded')) !== 'true') await opener.click();
  await page.locator('#drawer-table tbody tr').first().waitFor();
}

async function shutDialog(page: Page): Promise<void> {
  await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
}

async function shutTables(page: Page): Promise<void> {
  const open = page.locator('.drawer-bar button[aria-expanded=true]');
  if ((await open.count()) > 0) await open.click();
}

async function sample(page: Page, name: string, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name, exact: true }).click();
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
  await ready(page);
  await station(page, 'Lay out');
  await shutTables(page);
}

const tables = ['Runs', 'Margins', 'Takeoff', 'Cost', 'Cuts', 'Setting out'] as const;

/** The screens in an order in which each is soon reached from the last. */
export const SCREENS: readonly Screen[] = [
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
  {
    name: 'row-chosen',
    go: async (page) => {
      await table(page, 'Runs');
      await page.locator('tr[data-row=EV11] th button').click();
    },
  },
  {
    name: 'find',
    go: async (page) => {
      await shutTables(page);
      await page.getByRole('button', { name: 'Find', exact: true }).click();
      await page.getByLabel('Name or label').fill('05');
      await page.getByRole('listitem').first().waitFor();
    },
  },
  {
    name: 'round-keep-out',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await pressOnBoard(page, ['k']);
      await page.getByTestId('draw-panel').getByLabel('drawn', { exact: true }).selectOption('round');
    },
  },
  {
    name: 'mixed',
    go: async (page) => {
      await pressOnBoard(page, ['Escape', 'f']);
      const [ax, ay] = await onScreen(page, [-2, 28]);
      const [bx, by] = await onScreen(page, [82, -28]);
      if ((page.viewportSize()?.width ?? 0) < 500) return;
      await page.mouse.move(ax, ay);
      await page.mouse.down();
      await page.mouse.move(bx, by, { steps: 4 });
      await page.mouse.up();
      await page
        .getByRole('button', { name: /^Only the/ })
        .first()
        .waitFor();
    },
  },
  {
    name: 'keys',
    go: async (page) => {
      await shutTables(page);
      await pressOnBoard(page, ['Escape', '?']);
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    },
  },
  {
    name: 'sheets-menu',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await button(page, 'Sheets').click();
    },
  },
  {
    name: 'open-menu',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Open', exact: true }).click();
    },
  },
  {
    name: 'kept-work',
    go: async (page) => {
      await page.getByRole('menuitem', { name: 'Kept work…' }).click();
      const dialog = page.getByRole('dialog', { name: 'Kept work' });
      await dialog.getByText(/^16 stalls, 16 drops/).waitFor();
    },
  },
  {
    name: 'site-form',
    go: async (page) => {
      await page.keyboard.press('Escape');
      for (const summary of await page.locator('details.site-form > summary').all()) await summary.click();
      await page.locator('section[aria-label="The site"]').evaluate((form) => form.scrollIntoView({ block: 'start' }));
    },
  },
  {
    name: 'problems',
    go: async (page) => {
      await page.evaluate(() => {
        const files = new DataTransfer();
        const text = JSON.stringify({ overrow: 1, name: 'Broken', stalls: [{ id: 'S1', width: 'wide' }] });
        files.items.add(new File([text], 'broken.site.json'));
        document.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
      });
      await page.getByRole('dialog').waitFor();
    },
  },
  {
    name: 'compare',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('.drawer-bar button', { hasText: /^Alternatives/ }).click();
      await button(page, 'Branch the open site into an alternative').click();
      await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
      await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).first().click();
      await page.getByText('What the open site changes').waitFor();
    },
  },
  {
    name: 'ways',
    go: async (page) => {
      const text = writeSite(startSite({ name: 'One stall', stalls: 1, rows: 1 }));
      await page.evaluate((content) => {
        const files = new DataTransfer();
        files.items.add(new File([content], 'two.site.json'));
        document.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
      }, text);
      await page.getByRole('heading', { level: 1, name: 'One stall' }).waitFor();
      await page.locator('.drawer-bar button', { hasText: /^Ways/ }).click();
      await button(page, 'Work out the ways').click();
      await button(page, 'Work out the ways of it anew').waitFor({ timeout: 60_000 });
      await page.locator('.way-card').getByRole('button', { name: 'W02', exact: true }).click();
    },
  },
  {
    name: 'hospital',
    go: (page) => sample(page, 'Hospital lot', 'Mill Creek Hospital lot'),
  },
  {
    name: 'finding',
    go: async (page) => {
      await page.locator('.finding[data-rule=branch-limit] button.place').click();
      await page.getByTestId('selection-panel').waitFor();
    },
  },
  {
    name: 'hospital-runs',
    go: (page) => table(page, 'Runs'),
  },
  {
    name: 'empty',
    go: async (page) => {
      await shutTables(page);
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('menuitem', { name: 'An empty site' }).click();
      await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
      await station(page, 'Lay out');
    },
  },
  {
    name: 'drawing',
    go: async (page) => {
      await pressOnBoard(page, ['s']);
      const box = (await board(page).boundingBox())!;
      await page.mouse.click(box.x + box.width * 0.25, box.y + box.height * 0.6);
      await page.mouse.move(box.x + box.width * 0.7, box.y + box.height * 0.6, { steps: 4 });
    },
  },
];
