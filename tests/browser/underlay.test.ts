import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { planDrawing } from '../../calc/sheets/drawing/plan-drawing.ts';
import { geojson } from '../../calc/sheets/geojson.ts';
import { svg as svgOf } from '../../calc/sheets/svg.ts';
import { statedScale } from '../../web/underlay/stated-scale.ts';
import { setOf } from '../outside/sheets/drawing-set.ts';
import { plannedSample } from '../outside/sheets/planned-samples.ts';
import { placedOn, readPdf } from '../outside/sheets/read-pdf.ts';
import { openMapText } from '../routing/site/import/open-map-text.ts';
import { opener } from './open.ts';
import { type Opened, ready, seriousFaults, tally } from './open-page.ts';
import { dxf, markedPdf, pdf, png, svg } from './underlay-files.ts';

const open = opener();

interface Picked {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}
const file = (name: string, mimeType: string, buffer: Buffer): Picked => ({ name, mimeType, buffer });

async function pick(page: Page, picked: Picked): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^(Put a site plan underneath|Pick the file)/ }).click(),
  ]);
  await chooser.setFiles({ ...picked });
}

async function put(page: Page, picked: Picked): Promise<void> {
  await pick(page, picked);
  await shown(page);
}

const shown = (page: Page): Promise<unknown> =>
  page.waitForSelector('[data-testid=underlay][data-state=shown]', { timeout: 30_000 });

const ledger = (page: Page) => page.getByTestId('underlay');
const fieldOf = (page: Page, label: string): Promise<string> =>
  ledger(page).getByRole('textbox', { name: label, exact: true }).inputValue();

/** Colors of the board's lowest layer, one in so many pixels each way, as counts. */
const colors = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.board-paper canvas')!;
    const { data, width, height } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    const counts: Record<string, number> = {};
    for (let y = 0; y < height; y += 2)
      for (let x = 0; x < width; x += 2) {
        const at = 4 * (y * width + x);
        const name = `${data[at]} ${data[at + 1]} ${data[at + 2]}`;
        counts[name] = (counts[name] ?? 0) + 1;
      }
    return counts;
  });

/** Pixels of the frames in the files, which are a violet that the page has nowhere. */
const violet = async (page: Page): Promise<number> =>
  Object.entries(await colors(page)).reduce((sum, [name, count]) => {
    const [r = 0, g = 0, b = 0] = name.split(' ').map(Number);
    return r - g > 40 && b - g > 40 ? sum + count : sum;
  }, 0);

const seesViolet = async (page: Page): Promise<void> => {
  await expect.poll(() => violet(page), { timeout: 20_000 }).toBeGreaterThan(50);
};

async function emptySite(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'An empty site' }).click();
  await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
}

test('a PNG is laid under the plan, scaled by two points, taken back, and there again after a reload', async () => {
  const { page, offences, close } = await open();
  await put(page, file('lot.png', 'image/png', png(1600, 1000)));
  await seesViolet(page);
  const first = await fieldOf(page, 'its width is');

  const { camera } = await tally(page);
  const scale = Number(camera!.split(' ')[2]);
  const box = (await page.getByTestId('board').boundingBox())!;
  await ledger(page).getByRole('button', { name: 'Scale by two points' }).click();
  await page.mouse.click(box.x + 200, box.y + 300);
  await page.mouse.click(box.x + 600, box.y + 300);
  // The field that asks has the keys.
  await ledger(page)
    .getByLabel(/^apart/)
    .waitFor();
  await page.keyboard.type("36'");
  await page.keyboard.press('Enter');
  const scaled = await fieldOf(page, 'its width is');
  // Four hundred pixels of the screen now stand for 36 ft.
  const feet = (text: string): number => {
    const [, whole = '0', inches = '0', over, under] = /(-?\d+)'(?: (\d+)(?: (\d+)\/(\d+))?")?/.exec(text) ?? [];
    return Number(whole) + (Number(inches) + (over ? Number(over) / Number(under) : 0)) / 12;
  };
  expect(Math.abs(feet(scaled) / (feet(first) * (36 / (400 / scale))) - 1)).toBeLessThan(1e-3);

  await page.getByRole('button', { name: /^Undo ?: scale underlay/i }).click();
  expect(await fieldOf(page, 'its width is')).toBe(first);
  await page.keyboard.press('Control+Shift+z');
  expect(await fieldOf(page, 'its width is')).toBe(scaled);

  await page.getByText(/^kept in this browser/).waitFor();
  await page.reload();
  await ready(page);
  await shown(page);
  expect(await fieldOf(page, 'its width is')).toBe(scaled);
  await seesViolet(page);
  await page.keyboard.press('Control+z');
  expect(await fieldOf(page, 'its width is')).toBe(first);
  expect(offences).toEqual([]);
  await close();
});

