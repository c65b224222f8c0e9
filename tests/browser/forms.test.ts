import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen, ready } from './open-page.ts';
import { drawn } from './screen-acts.ts';

const open = opener();

const panel = (page: Page) => page.getByTestId('selection-panel');
const boardBox = async (page: Page) => (await page.getByTestId('board').boundingBox())!;

async function key(page: Page, ...keys: readonly string[]): Promise<void> {
  await page.getByTestId('board').focus();
  for (const each of keys) await page.keyboard.press(each);
}

async function take(page: Page, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  await page.mouse.move(...(await onScreen(page, from)));
  await page.mouse.down();
  await page.mouse.move(...(await onScreen(page, to)), { steps: 4 });
  await page.mouse.up();
}

test('what is too much is said by the field, and nothing is made less in silence', async () => {
  const { page, close } = await open();
  const form = page.getByTestId('draw-panel');
  const refused = async (label: string, text: string, says: string): Promise<void> => {
    const field = form.getByLabel(label, { exact: true });
    const before = await field.inputValue();
    await field.fill(text);
    await field.press('Enter');
    const alert = form.getByRole('alert');
    await expect.poll(() => alert.textContent()).toContain(says);
    expect(Number.parseFloat(await alert.evaluate((each) => getComputedStyle(each).fontSize))).toBeGreaterThanOrEqual(
      13,
    );
    await field.press('Escape');
    await expect.poll(() => field.inputValue()).toBe(before);
  };
  await key(page, 's');
  await refused('stalls', '10000', '500 or less');
  await refused('depth', "99999'", `100' 0" or less`);
  await key(page, 'c');
  await refused('bays of', "9999'", `200' 0" or less`);
  await key(page, 'Escape', 'Control+a');
  await page.locator('.arrange summary', { hasText: 'Move, copy, turn' }).click();
  const array = panel(page).getByRole('region', { name: 'Array' });
  const says = array.getByTestId('array-says');
  const act = array.getByRole('button', { name: 'Array' });
  await expect.poll(() => says.textContent()).toBe('1 copy of 16 elements beside what is selected.');
  await array.getByLabel('copies across', { exact: true }).fill('1000');
  await array.getByLabel('copies across', { exact: true }).press('Enter');
  await expect.poll(() => says.textContent()).toContain('16,000 elements are more than an array makes at once');
  await expect.poll(() => act.isDisabled()).toBe(true);
  await array.getByLabel('copies across', { exact: true }).fill('1');
  await array.getByLabel('copies across', { exact: true }).press('Enter');
  await expect.poll(() => says.textContent()).toContain('two places or more');
  await array.getByLabel('copies across', { exact: true }).fill('10000');
  await expect.poll(() => array.getByRole('alert').textContent()).toContain('1000 or less');
  await close();
});

test('a box whose x is typed takes its retractor along; the retractor alone does not take the box', async () => {
  const { page, close } = await open();
  await key(page, '.', '.', '.', '.', '.');
  const place = (name: string, axis: string) => page.getByRole('group', { name }).getByLabel(axis, { exact: true });
  await expect.poll(() => place('box', 'x').inputValue()).toBe(`52' 0"`);
  await place('box', 'x').fill("55' 6");
  await place('box', 'x').press('Enter');
  await expect.poll(() => place('retractor', 'x').inputValue()).toBe(`55' 6"`);
  await expect.poll(() => place('retractor', 'y').inputValue()).toBe(`9' 0"`);
  await place('retractor', 'y').fill("8'");
  await place('retractor', 'y').press('Enter');
  await expect.poll(() => place('box', 'y').inputValue()).toBe(`9' 0"`);
  // A place far out is shown whole.
  await place('box', 'x').fill(`-1194' 11 15/16"`);
  await place('box', 'x').press('Enter');
  for (const name of ['box', 'retractor'])
    expect(
      await page
        .getByRole('group', { name })
        .locator('input')
        .evaluateAll((inputs) => inputs.filter((input) => input.scrollWidth > input.clientWidth + 1).length),
    ).toBe(0);
  await close();
});

