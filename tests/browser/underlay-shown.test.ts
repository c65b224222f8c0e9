import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { placedOn, readPdf } from '../outside/sheets/pdf/read-pdf.ts';
import { openMapText } from '../routing/site/import/open-map-text.ts';
import { opener } from './open.ts';
import { type Opened, tally } from './open-page.ts';
import { drawn } from './screen-acts.ts';
import { markedPdf, png } from './underlay-files.ts';
import { drop, emptySite, fieldOf, file, ledger, put, seesViolet, shown, violet } from './underlay-page.ts';

const open = opener();

test('a mark on a PDF and an SVG without a size are seen; a lot of an open map is named, and its rows are drawn', async () => {
  const { page, offences, close } = await open();
  await emptySite(page);
  await drop(page, file('marked.pdf', 'application/pdf', await markedPdf()));
  await ledger(page).getByText('Page 1 of 1, 36 x 24 in.').waitFor();
  await expect.poll(() => fieldOf(page, 'an inch of the page is')).toBe('20\' 0"');
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
      page.waitForEvent('download'),
      page.getByRole('menuitem', { name: 'Drawing set, ANSI D PDF' }).click(),
    ]);
    const bytes = await readFile((await download.path())!);
    const { pages } = await readPdf(bytes);
    const plan = pages.findIndex(({ label }) => label === 'E-101') + 1;
    return [...(await placedOn(bytes, plan)).map(({ kind }) => kind)];
  };
  expect(await inSet()).toEqual(['picture', 'form']);
  const tick = ledger(page).getByLabel('on the drawing set');
  await expect.poll(() => tick.isChecked()).toBe(true);
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
  await expect.poll(() => fieldOf(page, 'its width is')).toBe(width);
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
  await drawn(page);
  // Lines and letters alone are solid, a few in a hundred.
  expect(await solid()).toBeLessThan(0.06);
  await close();
});
