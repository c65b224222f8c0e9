import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readSite } from '../../routing/site/file/read.ts';
import { emptySite, handOn, savedText } from './draw-lot-page.ts';
import { opener } from './open.ts';

const open = opener();

/** A picture of a step for the README, where OVERROW_FILM names a folder for them. */
async function film(page: Page, step: string): Promise<void> {
  const folder = process.env.OVERROW_FILM;
  if (folder) await page.screenshot({ path: `${folder}/${step}.png` });
}

test('a 24-stall double-loaded lot is drawn from nothing and nothing in it fails', async () => {
  const { page, offences, close } = await open();
  const hand = handOn(page);
  await emptySite(page);

  // Two rows head to head, 12 to a row, with a van stall and an accessible one; the length is typed.
  await hand.key('s');
  await hand.fill('rows', 'heads');
  await hand.fill('van accessible at', '1');
  await hand.fill('accessible at', '13');
  await hand.click([-57, -18]);
  await hand.move([0, -18]);
  await hand.type("11' 6 * 10");
  await expect.poll(() => hand.words()).toBe('24 stalls, 12 to a row; 115\' 0" along, 36\' 0" across');
  await film(page, '1-stalls');
  await hand.key('Enter');

  await hand.key('c');
  await hand.fill('bays of', "115' / 4");
  await hand.drag([-57, 0], [58, 0]);
  await expect.poll(() => hand.words()).toContain('4 bays');
  await film(page, '2-canopy');
  await hand.key('Enter');

  await hand.key('e');
  await hand.fill('kind', 'source');
  await hand.click([-80, -10]);
  await hand.key('Enter');
  const form = page.getByTestId('draw-panel');
  await expect.poll(() => form.getByLabel('kind', { exact: true }).inputValue()).toBe('panelboard');
  await expect.poll(() => form.getByLabel('fed from', { exact: true }).inputValue()).toBe('SVC');
  await hand.click([-64, 0]);
  await hand.key('Enter');

  // The feeder's raceway in the ground, then the branches' overhead: up from the panel, along one row, and a leg to the other.
  await hand.key('r');
  await hand.fill('place', 'underground');
  await hand.click([-80, -10]);
  await hand.click([-64, 0]);
  await hand.key('Enter');
  await hand.fill('place', 'overhead');
  for (const vertex of [
    [-64, 0],
    [-57, 0],
    [-57, 9],
    [58, 9],
  ] as const)
    await hand.click(vertex);
  await expect.poll(() => hand.words()).toContain('since P1');
  await film(page, '3-raceway');
  await hand.key('Enter');
  for (const vertex of [
    [-57, 0],
    [-57, -9],
    [58, -9],
  ] as const)
    await hand.click(vertex);
  await hand.key('Enter');

  await hand.key('j');
  await hand.drag([-60, -22], [62, 22]);
  await hand.key('d');
  await hand.press('Give each of 24 stalls its drop and charger');
  // Opening the empty site takes two clicks more.
  expect(hand.actions() + 2).toBeLessThanOrEqual(39);
  await hand.key('Escape', 'Escape');

  const ledger = page.locator('.ledger');
  await ledger.getByText('24 of 24', { exact: true }).waitFor();
  await film(page, '4-drops');
  const fails = ledger.locator('.cell', { hasText: 'fails' }).locator('dd');
  await expect.poll(() => fails.textContent()).toBe('0');
  await expect.poll(() => page.getByRole('button', { name: /^Undo ?: add 24 drops/ }).count()).toBe(1);

  const read = readSite(await savedText(page));
  expect(read.ok).toBe(true);
  if (!read.ok) return;
  const { file } = read;
  expect(file.stalls!.map(({ label }) => label)).toEqual(
    Array.from({ length: 24 }, (_, i) => String(i + 1).padStart(2, '0')),
  );
  expect(file.raceways!.map(({ method }) => method)).toEqual(['PVC40', 'EMT', 'EMT']);
  expect(file.feeders!.map(({ from, to }) => [from, to])).toEqual([['SVC', 'P1']]);
  expect(file.chargers!.map(({ stalls }) => stalls)).toEqual(file.stalls!.map(({ id }) => [id]));
  expect(file.gridlines).toEqual({
    x: [-57, -28.25, 0.5, 29.25, 58].map((at, i) => ({ label: String(i + 1), at })),
    y: [{ label: 'A', at: 0 }],
  });
  expect(file.raceways!.map(({ path }) => path)).toEqual([
    [
      [-80, -10, 0],
      [-80, -10, -2],
      [-64, 0, -2],
      [-64, 0, 6],
    ],
    [
      [-64, 0, 6],
      [-64, 0, 11],
      [-57, 0, 11],
      [-57, 9, 11],
      [58, 9, 11],
    ],
    [
      [-57, 0, 11],
      [-57, -9, 11],
      [58, -9, 11],
    ],
  ]);
  expect(offences).toEqual([]);
  await close();
});

