import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { KEYS } from '../../web/page/key-list.ts';
import { opener } from './open.ts';

const open = opener();

const SIGNS = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i));
const NAMED = ' ,ArrowLeft,ArrowRight,ArrowUp,ArrowDown,Enter,Backspace,Delete,Escape,Home,End,PageUp,PageDown'.split(
  ',',
);
const LETTERS = SIGNS.filter((sign) => /[a-z]/.test(sign));
const FIGURES = SIGNS.filter((sign) => /\d/.test(sign));
/** Every key that might do something, with the keys held with it. */
const TRIED = [
  ...SIGNS,
  ...NAMED,
  ...NAMED.filter((name) => name.startsWith('Arrow')).map((name) => `Shift+${name}`),
  ...LETTERS.flatMap((letter) => [`Ctrl+${letter}`, `Ctrl+Shift+${letter}`, `Alt+${letter}`]),
  ...FIGURES.flatMap((figure) => [`Ctrl+${figure}`, `Alt+${figure}`]),
];

/** Whether the page takes a key on the board for its own. `before` are pressed ahead of it, Escape twice after. */
const taken = (page: Page, combo: string, before: readonly string[]): Promise<boolean> =>
  page.evaluate(
    ({ combo, before }) => {
      const board = document.querySelector<HTMLElement>('.board-paper')!;
      const send = (type: 'keydown' | 'keyup', keys: string): boolean => {
        const parts = /^((?:(?:Ctrl|Shift|Alt)\+)*)(.+)$/s.exec(keys)!;
        const held = parts[1]!;
        const key = parts[2]!;
        return !board.dispatchEvent(
          new KeyboardEvent(type, {
            key,
            code: /^\d$/.test(key) ? `Digit${key}` : key,
            ctrlKey: held.includes('Ctrl'),
            shiftKey: held.includes('Shift') || /^[A-Z]$/.test(key),
            altKey: held.includes('Alt'),
            bubbles: true,
            cancelable: true,
          }),
        );
      };
      board.focus();
      for (const key of before) send('keydown', key);
      const took = send('keydown', combo);
      send('keyup', combo);
      document.querySelector<HTMLDialogElement>('dialog[open]')?.close();
      board.focus();
      for (let i = 0; i < 3; i++) send('keydown', 'Escape');
      return took;
    },
    { combo, before },
  );

const listed = (...wheres: readonly string[]): readonly string[] =>
  KEYS.flatMap(({ where, rows }) => (wheres.includes(where) ? rows.flatMap(({ presses }) => presses) : []));

// Files are asked for by these, and a test has no one to answer.
const ASKS = new Set(['Ctrl+o', 'Ctrl+s', 'Ctrl+Shift+s']);

test('every key that the board takes is in the list, and every one in the list is taken', async () => {
  const { page, close } = await open();
  const found = { idle: [] as string[], drawing: [] as string[] };
  for (const combo of TRIED) {
    if (ASKS.has(combo)) continue;
    if (await taken(page, combo, [])) found.idle.push(combo);
    if (await taken(page, combo, ['r', ' ', 'ArrowRight'])) found.drawing.push(combo);
  }
  // A raceway has no other side; a row of stalls has.
  if (await taken(page, 'x', ['s', ' ', 'ArrowRight'])) found.drawing.push('x');
  const sorted = (keys: readonly string[]): string[] => [...new Set(keys)].filter((key) => !ASKS.has(key)).sort();
  expect(sorted(found.idle)).toEqual(sorted(listed('Anywhere', 'On the board')));
  expect(sorted(found.drawing)).toEqual(sorted(listed('Anywhere', 'On the board', 'While drawing')));
  await close();
});

test('going back to selecting by its key sets what stands whole, and leaves no draft behind', async () => {
  const { page, close } = await open();
  const board = page.getByTestId('board');
  await board.focus();
  for (const key of ['e', 'Space', 'j']) await page.keyboard.press(key);
  await page.getByRole('button', { name: /^Undo ?: add equipment/ }).waitFor();
  await board.focus();
  for (const key of ['r', 'Space', 'ArrowRight', 'Space', 'j']) await page.keyboard.press(key);
  await expect.poll(() => page.getByTestId('draw-panel').count()).toBe(0);
  await expect.poll(() => page.getByRole('button', { name: /^Undo ?: add equipment/ }).count()).toBe(1);
  await close();
});
