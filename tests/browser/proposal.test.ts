import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { plan } from '../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { propose } from '../../calc/propose/propose.ts';
import { startSite } from '../../calc/propose/start-site.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { hospitalLot } from '../bench/samples/hospital-lot.ts';
import { libraryLot } from '../bench/samples/library-lot.ts';
import { opener } from './open.ts';
import { ready, seriousFaults } from './open-page.ts';

const open = opener();

/** What stands on the ground, and nothing that is installed but the source. */
function bare({
  drops,
  chargers,
  raceways,
  pullpoints,
  feeders,
  loads,
  asBuilt,
  keepouts,
  ...file
}: SiteFile): SiteFile {
  return { ...file, equipment: (file.equipment ?? []).filter(({ kind }) => kind === 'source') };
}

async function openSite(page: Page, file: SiteFile): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: /^A site file/ }).click();
  const buffer = Buffer.from(JSON.stringify(file));
  await (await choosing).setFiles({ name: 'ground.site.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { level: 1, name: file.name }).waitFor();
  await ready(page);
}

test('from bare ground a proposal draws the lot in, says how good it is, and undo takes it away in one step', async () => {
  const { page, offences, close } = await open();
  await openSite(page, bare(libraryLot()));
  const ledger = page.locator('.ledger');
  await ledger.getByText('0 of 16').waitFor();
  await page.locator('summary', { hasText: 'Propose what is missing' }).click();
  const form = page.getByRole('region', { name: 'Propose' });
  await form.getByRole('button', { name: 'Propose drops, panels and raceways' }).click();
  await ledger.getByText('16 of 16', { exact: true }).waitFor();
  const fails = ledger.locator('.cell', { hasText: 'fails' }).locator('dd');
  await expect.poll(() => fails.textContent()).toBe('0');
  const said = await page.getByTestId('proposed').textContent();
  for (const words of [
    '16 drops for 16 stalls',
    'P1, 225 A',
    'All chargers run at full rate',
    'proved the least',
    'of the best',
    // The lot has a charging day: it stands beside the price.
    'The lot comes to $',
    'Charging day workplace: ',
    'kWh a car in its stay',
  ])
    expect(said).toContain(words);
  expect(await seriousFaults(page)).toEqual([]);
  await page.getByRole('button', { name: /^Undo ?: draw in/i }).click();
  await ledger.getByText('0 of 16').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('long work says how far it is, stops when asked, and what is ready may be kept', async () => {
  const { page, offences, close } = await open();
  await openSite(page, bare(hospitalLot()));
  await page.locator('summary', { hasText: 'Propose what is missing' }).click();
  const form = page.getByRole('region', { name: 'Propose' });
  await form.getByRole('button', { name: /^Propose drops/ }).click();
  const status = form.getByRole('status');
  await status.getByText(/Looking for routes, \d+ of \d+ done/).waitFor();
  await form.getByRole('button', { name: 'Stop, and draw in what is ready' }).click();
  await page.locator('.ledger').getByText('0 of 240').waitFor();
  await page.getByRole('button', { name: /^Undo ?: draw in/i }).waitFor();
  await expect.poll(() => page.getByTestId('proposed').textContent()).toContain('240 drops for 240 stalls');
  await form.getByRole('button', { name: 'Propose drops, panels and raceways' }).click();
  await form.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect.poll(() => form.getByRole('status').count()).toBe(0);
  expect(offences).toEqual([]);
  await close();
});

/** Four stalls with all that they need, whose longest branch has less than 3 ft to spare; and the drop at its end. */
function tightLot(): { readonly file: SiteFile; readonly drop: string } {
  const wish = { what: 'all', cordsADrop: 1, prices: INVENTED_LIST } as const;
  const { file } = propose(startSite({ name: 'Tight', stalls: 4, rows: 1 }), wish);
  const { runs } = plan(toSite(file));
  const { drop, conductorLength } = runs.reduce((a, b) => (b.conductorLength! > a.conductorLength! ? b : a));
  const branchLimit = Math.ceil(conductorLength!) + 2;
  return { drop, file: { ...file, rules: { ...file.rules, branchLimit } } };
}

test('a move that makes a branch too long is offered a mend with both prices; it is one step; and a part is proposed anew', async () => {
  const { file, drop } = tightLot();
  const { page, offences, close } = await open();
  await openSite(page, file);
  await page.getByTestId('board').focus();
  const heading = page.getByTestId('selection-panel').getByRole('heading', { level: 2 });
  for (let i = 0, chosen: string | null = null; i < 4 && chosen !== drop; i++) {
    await page.keyboard.press('.');
    await expect.poll(() => heading.textContent()).not.toBe(chosen);
    chosen = await heading.textContent();
  }
  await expect.poll(() => heading.textContent()).toBe(drop);
  const place = () => page.getByTestId('selection-panel').getByLabel('x', { exact: true }).first().inputValue();
  const drawn = await place();
  for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowRight');
  const moved = await place();
  expect(moved).not.toBe(drawn);
  const offer = page.locator('.alert', { hasText: 'That broke' });
  await offer.waitFor();
  const said = await offer.textContent();
  for (const words of ['over its limit', 'Left as drawn: $', 'finding fails', 'Mended: $', 'nothing fails'])
    expect(said).toContain(words);
  // What the mend is said to cost less or more is what the two prices differ by.
  const [, left, mended, off, way] =
    /Left as drawn: \$([\d,.]+\d).*Mended: \$([\d,.]+\d), \$([\d,.]+\d) (less|more)/s.exec(said!) ?? [];
  const figure = (words: string | undefined): number => Number(words!.replace(/,/g, ''));
  expect(figure(left) - figure(mended)).toBeCloseTo((way === 'less' ? 1 : -1) * figure(off), 6);
  expect(await seriousFaults(page)).toEqual([]);
  await offer.getByRole('button', { name: 'Mend it' }).click();
  await expect.poll(() => offer.count()).toBe(0);
  await expect.poll(() => place()).not.toBe(moved);
  await page.getByRole('button', { name: /^Undo ?: mend what the move broke/i }).click();
  await expect.poll(() => place()).toBe(moved);

  // The same part, asked for by hand.
  await page.locator('summary', { hasText: 'Propose anew' }).click();
  const form = page.getByRole('region', { name: 'Propose anew' });
  await form.getByRole('button', { name: `Propose anew ${drop}` }).click();
  await form.getByText(/^The lot came to \$.*1 finding fails; now \$.*nothing fails\.$/).waitFor();
  await expect.poll(() => place()).not.toBe(moved);
  await page.getByRole('button', { name: /^Undo ?: propose anew/i }).click();
  await expect.poll(() => place()).toBe(moved);
  expect(offences).toEqual([]);
  await close();
});
