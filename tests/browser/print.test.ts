import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { hospitalLot } from '../bench/samples/hospital-lot.ts';
import { type PageText, readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { opener } from './open.ts';
import { openSample, ready } from './open-page.ts';
import { type PrintedPage, printedPage, ratioIn } from './printed-page.ts';

const open = opener();

// The smaller of the usual papers each way: 8.5 in of letter, 8.27 in of A4.
test.each([
  ['Letter', 'dark', 1440, 900],
  ['A4', 'light', 390, 844],
] as const)(
  'Print puts a plan that is shown whole on one %s page, with its name, scale, legend and the cautions',
  async (format, theme, width, height) => {
    const { page, offences, close } = await open({ theme, width, height });
    if (width > 500) await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
    else {
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('menuitem', { name: 'Hospital lot' }).click();
      await page.getByRole('heading', { level: 1, name: 'Mill Creek Hospital lot' }).waitFor();
    }
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
      'Scale: 1" =',
      'drop from above',
      'fails a check',
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

/** Two panelboards 100 ft apart, alone on their ground. */
const TWO_PANELS = {
  format: 'overrow/site',
  version: 1,
  name: 'Two panels',
  units: 'ft',
  equipment: [0, 100].map((x, i) => ({
    id: `P${i + 1}`,
    kind: 'panelboard',
    at: [x, 0],
    size: [2, 1, 5],
    entry: [x, 0, 5],
    busAmps: 100,
    spaces: 12,
    volts: 208,
    phases: 3,
  })),
  boundaries: [
    {
      id: 'BL1',
      path: [
        [-20, -30],
        [120, -30],
        [120, 30],
        [-20, 30],
        [-20, -30],
      ],
    },
    {
      id: 'BL2',
      kind: 'easement',
      path: [
        [-20, 22],
        [120, 22],
      ],
    },
  ],
};

/** How the two panels and the bar measure on paper, as shares of what the scale says. */
function measured({ texts, words }: PrintedPage): { readonly apart: number; readonly bar: number } {
  const ratio = ratioIn(words);
  const middle = ({ x, width }: PageText): number => x + width / 2;
  const named = (name: string): PageText => texts.find(({ text }) => text === name)!;
  const apart = (middle(named('P2')) - middle(named('P1'))) / 72;
  // The bar, from the middle of its 0 to that of its last number.
  const last = texts.find(({ text }) => /^\d+ ft$/.test(text))!;
  const bar = (middle(last) - middle(named('0'))) / 72;
  return { apart: apart / (1200 / ratio), bar: bar / ((Number.parseFloat(last.text) * 12) / ratio) };
}

test('what is printed is what is looked at, and a known distance measures on paper what scale and bar say', async () => {
  const { page, offences, close } = await open({ theme: 'dark' });
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: 'A site file…' }).click();
  const buffer = Buffer.from(JSON.stringify(TWO_PANELS));
  await (await chooser).setFiles({ name: 'two.site.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { level: 1, name: 'Two panels' }).waitFor();
  await ready(page);
  const whole = await printedPage(page);
  if (process.env.OVERROW_FILM) writeFileSync(`${process.env.OVERROW_FILM}/print-two.pdf`, whole.bytes);
  const ratio = ratioIn(whole.words);
  expect(whole.words).toContain('equipment');
  expect(whole.words).not.toContain('raceway');
  for (const line of ['property line', 'easement line']) expect(whole.words).toContain(line);
  // Each paper lies across, has one page, and the larger ones the larger picture at a larger scale.
  for (const [format, across, isLarge] of [
    ['Letter', 11, false],
    ['A4', 11.69, false],
    ['Tabloid', 17, true],
    ['A3', 16.54, true],
  ] as const)
    for (const landscape of format === 'Tabloid' ? [true, false] : [true]) {
      const printed = await printedPage(page, format, landscape);
      expect(printed.inches[0]).toBeCloseTo(across, 1);
      const { apart, bar } = measured(printed);
      expect(apart).toBeCloseTo(1, 2);
      expect(bar).toBeCloseTo(1, 2);
      // Asked for upright, a browser turns the page but still measures it as it was: the picture is the one that fits both ways.
      if (isLarge && landscape) expect(ratioIn(printed.words)).toBeLessThan(ratio);
      else expect(ratioIn(printed.words)).toBe(ratio);
      for (const { x, y, width } of printed.texts) {
        expect(x).toBeGreaterThanOrEqual(35);
        expect(x + width).toBeLessThanOrEqual(72 * printed.inches[0] - 35);
        expect(y).toBeGreaterThan(35);
      }
    }

  // Nearer, at the middle between them: what is out of sight is not printed, nor in the legend.
  for (let i = 0; i < 7; i++) await page.getByRole('button', { name: 'Zoom in' }).click();
  const near = await printedPage(page);
  expect(ratioIn(near.words)).toBeLessThan(ratio);
  expect(near.texts.some(({ text }) => text === 'P1' || text === 'P2')).toBe(false);
  expect(near.words).not.toContain('property line');
  expect(offences).toEqual([]);
  await close();
});
