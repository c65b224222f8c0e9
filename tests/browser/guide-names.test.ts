import type { BrowserContext } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { onScreen } from './open-page.ts';
import { drawn } from './screen-acts.ts';

const open = opener();

/** Keeps, for each canvas, the handles and words drawn since it was last cleared. */
const watch = (context: BrowserContext): Promise<unknown> =>
  context.addInitScript(() => {
    const proto = CanvasRenderingContext2D.prototype;
    const drawn = new Map<HTMLCanvasElement, string[]>();
    Object.assign(window, { drawn });
    const { clearRect, arc, rect, fillText } = proto;
    const note = (pen: CanvasRenderingContext2D, what: string): void => {
      drawn.get(pen.canvas as HTMLCanvasElement)?.push(what);
    };
    proto.clearRect = function (...box) {
      drawn.set(this.canvas as HTMLCanvasElement, []);
      clearRect.apply(this, box);
    };
    proto.arc = function (...circle) {
      if (circle[2] === 5) note(this, 'handle');
      arc.apply(this, circle);
    };
    proto.rect = function (...box) {
      if (box[2] === 9 && box[3] === 9) note(this, 'handle');
      rect.apply(this, box);
    };
    proto.fillText = function (...words) {
      note(this, `word ${words[0]}`);
      fillText.apply(this, words);
    };
  });

test('the name of what a drag is held to lies over the handles', async () => {
  const { page, offences, close } = await open({ watch: async (context) => void (await watch(context)) });
  const [x, y] = await onScreen(page, [43, 9]);
  await page.mouse.click(x, y);
  await page.getByTestId('selection-panel').waitFor();
  await page.mouse.move(x, y);
  await page.mouse.down();
  const frames: (readonly string[])[] = [];
  for (let i = 1; i <= 12; i++) {
    await page.mouse.move(x + i * 3, y + 2);
    await drawn(page);
    frames.push(
      ...(await page.evaluate(() =>
        [...(window as unknown as { drawn: Map<HTMLCanvasElement, string[]> }).drawn.values()].filter((ops) =>
          ops.includes('handle'),
        ),
      )),
    );
  }
  await page.mouse.up();
  const guided = frames.filter((ops) => ops.some((op) => op.startsWith('word on ')));
  expect(guided.length).toBeGreaterThan(0);
  for (const ops of guided)
    expect(ops.findIndex((op) => op.startsWith('word on '))).toBeGreaterThan(ops.lastIndexOf('handle'));
  expect(offences).toEqual([]);
  await close();
});
