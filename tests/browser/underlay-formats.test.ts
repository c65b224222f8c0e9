import { expect, test } from 'vitest';
import { planDrawing } from '../../calc/sheets/drawing/plan-drawing.ts';
import { geojson } from '../../calc/sheets/geojson/geojson.ts';
import { svg as svgOf } from '../../calc/sheets/svg/svg.ts';
import { statedScale } from '../../web/underlay/reading/stated-scale.ts';
import { setOf } from '../outside/sheets/pdf/drawing-set.ts';
import { readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { plannedSample } from '../outside/sheets/planned-samples.ts';
import { opener } from './open.ts';
import { dxf, pdf, png, svg } from './underlay-files.ts';
import { colors, drop, emptySite, fieldOf, file, ledger, pick, put, seesViolet, shown } from './underlay-page.ts';

const open = opener();

test('a DXF lies by its own units; its lines become stalls and columns, each in one step', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await put(page, file('lot.dxf', 'application/dxf', dxf()));
  await expect.poll(() => fieldOf(page, 'a unit of it is')).toBe('0\' 1"');
  await ledger(page).getByText('layers, 1 line of words.').waitFor();
  await ledger(page).getByText('Turn its lines into elements').click();
  await ledger(page).getByLabel('STALL 24').check();
  await ledger(page).getByRole('img', { name: 'Sketch: 24 found, 0 lines left over' }).waitFor();
  await ledger(page).getByRole('button', { name: 'Turn into 24 stalls' }).click();
  await page.getByRole('button', { name: /^Undo ?: turn lines of the underlay into 24 stalls/i }).waitFor();
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.getByText('Nothing is drawn yet').count()).toBe(1);
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
  await expect.poll(() => lies()).toEqual(inPlace);
  const width = /width="([\d.]+)"/.exec(drawing)![1]!;
  await expect.poll(() => fieldOf(page, 'its width is')).toMatch(new RegExp(`^${Math.floor(Number(width) / 8)}'`));
  // Turned by hand, it goes back where it says.
  const turn = ledger(page).getByLabel('turned', { exact: true });
  await turn.fill('5');
  await turn.press('Enter');
  await ledger(page).getByRole('button', { name: 'Lay where it says' }).click();
  await expect.poll(() => lies()).toEqual(inPlace);
  await expect.poll(() => ledger(page).getByRole('button', { name: 'Lay where it says' }).count()).toBe(0);
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
  await expect.poll(() => lies()).toEqual(inPlace);
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
  await expect.poll(() => ledger(page).getAttribute('data-state')).toBe('none');
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
  await expect.poll(() => fieldOf(page, 'a unit of it is')).toBe('1\' 0"');
  await close();
});
