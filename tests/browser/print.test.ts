import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { hospitalLot } from '../bench/samples/hospital-lot.ts';
import { readPdf } from '../outside/sheets/read-pdf.ts';
import { opener } from './open.ts';
import { openSample } from './open-page.ts';

const open = opener();

// The smaller of the usual papers each way: 8.5 in of letter, 8.27 in of A4.
test.each([
  ['Letter', 'dark', 1440, 900],
  ['A4', 'light', 390, 844],
] as const)(
  'Print puts the whole plan on one %s page, with its name and the cautions',
  async (format, theme, width, height) => {
    const { page, offences, close } = await open({ theme, width, height });
    if (width > 500) await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
    else {
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('menuitem', { name: 'Hospital lot' }).click();
      await page.getByRole('heading', { level: 1, name: 'Mill Creek Hospital lot' }).waitFor();
    }
    // A view of a part: what is printed does not hang on it.
    if (width > 500) for (let i = 0; i < 5; i++) await page.getByRole('button', { name: 'Zoom in' }).click();
    const seen: { shown: string; corner: string; dark: number }[] = [];
    await page.exposeFunction('printed', (one: (typeof seen)[number]) => seen.push(one));
    await page.evaluate(() => {
      addEventListener('beforeprint', () => {
        const canvas = document.querySelector<HTMLCanvasElement>('[data-testid=printed-plan]')!;
        const pixels = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height).data;
        let dark = 0;
        for (let at = 0; at < pixels.length; at += 40) if (pixels[at]! < 128) dark += 1;
        const printed = (window as unknown as { printed: (one: object) => void }).printed;
        printed({
          shown: canvas.dataset.shown,
          corner: [...pixels.slice(0, 3)].join(' '),
          dark: dark / (pixels.length / 40),
        });
      });
    });
    const bytes = await page.pdf({
      format,
      landscape: true,
      preferCSSPageSize: false,
      margin: { top: '0.5in', right: '0.5in', bottom: '0.5in', left: '0.5in' },
      printBackground: false,
    });
    if (process.env.OVERROW_FILM) writeFileSync(`${process.env.OVERROW_FILM}/print-${format}.pdf`, bytes);
    const { pages } = await readPdf(bytes);
    expect(pages).toHaveLength(1);
    const words = pages[0]!.texts
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/g, ' ');
    for (const said of [
      'Mill Creek Hospital lot',
      'For planning by qualified persons',
      'de-energise',
      'Not a sheet of the drawing set',
    ])
      expect(words).toContain(said);
    for (const { x, y, width: wide } of pages[0]!.texts) {
      expect(x).toBeGreaterThanOrEqual(35);
      expect(x + wide).toBeLessThanOrEqual(pages[0]!.width - 35);
      expect(y).toBeGreaterThan(35);
    }
    const [{ shown, corner, dark }] = seen as [(typeof seen)[number]];
    const [minX, minY, maxX, maxY] = shown.split(' ').map(Number) as [number, number, number, number];
    const { stalls = [], equipment = [], drops = [] } = hospitalLot();
    const places = [...stalls.map(({ at }) => at), ...equipment.map(({ at }) => at), ...drops.map(({ box }) => box)];
    for (const [x, y] of places) {
      expect(x > minX && x < maxX && y > minY && y < maxY).toBe(true);
    }
    // Paper is light whatever the page is, and something is drawn on it.
    expect(corner).toBe('255 255 255');
    expect(dark).toBeGreaterThan(0.005);
    expect(dark).toBeLessThan(0.4);
    expect(offences).toEqual([]);
    await close();
  },
);
