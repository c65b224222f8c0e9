import { startSite } from '../../calc/propose/start-site.ts';
import { writeSite } from '../../routing/site/file/write.ts';
import { onScreen } from './open-page.ts';
import { board, button, pressOnBoard, type Screen, sample, shutTables, station, table } from './screen-acts.ts';

/** Those that are reached from there, each soon from the last. */
export const LATER_SCREENS: readonly Screen[] = [
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
      await button(page, 'Work out the ways of it anew').waitFor();
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