test('a note, a dimension and a cloud are drawn, changed in form and by handle, found, taken back and kept', async () => {
  const { page, offences, close } = await open();
  const hand = handOn(page);
  await emptySite(page);
  const panel = page.getByTestId('selection-panel');
  const undo = (what: RegExp) => page.getByRole('button', { name: what }).waitFor();
  await hand.key('l');
  await hand.fill('text', 'By the owner');
  await hand.click([0, 0]);
  await hand.click([-12, 9]);
  await undo(/^Undo ?: add note N01/);
  // It snaps to what stands: the tip of the note is where the dimension begins.
  await hand.key('i', 'x');
  await hand.click([0.2, 0.1]);
  await hand.click([18, 0]);
  await undo(/^Undo ?: add dimension DIM01/);
  await hand.key('u');
  // Its upper side lines up with the text of the note.
  await hand.drag([24, 2], [34, 9.3]);
  await hand.fill('mark', 'B');
  await hand.key('Enter', 'Escape');
  await undo(/^Undo ?: add cloud CL01/);
  // A corner by its handle, the mark by its form.
  await expect.poll(() => panel.textContent()).toContain('CL01');
  await hand.drag([34, 9], [36, 13]);
  await undo(/^Undo ?: move corner of CL01/);
  await panel.getByLabel('mark', { exact: true }).fill('C');
  await panel.getByLabel('mark', { exact: true }).press('Enter');
  // The line of a dimension, chosen by a click on it, goes to and fro.
  await hand.key('Escape');
  await hand.click([4, -3]);
  await expect.poll(() => panel.textContent()).toContain('DIM01');
  await expect.poll(() => panel.textContent()).toContain(`18' 0"`);
  await hand.drag([9, -3], [9, -6]);
  await undo(/^Undo ?: move line of DIM01/);
  // A note is found by its words.
  await hand.key('g');
  await page.keyboard.type('owner');
  await page.keyboard.press('Enter');
  await panel.getByText('N01').first().waitFor();
  await panel.getByLabel('text', { exact: true }).fill('By the owner, 2 ft up');
  await panel.getByLabel('text', { exact: true }).press('Enter');
  const read = readSite(await savedText(page));
  expect(read.ok && [read.file.notes, read.file.dimensions, read.file.clouds]).toEqual([
    [{ id: 'N01', at: [-12, 9], text: 'By the owner, 2 ft up', to: [0, 0] }],
    [{ id: 'DIM01', from: [0, 0], to: [18, 0], offset: -6 }],
    [
      {
        id: 'CL01',
        outline: [
          [24, 2],
          [34, 2],
          [36, 13],
          [24, 9],
        ],
        mark: 'C',
      },
    ],
  ]);
  // All of it is deleted and taken back.
  await hand.key('Delete');
  await undo(/^Undo ?: delete note N01/);
  await page.keyboard.press('Control+z');
  await undo(/^Undo ?: (set|change)/);
  expect(offences).toEqual([]);
  await close();
});