test.each([
  [1280, 800],
  [1440, 900],
] as const)('at %i by %i no tool makes the bar higher or takes the way to the others', async (width, height) => {
  const { page, close } = await open({ width, height });
  const bar = page.getByRole('toolbar', { name: 'The board' });
  const other = bar.getByRole('button', { name: 'Other' });
  const high = (await bar.boundingBox())!.height;
  for (const each of ['k', 'a', 'p', 'b', 'o', 'c', 'm']) {
    await key(page, each);
    expect((await bar.boundingBox())!.height).toBe(high);
    await expect.poll(() => other.locator('.menu-mark').isVisible()).toBe(true);
  }
  await other.click();
  await expect
    .poll(() => page.getByRole('menuitem').allTextContents())
    .toEqual(expect.arrayContaining(['Keep-outK', 'AisleA', 'ColumnO']));
  await page.keyboard.press('Escape');
  // The name of what would be undone stands there whole.
  await key(page, 'j', '.', '.', '.', '.', '.');
  await page.getByLabel('cord', { exact: true }).fill("21'");
  await page.getByLabel('cord', { exact: true }).press('Enter');
  const past = bar.locator('.past-name').first();
  await past.waitFor();
  expect(
    await past.evaluate((each) => [each.scrollHeight - each.clientHeight, each.scrollWidth - each.clientWidth]),
  ).toEqual([0, 0]);
  expect((await bar.boundingBox())!.height).toBe(high);
  await close();
});

