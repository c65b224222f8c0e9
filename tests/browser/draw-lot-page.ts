import type { Page } from 'playwright-core';
import { onScreen } from './open-page.ts';

type Place = readonly [x: number, y: number];

/** The hand of a person who draws: places are feet of the plan. */
export function handOn(page: Page) {
  let actions = 0;
  const board = page.getByTestId('board');
  const form = page.getByTestId('draw-panel');
  const move = async (to: Place): Promise<void> => {
    const [x, y] = await onScreen(page, to);
    await page.mouse.move(x, y, { steps: 3 });
  };
  const click = async (at: Place): Promise<void> => {
    actions++;
    await move(at);
    await page.mouse.down();
    await page.mouse.up();
  };
  return {
    move,
    click,
    drag: async (from: Place, to: Place): Promise<void> => {
      actions++;
      await move(from);
      await page.mouse.down();
      await move(to);
      await page.mouse.up();
    },
    key: async (...keys: readonly string[]): Promise<void> => {
      actions += keys.length;
      await board.focus();
      for (const key of keys) await page.keyboard.press(key);
    },
    fill: async (label: string, value: string): Promise<void> => {
      actions++;
      const field = form.getByLabel(label, { exact: true });
      if ((await field.evaluate((element) => element.tagName)) === 'SELECT') await field.selectOption(value);
      else {
        await field.fill(value);
        await field.press('Enter');
      }
    },
    press: async (name: string): Promise<void> => {
      actions++;
      await page.getByRole('button', { name }).click();
    },
    /** A length typed where the draft ends, and Enter. */
    type: async (length: string): Promise<void> => {
      actions += 2;
      await page.keyboard.type(length);
      await page.keyboard.press('Enter');
    },
    /** Clicks, drags, keys, and fields typed or chosen so far. */
    actions: (): number => actions,
    words: (): Promise<string | null> => page.getByTestId('draw-words').textContent(),
    advice: (): Promise<string | null> => page.locator('.board-foot .advice').textContent(),
  };
}

export async function emptySite(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: 'An empty site' }).click();
  await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
}

export async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const stream = await (await download).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}
