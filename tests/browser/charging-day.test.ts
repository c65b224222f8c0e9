import { expect, test } from 'vitest';
import { opener } from './open.ts';

const open = opener();

test('a day opens, its ceiling dragged, held to and undone; the least limit is found in a worker that can be stopped', async () => {
  const { page, offences, close } = await open();
  await page.locator('.drawer-bar button', { hasText: /^Charging day/ }).click();
  const says = page.locator('.day-says');
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();

  // Lower and lower leaves more of them short, at once.
  const ceiling = page.locator('.day-ceiling input');
  const short = async (amps: number): Promise<number> => {
    await ceiling.fill(String(amps));
    const text = (await says.textContent()) ?? '';
    return Number(/(\d+) of \d+ cars? leave/.exec(text)?.[1] ?? 0);
  };
  const shorts = [];
  for (const amps of [200, 100, 60, 20]) shorts.push(await short(amps));
  expect(shorts).toEqual(shorts.toSorted((a, b) => a - b));
  expect(shorts.at(-1)).toBeGreaterThan(4);

  // The dragged figure is a question until it is taken.
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  await page.getByRole('button', { name: 'Hold P1 to 20 A' }).click();
  await page.getByText('what if it were 20 A').waitFor();
  await undo.click();
  await page.getByText('what if it were 320 A').waitFor();
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();

  // A row is chosen for the board.
  await page.locator('.day-row').nth(2).click();
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2 }).waitFor();
  await page.locator('.day-row-ground[data-chosen=true]').first().waitFor();

  const find = page.getByRole('button', { name: /^Find the best there could be/ });
  await find.click();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await find.click();
  const best = page.locator('.day-best');
  await best.getByText('the least limit with which one serves all is').waitFor();
  const told = (await best.textContent()) ?? '';
  const least = Number(/serves all is ([\d.]+) A/.exec(told)![1]);
  const ofRules = Array.from(told.matchAll(/: (\d+) A serves all/g), ([, amps]) => Number(amps));
  expect(ofRules).toHaveLength(4);
  for (const one of ofRules) expect(one).toBeGreaterThanOrEqual(Math.floor(least));
  await page
    .getByRole('button', { name: `Hold P1 to ${ofRules[0]} A` })
    .first()
    .click();
  await says.filter({ hasText: 'nobody leaves with less' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});
