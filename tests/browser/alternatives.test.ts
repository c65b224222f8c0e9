import { expect, test } from 'vitest';
import { opener } from './open.ts';

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