test('several underlays lie in an order, each by its own, and are there again after a reload', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(1600, 1000)));
  const width = await fieldOf(page, 'its width is');
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    ledger(page).getByRole('button', { name: 'Lay another over it…' }).click(),
  ]);
  await chooser.setFiles({ ...file('lot.dxf', 'application/dxf', dxf()) });
  const list = ledger(page).getByRole('list', { name: 'Underlays, the highest first' });
  const order = (): Promise<string[]> => list.locator('.underlay-name').allTextContents();
  await expect.poll(order).toEqual(['lot.dxf', 'lot.png']);
  // The one just laid is spoken of; the first keeps its size.
  expect(await fieldOf(page, 'a unit of it is')).toBe('0\' 1"');
  await ledger(page).getByLabel('locked in place').check();
  await list.getByRole('button', { name: 'lot.png', exact: true }).click();
  expect(await fieldOf(page, 'its width is')).toBe(width);
  expect(await ledger(page).getByLabel('locked in place').isChecked()).toBe(false);
  await seesViolet(page);

  await list.getByLabel('show lot.png').uncheck();
  await expect.poll(() => violet(page)).toBe(0);
  await list.getByRole('button', { name: 'raise lot.png' }).click();
  await expect.poll(order).toEqual(['lot.png', 'lot.dxf']);
  await list.getByLabel('show lot.png').check();
  await seesViolet(page);
  expect(await seriousFaults(page)).toEqual([]);
  const folder = process.env.OVERROW_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/underlays.png` });

  await page.getByText(/^kept in this browser/).waitFor();
  await page.reload();
  await ready(page);
  await shown(page);
  await expect.poll(order).toEqual(['lot.png', 'lot.dxf']);
  await seesViolet(page);
  for (const name of [/^Undo ?: show underlay/i, /^Undo ?: raise underlay/i]) {
    await page.getByRole('button', { name }).waitFor();
    await page.keyboard.press('Control+z');
  }
  await expect.poll(order).toEqual(['lot.dxf', 'lot.png']);
  await list.getByRole('button', { name: 'lot.dxf', exact: true }).click();
  await ledger(page).getByRole('button', { name: 'Remove', exact: true }).click();
  await expect.poll(() => list.count()).toBe(0);
  expect(await fieldOf(page, 'its width is')).toBe(width);
  expect(offences).toEqual([]);
  await close();
});

test('an underlay is moved by the hand, squared up and locked', async () => {
  const { page, offences, close } = await open();
  await put(page, file('lot.png', 'image/png', png(800, 500)));
  const at = async (): Promise<readonly string[]> => [await fieldOf(page, 'x'), await fieldOf(page, 'y')];
  const before = await at();
  await ledger(page).getByRole('button', { name: 'Move', exact: true }).click();
  const box = (await page.getByTestId('board').boundingBox())!;
  await page.mouse.move(box.x + 400, box.y + 300);
  await page.mouse.down();
  await page.mouse.move(box.x + 440, box.y + 330, { steps: 5 });
  expect(await at()).not.toEqual(before);
  await page.mouse.up();
  await page.getByRole('button', { name: /^Undo ?: move underlay/i }).waitFor();
  await page.keyboard.press('Escape');
  await ledger(page).getByRole('button', { name: 'Square up' }).click();
  await page.mouse.click(box.x + 200, box.y + 200);
  await page.mouse.click(box.x + 600, box.y + 240);
  expect(Number.parseFloat(await fieldOf(page, 'turned'))).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 1);
  await ledger(page).getByLabel('locked in place').check();
  expect(await ledger(page).getByRole('button', { name: 'Move', exact: true }).count()).toBe(0);
  expect(await seriousFaults(page)).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});

test('a DXF lies by its own units; its lines become stalls and columns, each in one step', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.dxf', 'application/dxf', dxf()));
  expect(await fieldOf(page, 'a unit of it is')).toBe('0\' 1"');
  await ledger(page).getByText('layers, 1 line of words.').waitFor();
  await ledger(page).getByText('Turn its lines into elements').click();
  await ledger(page).getByLabel('STALL 24').check();
  await ledger(page).getByRole('img', { name: 'Sketch: 24 found, 0 lines left over' }).waitFor();
  await ledger(page).getByRole('button', { name: 'Turn into 24 stalls' }).click();
  await page.getByRole('button', { name: /^Undo ?: turn lines of the underlay into 24 stalls/i }).waitFor();
  await page.keyboard.press('Control+z');
  expect(await page.getByText('Nothing is drawn yet').count()).toBe(1);
  await page.keyboard.press('Control+Shift+z');
  await page.getByText('0 of 24').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a GeoJSON that was written from a site brings its elements and its place on the ground back', async () => {
  const { site, planned } = plannedSample('library-lot');
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.geojson', 'application/geo+json', Buffer.from(geojson(site, planned))));
  await page.locator('.notice', { hasText: 'The site had no place on the ground' }).waitFor();
  await ledger(page)
    .getByRole('button', { name: /^Bring in \d+ elements/ })
    .click();
  await page.getByText(`0 of ${site.stalls.length}`).waitFor();
  await ledger(page).getByText('elements are on the site already').waitFor();
  await page.getByRole('button', { name: /^Undo ?: bring in/i }).click();
  await page.getByText('Nothing is drawn yet').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a page of a PDF is drawn by day and by night, its other page too', async () => {
  const { page, offences, close } = await open();
  await put(page, file('plan.pdf', 'application/pdf', await pdf()));
  await ledger(page).getByText('Page 1 of 2, 36 x 24 in.').waitFor();
  await seesViolet(page);
  const field = ledger(page).getByLabel('page of 2');
  await field.fill('2');
  await field.press('Enter');
  await ledger(page).getByText('Page 2 of 2, 36 x 24 in.').waitFor();
  await seesViolet(page);
  await page.keyboard.press('Control+z');
  await ledger(page).getByText('Page 1 of 2, 36 x 24 in.').waitFor();
  await page.getByRole('button', { name: 'Change to the dark theme' }).click();
  // The violet of the page is a green on its dark side.
  await expect
    .poll(
      async () =>
        Object.keys(await colors(page)).filter((name) => {
          const [r = 0, g = 0, b = 0] = name.split(' ').map(Number);
          return g - r > 40 && g - b > 40;
        }).length,
      { timeout: 20_000 },
    )
    .toBeGreaterThan(0);
  expect(offences).toEqual([]);
  await close();
});

test('sheets of ours come back in place and to scale: a drawing, and a page of the set when it is chosen', async () => {
  const own = plannedSample('library-lot');
  const { site, planned } = own;
  const { page, offences, close } = await open();
  await emptySite(page);
  const drawing = svgOf(planDrawing(site, planned), site);
  await put(page, file('lot.svg', 'image/svg+xml', Buffer.from(drawing)));
  await ledger(page).getByText('It states its place on the site').waitFor();
  const lies = async (): Promise<readonly string[]> =>
    Promise.all(['x', 'y', 'turned'].map((field) => fieldOf(page, field)));
  const inPlace = ['0\' 0"', '0\' 0"', '0°'];
  expect(await lies()).toEqual(inPlace);
  const width = /width="([\d.]+)"/.exec(drawing)![1]!;
  expect(await fieldOf(page, 'its width is')).toMatch(new RegExp(`^${Math.floor(Number(width) / 8)}'`));
  // Turned by hand, it goes back where it says.
  const turn = ledger(page).getByLabel('turned', { exact: true });
  await turn.fill('5');
  await turn.press('Enter');
  await ledger(page).getByRole('button', { name: 'Lay where it says' }).click();
  expect(await lies()).toEqual(inPlace);
  expect(await ledger(page).getByRole('button', { name: 'Lay where it says' }).count()).toBe(0);
  await ledger(page).getByRole('button', { name: 'Remove', exact: true }).click();

  const bytes = await setOf(own);
  const { pages } = await readPdf(bytes);
  await put(page, file('lot.pdf', 'application/pdf', Buffer.from(bytes)));
  const field = ledger(page).getByLabel(`page of ${pages.length}`);
  const at = pages.findIndex(({ label }) => label === 'E-101') + 1;
  await field.fill(String(at));
  await field.press('Enter');
  await ledger(page)
    .getByText('It states its place on the site: it is laid there at first, and an inch of it')
    .waitFor();
  expect(await lies()).toEqual(inPlace);
  // The title block says the same scale in words.
  const feet = statedScale(pages[at - 1]!.texts.map(({ text }) => text).join(' '))!;
  expect(Number.parseFloat(await fieldOf(page, 'an inch of the page is'))).toBe(Math.floor(feet + 1e-9));
  await page.getByRole('button', { name: new RegExp(`^Undo ?: show page ${at}`, 'i') }).waitFor();
  const folder = process.env.OVERROW_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/own-sheet.png` });
  expect(offences).toEqual([]);
  await close();
});

test('an SVG is a picture: nothing in it runs or is fetched', async () => {
  const { page, offences, close } = await open();
  await put(page, file('lot.svg', 'image/svg+xml', svg()));
  await seesViolet(page);
  expect(await page.title()).not.toBe('ran');
  expect(offences).toEqual([]);
  await close();
});

/** Drops a file on the board as a person does. */
const drop = (page: Page, { name, buffer }: Picked): Promise<void> =>
  page.evaluate(
    ([as, bytes]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([new Uint8Array(bytes)], as));
      document
        .querySelector('.board-paper')!
        .dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, [...buffer]] as const,
  );

/** Words that stand for ten times other words, ten deep. */
const bomb = (): string =>
  `<!DOCTYPE svg [<!ENTITY a0 "aaaaaaaaaa">${Array.from({ length: 10 }, (_, i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`).join('')}]><svg xmlns="http://www.w3.org/2000/svg" width="100" height="100"><text y="50">&a10;</text></svg>`;

test('what cannot be read is refused in words with the cure, picked or dropped, and changes nothing', async () => {
  const { page, close } = await open();
  for (const [name, text, says] of [
    ['words.png', 'hello', 'is no PNG, JPEG, PDF, SVG, DXF or GeoJSON'],
    ['lot.dwg', 'AC1032\0\0\0', 'is a DWG: save it as a text DXF'],
    ['cut.pdf', '%PDF-1.7\nnothing more', 'it is damaged'],
    ['bomb.svg', bomb(), 'the browser cannot draw it'],
    ['cut.dxf', '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n5\n', 'only 1 damaged thing'],
    ['far.geojson', '{"type":"Point","coordinates":[2000000,600000]}', 'a projected system is not read'],
    ['far.json', '{"type":"Point","coordinates":[3000000,600000]}', 'a projected system is not read'],
  ] as const) {
    const picked = file(name, 'application/octet-stream', Buffer.from(text));
    await pick(page, picked);
    await page.locator('.notice', { hasText: says }).waitFor();
    await page.locator('.notice').getByRole('button').first().click();
    await drop(page, picked);
    await page.locator('.notice', { hasText: says }).waitFor();
    await page.locator('.notice').getByRole('button').first().click();
  }
  const vast = png(1, 1);
  // Its header says 60,000 pixels to a side (PNG specification, 11.2.1): nothing of it is decoded.
  vast.writeUInt32BE(60_000, 16);
  vast.writeUInt32BE(60_000, 20);
  await pick(page, file('vast.png', 'image/png', vast));
  await page.locator('.notice', { hasText: 'it has 60000 x 60000 pixels' }).waitFor();
  await page.locator('.notice').getByRole('button').first().click();
  expect(await ledger(page).getAttribute('data-state')).toBe('none');
  // A stray line at the origin of a grid does not decide the view, and what was left out is said.
  const stray = dxf()
    .toString()
    .replace(
      '0\nSECTION\n2\nENTITIES',
      '0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nX\n10\n-7e7\n20\n-2e7\n11\n-6.9e7\n21\n-2e7',
    );
  await drop(page, file('stray.dxf', 'application/dxf', Buffer.from(stray)));
  await shown(page);
  await ledger(page).getByText('1 thing lies far outside, 6,066,').waitFor();
  await ledger(page).getByText('In inches, by its header: 116 x 72 ft.').waitFor();
  await ledger(page).getByLabel('its unit').selectOption('feet');
  expect(await fieldOf(page, 'a unit of it is')).toBe('1\' 0"');
  await close();
});

test('a long import tells how far it is while the board stays in hand; stopped, it leaves what was there', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(800, 500)));
  const width = await fieldOf(page, 'its width is');
  // 290,000 lines, made in the page: some seconds of reading, and none is to be waited for.
  await page.evaluate(() => {
    const line = `0\nLINE\n8\nC-TOPO\n10\n1.25\n20\n2.5\n11\n310.125\n21\n420.875\n${'1000\nsurveyed\n'.repeat(9)}`;
    const text = `0\nSECTION\n2\nENTITIES\n${line.repeat(290_000)}0\nENDSEC\n0\nEOF\n`;
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'survey.dxf'));
    const { body } = document;
    const seen = new Set<number>();
    new MutationObserver(() => {
      const bar = document.querySelector<HTMLProgressElement>('.underlay-reading progress');
      if (!bar) return;
      seen.add(bar.value);
      body.dataset.told = String(seen.size);
    }).observe(body, { subtree: true, childList: true, attributes: true, attributeFilter: ['value'] });
    document
      .querySelector('.board-paper')!
      .dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  const reading = ledger(page).getByRole('status').filter({ hasText: 'Reading survey.dxf' });
  await reading.waitFor();
  await page.waitForFunction(() => Number(document.body.dataset.told) >= 3);
  // The board answers meanwhile.
  const before = (await tally(page)).camera;
  await page.getByTestId('board').focus();
  await page.keyboard.press('+');
  await expect.poll(async () => (await tally(page)).camera).not.toBe(before);
  expect(await reading.count()).toBe(1);
  await reading.getByRole('button', { name: 'Stop' }).click();
  await reading.waitFor({ state: 'detached' });
  await page.waitForTimeout(300);
  expect(await ledger(page).getAttribute('data-state')).toBe('shown');
  expect(await ledger(page).getByRole('list', { name: 'Underlays, the highest first' }).count()).toBe(0);
  expect(await fieldOf(page, 'its width is')).toBe(width);
  expect(await page.locator('.notice').count()).toBe(0);
  await page.getByRole('button', { name: /^Undo ?: lay lot.png under the drawing/i }).waitFor();
  // The next one is read as ever.
  await drop(page, file('lot.dxf', 'application/dxf', dxf()));
  await ledger(page).getByText('layers, 1 line of words.').waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a mark on a PDF and an SVG without a size are seen; a lot of an open map is named, and its rows are drawn', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await drop(page, file('marked.pdf', 'application/pdf', await markedPdf()));
  await ledger(page).getByText('Page 1 of 1, 36 x 24 in.').waitFor();
  expect(await fieldOf(page, 'an inch of the page is')).toBe('20\' 0"');
  await seesViolet(page);
  await ledger(page).getByRole('button', { name: 'Remove', exact: true }).click();
  await expect.poll(() => violet(page)).toBe(0);
  const sizeless = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M600 400H900V700H600Z" fill="#b01ec8"/></svg>';
  await drop(page, file('sizeless.svg', 'image/svg+xml', Buffer.from(sizeless)));
  await ledger(page).getByText('904 x 704 units, by what is drawn: it says no size.').waitFor();
  await seesViolet(page);
  await ledger(page).getByRole('button', { name: 'Remove', exact: true }).click();

  await drop(page, file('map.json', 'application/json', Buffer.from(openMapText)));
  await page.getByRole('heading', { level: 1, name: 'North lot' }).waitFor();
  await ledger(page).getByText('1 parking lot of an open map').waitFor();
  await ledger(page).getByRole('button', { name: 'Bring in its aisles and buildings' }).click();
  await page.getByRole('button', { name: /^Undo ?: bring in 1 aisle and 1 building/i }).waitFor();
  const draw = ledger(page).getByRole('button', { name: /^Draw \d+ stalls$/ });
  const stalls = Number(/\d+/.exec((await draw.textContent()) ?? '')?.[0]);
  expect(stalls).toBeGreaterThanOrEqual(52);
  const folder = process.env.OVERROW_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/open-map.png` });
  await draw.click();
  await page.getByRole('button', { name: new RegExp(`^Undo ?: draw ${stalls} stalls along kerbs`, 'i') }).waitFor();
  if (folder) await page.screenshot({ path: `${folder}/open-map-rows.png` });
  expect(offences).toEqual([]);
  await close();
});

test('the drawing set has what lies under the drawing, with its mark-ups; what is left out of it stays on the board', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(160, 100)));
  await drop(page, file('marked.pdf', 'application/pdf', await markedPdf()));
  await ledger(page).getByText('Page 1 of 1, 36 x 24 in.').waitFor();
  const inSet = async (): Promise<readonly string[]> => {
    await page.getByRole('button', { name: 'Sheets' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 60_000 }),
      page.getByRole('menuitem', { name: 'Drawing set, ANSI D PDF' }).click(),
    ]);
    const bytes = await readFile((await download.path())!);
    const { pages } = await readPdf(bytes);
    const plan = pages.findIndex(({ label }) => label === 'E-101') + 1;
    return [...(await placedOn(bytes, plan)).map(({ kind }) => kind)];
  };
  expect(await inSet()).toEqual(['picture', 'form']);
  const tick = ledger(page).getByLabel('on the drawing set');
  expect(await tick.isChecked()).toBe(true);
  await tick.uncheck();
  await page.getByRole('button', { name: /^Undo ?: leave underlay out of the drawing set/i }).waitFor();
  await seesViolet(page);
  expect(await inSet()).toEqual(['picture']);
  expect(offences).toEqual([]);
  await close();
});

test('a site opened elsewhere says which file to pick again, and shows it where it lay', async () => {
  const here = await open();
  await put(here.page, file('lot.png', 'image/png', png(640, 400)));
  const width = await fieldOf(here.page, 'its width is');
  const [download] = await Promise.all([
    here.page.waitForEvent('download'),
    here.page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  const text = await readFile((await download.path())!, 'utf8');
  expect(text.length).toBeLessThan(200_000);
  expect(JSON.parse(text).underlay).toMatchObject({ file: 'lot.png', kind: 'png' });
  await here.close();

  const there: Opened = await open();
  const { page } = there;
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('menuitem', { name: /^A site file/ }).click(),
  ]);
  await chooser.setFiles(file('lot.site.json', 'application/json', Buffer.from(text)));
  await ledger(page).getByText('This browser does not keep lot.png. Pick it again to see it.').waitFor();
  await put(page, file('a copy.png', 'image/png', png(640, 400)));
  expect(await fieldOf(page, 'its width is')).toBe(width);
  expect(there.offences).toEqual([]);
  await there.close();
});

test('a site of nothing but an underlay is framed by it: with F, and when it is opened again', async () => {
  const { page, close } = await open();
  await emptySite(page);
  await put(page, file('plan.png', 'image/png', png(800, 500)));
  await seesViolet(page);
  const box = (await page.getByTestId('board').boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const away = async (): Promise<void> => {
    await page.mouse.down({ button: 'right' });
    await page.mouse.move(box.x + box.width * 3, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up({ button: 'right' });
  };
  await away();
  await expect.poll(() => violet(page)).toBe(0);
  await page.getByTestId('board').focus();
  await page.keyboard.press('f');
  await seesViolet(page);
  const framed = (await tally(page)).camera;
  await away();
  await page.reload();
  await page.waitForSelector('#page[data-ready=yes]');
  await shown(page);
  await expect.poll(async () => (await tally(page)).camera).toBe(framed);
  await close();
});

test('over a picture the stalls let it through, while they are drawn and after', async () => {
  const { page, close } = await open();
  await emptySite(page);
  await put(page, file('lot.png', 'image/png', png(1600, 1000)));
  await seesViolet(page);
  const box = (await page.getByTestId('board').boundingBox())!;
  /** Alpha of the moving layer where the stalls are drawn: of what lies over the ground there, most is let through. */
  const solid = (): Promise<number> =>
    page.evaluate(() => {
      const canvas = [...document.querySelectorAll<HTMLCanvasElement>('.board-paper canvas')].at(-1)!;
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
      let count = 0;
      for (let i = 3; i < data.length; i += 4) if (data[i]! > 200) count++;
      return count / (data.length / 4);
    });
  await page.getByTestId('board').focus();
  await page.keyboard.press('s');
  await page.getByTestId('draw-panel').getByLabel('rows', { exact: true }).selectOption('across');
  await page.mouse.move(box.x + box.width * 0.2, box.y + box.height * 0.8);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.8, box.y + box.height * 0.8, { steps: 4 });
  await page.mouse.up();
  await page.waitForTimeout(200);
  // Lines and letters alone are solid, a few in a hundred.
  expect(await solid()).toBeLessThan(0.06);
  await close();
});