test('a light pole is a keep-out at one press; a box tells its sides; what cannot be finished says why', async () => {
  const { page, offences, close } = await open();
  const form = page.getByTestId('draw-panel');
  await key(page, 'k');
  const { x, y } = await boardBox(page);
  await page.mouse.move(x + 200, y + 60);
  await page.mouse.down();
  await page.mouse.move(x + 260, y + 90, { steps: 3 });
  await expect.poll(() => page.getByTestId('draw-words').textContent()).toMatch(/^\d+' [^;]*" by \d+' [^;]*"; /);
  await page.mouse.up();
  await key(page, 'Escape');
  await page.mouse.click(x + 200, y + 60);
  await page.mouse.move(x + 260, y + 60, { steps: 2 });
  await page.mouse.click(x + 260, y + 60);
  await key(page, 'Enter');
  await page.locator('.notice', { hasText: 'in one line' }).waitFor();
  await key(page, 'Escape');
  await form.getByLabel('drawn', { exact: true }).selectOption({ label: 'round, at one press' });
  await expect.poll(() => form.getByLabel('across', { exact: true }).inputValue()).toBe(`2' 0"`);
  await page.mouse.click(x + 300, y + 60);
  await page.getByRole('button', { name: /^Undo ?: add keep-out/ }).waitFor();
  await key(page, 'Escape');
  const corners = panel(page).getByRole('group', { name: /^corner / });
  await expect.poll(() => corners.count()).toBe(12);
  expect(offences).toEqual([]);
  await close();
});

test('drops that are numbered anew stay selected', async () => {
  const { page, close } = await open();
  await key(page, 'Control+a');
  await page.locator('summary', { hasText: 'Renumber' }).click();
  const form = panel(page).getByRole('region', { name: 'Renumber' });
  await form.getByLabel('of these').selectOption({ label: '16 drops' });
  await form.getByLabel('prefix', { exact: true }).fill('Z-');
  await form.getByLabel('prefix', { exact: true }).press('Enter');
  await form.getByRole('button', { name: 'Renumber 16 drops' }).click();
  await page.getByRole('button', { name: /^Undo ?: renumber 16 drops/ }).waitFor();
  await expect.poll(() => panel(page).getByRole('heading', { level: 2 }).textContent()).toBe('16 drops');
  await close();
});

test('a finding about many chargers selects every drop of them, and its cure is what the form offers', async () => {
  const { page, close } = await open();
  const finding = page.locator('.finding', { hasText: /pilots of 16 chargers/ });
  const cure = "Put the pilot's source at the drop";
  await expect.poll(() => finding.textContent()).toContain(cure);
  await finding.locator('button.place').click();
  await expect.poll(() => panel(page).getByRole('heading', { level: 2 }).textContent()).toBe('16 drops');
  const pilot = panel(page).getByLabel('pilot', { exact: true });
  await expect.poll(() => pilot.locator('option').allTextContents()).toContain('source at the drop');
  await pilot.selectOption({ label: 'source at the drop' });
  await key(page, 'Escape');
  await finding.waitFor({ state: 'detached' });
  await close();
});

test('of a mixed selection one kind is left at one press, and the stalls get their drops from the top', async () => {
  const { page, close } = await open();
  await take(page, [30, 14], [46, 5]);
  await key(page, 'Delete');
  await take(page, [-9, 30], [84, -30]);
  const give = page.getByRole('button', { name: /^Give each of \d+ stalls/ });
  const { y, height } = (await give.boundingBox())!;
  expect(y + height).toBeLessThan(260);
  await page.getByRole('button', { name: 'Only the 4 columns' }).click();
  await expect.poll(() => panel(page).getByRole('heading', { level: 2 }).textContent()).toBe('4 columns');
  await close();
});

test('groups of fields fold and stay folded, for the next of their kind and after a reload', async () => {
  const { page, close } = await open();
  await key(page, '.', '.', '.', '.', '.');
  const summary = panel(page).locator('.group > summary');
  await panel(page).getByText('Charger EV05').waitFor();
  await expect
    .poll(() => summary.allTextContents())
    .toEqual(['Where it hangs', 'Pull of the cord', 'Picture of its reach', 'Charger EV05']);
  // Folded and left within one turn, sooner than the browser tells of the fold.
  await summary.filter({ hasText: 'Charger' }).evaluate((it: HTMLElement) => {
    it.click();
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: '.', bubbles: true }));
  });
  await panel(page).getByText('Charger EV06').waitFor();
  await expect.poll(() => panel(page).getByLabel('rated', { exact: true }).isVisible()).toBe(false);
  await page.reload();
  await ready(page);
  await key(page, '.', '.', '.', '.', '.');
  await panel(page).getByText('Charger EV05').waitFor();
  await expect.poll(() => panel(page).getByLabel('rated', { exact: true }).isVisible()).toBe(false);
  await expect.poll(() => panel(page).getByLabel('cord', { exact: true }).isVisible()).toBe(true);
  await close();
});

test('the main act of a form is filled and the others have an edge', async () => {
  const { page, close } = await open();
  await key(page, 'r');
  const { x, y } = await boardBox(page);
  await page.mouse.click(x + 100, y + 60);
  await drawn(page);
  const look = (name: string) =>
    page.getByRole('button', { name, exact: true }).evaluate((button) => {
      const { backgroundColor, color, borderTopColor } = getComputedStyle(button);
      return { backgroundColor, color, borderTopColor };
    });
  const ink = await page.evaluate(() => getComputedStyle(document.body).color);
  expect((await look('Set')).backgroundColor).toBe(ink);
  const away = await look('Throw away');
  // On the board, where the hand is.
  const acts = (await page.locator('.draw-acts').boundingBox())!;
  const paper = await boardBox(page);
  expect(acts.x + acts.width).toBeLessThan(paper.x + paper.width);
  expect(acts.y + acts.height).toBeLessThan(paper.y + paper.height);
  expect(away.backgroundColor).not.toBe(ink);
  expect(away.borderTopColor).not.toBe('rgba(0, 0, 0, 0)');
  await close();
});
