import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';

const open = opener();

/** Fields that hold words, names, days or lists of places. All others hold a number or a length. */
const WORDS =
  /^(name|title|note|label|mark|date|issued as|issued for|project number|client|address|authority having jurisdiction|drawn by|area name|scope of work|general note|checked by|class|inlet|hangs at drop|series rated with|serves stalls|checked on|initials|what stays|.*prefix|.*label.*|code|.*accessible.*|.*places?)$/;

interface Tried {
  readonly name: string;
  readonly wrong: string | null;
  readonly says: string | undefined;
}

/** Types arithmetic, then nonsense, into every field of the ledger that takes a number; tells what each made of it. */
const tryAll = (page: Page): Promise<readonly Tried[]> =>
  page.locator('.ledger').evaluate(async (ledger, words) => {
    for (const details of ledger.querySelectorAll('details')) details.open = true;
    await new Promise((done) => requestAnimationFrame(done));
    const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
    const type = (input: HTMLInputElement, text: string): void => {
      setter?.call(input, text);
      input.dispatchEvent(new Event('input', { bubbles: true }));
    };
    return [...ledger.querySelectorAll<HTMLInputElement>('.field > input')].flatMap((input) => {
      const field = input.parentElement!;
      const name = field.querySelector('label')!.textContent;
      if (new RegExp(words).test(name)) return [];
      // A factor is a share of one.
      type(input, name.endsWith(' factor') ? '(1 + 2) / 4' : '(1 + 2) * 4 / 2');
      const wrong = input.getAttribute('aria-invalid');
      type(input, 'north');
      const says = field.querySelector('[role=alert]')?.textContent;
      input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
      return [{ name, wrong, says }];
    });
  }, WORDS.source);

test('every field of every form that takes a number takes arithmetic, and names itself where it cannot be read', async () => {
  const { page, offences, close } = await open();
  const text = readFileSync('tests/routing/site/fixtures/every-field.site.json', 'utf8');
  await page.evaluate((content) => {
    const files = new DataTransfer();
    files.items.add(new File([content], 'every-field.site.json'));
    document.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
  }, text);
  await page.getByRole('heading', { level: 1, name: 'Every field (invented)' }).waitFor();
  const board = page.getByTestId('board');
  const panel = page.getByTestId('selection-panel');
  const seen = new Map<string, readonly Tried[]>();

  for (let i = 0; i < 60; i++) {
    await board.focus();
    await page.keyboard.press('.');
    const id = (await panel.locator('h2').textContent())!;
    if (seen.has(id)) break;
    seen.set(id, await tryAll(page));
  }
  // What has no place on the board is reached through the equipment that it hangs on.
  for (const link of ['F1', 'F2', 'L1']) {
    const way = panel.getByRole('button', { name: link, exact: true });
    for (let i = 0; i < 60 && (await way.count()) === 0; i++) {
      await board.focus();
      await page.keyboard.press('.');
    }
    await way.click();
    await panel.getByRole('heading', { level: 2, name: link }).waitFor();
    seen.set(link, await tryAll(page));
  }
  await page.keyboard.press('Escape');
  await board.focus();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+a');
  seen.set('several', await tryAll(page));
  await board.focus();
  await page.keyboard.press('Escape');
  seen.set('site', await tryAll(page));
  for (const tool of ['s', 'c', 'e', 'r', 'd', 'k', 'a', 'p', 'b', 'o']) {
    await board.focus();
    await page.keyboard.press('Escape');
    await page.keyboard.press(tool);
    const form = page.getByTestId('draw-panel');
    await form.waitFor();
    if (tool === 'c') {
      await form.getByLabel('columns in').selectOption('2');
      await form.getByLabel('form', { exact: true }).selectOption('one slope');
    }
    seen.set(`draw ${tool}`, await tryAll(page));
  }
  const tried = [...seen].flatMap(([where, fields]) => fields.map((field) => ({ where, ...field })));
  // Every kind of element, and what is measured in amps, volts, degrees, kVA, shares and counts among it.
  expect(seen.size).toBeGreaterThanOrEqual(16 + 2 + 10);
  expect(tried.map(({ where, name }) => `${where}: ${name}`)).toEqual(
    expect.arrayContaining(['D01: rated', 'T1: size', 'T1: impedance', 'S01: heading', 'P1: pole spaces']),
  );
  expect(tried.map(({ where, name }) => `${where}: ${name}`)).toEqual(
    expect.arrayContaining([
      'F1: breaker',
      'L1: draws',
      'R1: ambient',
      'site: turned by',
      'site: coverage of a served stall',
      'draw c: tilt',
    ]),
  );
  expect(tried.filter(({ wrong }) => wrong !== 'false')).toEqual([]);
  expect(tried.filter(({ name, says }) => !says?.startsWith(`${name}: `))).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});
