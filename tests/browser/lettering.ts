import type { BrowserContext, Page } from 'playwright-core';

/** Lettering that the board's canvas shows: pixels of the window's board, upright unless turned. */
export interface Lettering {
  readonly words: string;
  readonly size: number;
  readonly layer: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly turned: boolean;
}

/** Keeps account of what is lettered on every canvas of the page; before the page is opened. */
export async function watchLettering(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const pen = CanvasRenderingContext2D.prototype;
    const { fillText, clearRect } = pen;
    const kept = new Map<HTMLCanvasElement, Lettering[]>();
    Object.assign(window, { lettered: kept });
    pen.clearRect = function (...box) {
      kept.set(this.canvas, []);
      return clearRect.apply(this, box);
    };
    pen.fillText = function (words, x, y, ...rest) {
      const { width, actualBoundingBoxAscent: up, actualBoundingBoxDescent: down } = this.measureText(words);
      const before = this.textAlign === 'center' ? width / 2 : this.textAlign === 'right' ? width : 0;
      const at = this.getTransform();
      const corners = [
        at.transformPoint(new DOMPoint(x - before, y - up)),
        at.transformPoint(new DOMPoint(x - before + width, y + down)),
      ];
      const ratio = window.devicePixelRatio;
      const xs = corners.map((corner) => corner.x / ratio);
      const ys = corners.map((corner) => corner.y / ratio);
      const own = kept.get(this.canvas) ?? [];
      own.push({
        words,
        size: Number(/([\d.]+)px/.exec(this.font)?.[1]),
        layer: [...document.querySelectorAll('.board-paper canvas')].indexOf(this.canvas),
        left: Math.min(...xs),
        right: Math.max(...xs),
        top: Math.min(...ys),
        bottom: Math.max(...ys),
        turned: Math.abs(at.b) > 1e-6,
      });
      kept.set(this.canvas, own);
      return fillText.call(this, words, x, y, ...rest);
    };
  });
}

/** What is wrong with the lettering of the drawing: too small, or one name over another of the same picture. */
export async function letteringFaults(page: Page, least = 11): Promise<readonly string[]> {
  const all = await lettering(page);
  const faults = all
    .filter(({ size }) => size < least)
    .map(({ words, size }) => `"${words}" is lettered in ${size} px`);
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [a, b] = [all[i]!, all[j]!];
      // What is selected is lettered again, heavier, on the same place; the layers lie over each other on purpose.
      if (a.layer !== b.layer || a.words === b.words || a.turned || b.turned) continue;
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (wide > 2 && high > 2) faults.push(`"${a.words}" lies over "${b.words}"`);
    }
  return [...new Set(faults)];
}

/** All lettering of the board that lies in view. */
export const lettering = (page: Page): Promise<readonly Lettering[]> =>
  page.evaluate(() => {
    const { lettered } = window as unknown as { lettered: Map<HTMLCanvasElement, Lettering[]> };
    return [...lettered]
      .filter(([canvas]) => canvas.isConnected && canvas.closest('.board-paper'))
      .flatMap(([canvas, own]) =>
        own.filter(
          ({ left, right, top, bottom }) =>
            right > 0 && bottom > 0 && left < canvas.clientWidth && top < canvas.clientHeight,
        ),
      );
  });
