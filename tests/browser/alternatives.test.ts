import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, ready } from './open-page.ts';

const open = opener();

test('a site that was never changed and the alternative branched from it are both kept, side by side', async () => {
  const { page, offences, close } = await open();
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await page.getByRole('button', { name: 'Branch the open site into an alternative' }).click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
  await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).click();
  const heads = page
    .getByRole('region', { name: 'Alternatives' })
    .or(page.getByLabel('Alternatives'))
    .locator('thead th');
  await expect
    .poll(() => heads.allTextContents())
    .toEqual(['figure', 'Alder Street Library lot, alternative 2 (open)', 'Alder Street Library lot']);
  await page.getByText('What the open site changes in Alder Street Library lot: no element').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('the comparison reads the other site as it is now, undone steps and all, also after a reload', async () => {
  const { page, offences, close } = await open();
  const branch = page.getByRole('button', { name: 'Branch the open site into an alternative' });
  const reopen = async (name: string): Promise<void> => {
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('menuitem', { name: new RegExp(`^${name}(?!, alternative)`) }).click();
    await page.getByRole('heading', { level: 1, name, exact: true }).waitFor();
  };
  const beside = page.locator('.compare-choice label');
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await branch.click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
  // All drops go, and come back but for the last two.
  await page.getByTestId('board').focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Delete');
  await page.getByRole('button', { name: /^Undo ?: delete/ }).waitFor();
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: /^Redo ?: delete/ }).waitFor();
  const [x, y] = await onScreen(page, [52, 9]);
  await page.mouse.click(x, y);
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'D05' }).waitFor();
  await page.keyboard.press('Delete');
  await page.getByRole('button', { name: /^Undo ?: delete/ }).waitFor();
  await reopen('Alder Street Library lot');
  const differs = page.getByText('What the open site changes in Alder Street Library lot, alternative 2: 2 added');
  for (const time of ['first', 'reloaded']) {
    if (time === 'reloaded') {
      await page.reload();
      await ready(page);
      await page.getByRole('button', { name: /^Alternatives/ }).click();
    }
    await beside.filter({ hasText: 'alternative 2' }).getByRole('checkbox').click();
    await differs.waitFor();
  }
  // A second branch of the same site has a name of its own.
  await branch.click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 3' }).waitFor();
  await expect
    .poll(() => beside.allTextContents())
    .toEqual(['Alder Street Library lot, alternative 2', 'Alder Street Library lot']);
  expect(offences).toEqual([]);
  await close();
});

test('what another tab changes in a site beside the open one is seen at once', async () => {
  const { page, close } = await open();
  await page.getByRole('button', { name: /^Alternatives/ }).click();
  await page.getByRole('button', { name: 'Branch the open site into an alternative' }).click();
  await page.getByRole('heading', { level: 1, name: 'Alder Street Library lot, alternative 2' }).waitFor();
  const other = await page.context().newPage();
  await other.goto(page.url());
  await ready(other);
  await other.getByRole('button', { name: 'Open', exact: true }).click();
  await other.getByRole('menuitem', { name: /^Alder Street Library lot(?!, alternative)/ }).click();
  await other.getByRole('heading', { level: 1, name: 'Alder Street Library lot', exact: true }).waitFor();
  await page.getByRole('checkbox', { name: 'Alder Street Library lot', exact: true }).click();
  await page.getByText('What the open site changes in Alder Street Library lot: no element').waitFor();
  const [x, y] = await onScreen(other, [52, 9]);
  await other.mouse.click(x, y);
  await other.keyboard.press('Shift+ArrowUp');
  await page.getByText(/What the open site changes in Alder Street Library lot: 1 moved/).waitFor();
  await close();
});
