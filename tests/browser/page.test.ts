import { describe, expect, test } from 'vitest';
import { opener } from './open.ts';
import { drawn, onScreen, openSample, ready, seriousFaults, tally } from './open-page.ts';

const open = opener();

const SAMPLES = [
  ['Library lot', 'Alder Street Library lot', 16],
  ['Fleet yard', 'Quarry Road fleet yard', 48],
  ['Hospital lot', 'Mill Creek Hospital lot', 240],
] as const;

test('a first visit opens the smallest sample, asks nothing of anyone and breaks no rule of its policy', async () => {
  const { page, offences, close } = await open();
  await expect.poll(() => page.locator('h1').textContent()).toBe('Alder Street Library lot');
  expect(await page.title()).toBe('Overrow');
  expect(offences).toEqual([]);
  await close();
});

test('the first screen stands on at most 300 kB of script, as the server sends it; all else comes later', async () => {
  const { page, close } = await open({
    watch: async (context) => {
      await context.addInitScript(() => {
        new MutationObserver(() => {
          if (document.querySelector('#page[data-ready=yes]') && performance.getEntriesByName('ready').length === 0)
            performance.mark('ready');
        }).observe(document, { subtree: true, attributes: true, childList: true });
      });
    },
  });
  /** Of each script the bytes that came over the wire. */
  const scripts = (): Promise<{ first: Record<string, number>; all: string[] }> =>
    page.evaluate(() => {
      const ready = performance.getEntriesByName('ready')[0]!.startTime;
      const loaded = (performance.getEntriesByType('resource') as PerformanceResourceTiming[]).filter(({ name }) =>
        name.endsWith('.js'),
      );
      return {
        first: Object.fromEntries(
          loaded.filter(({ startTime }) => startTime <= ready).map((each) => [each.name, each.encodedBodySize]),
        ),
        all: loaded.map(({ name }) => name),
      };
    });
  const sizes = Object.values((await scripts()).first);
  const sum = sizes.reduce((a, b) => a + b, 0);
  expect(sum).toBeGreaterThan(100_000);
  expect(sum).toBeLessThanOrEqual(300_000);
  // The hand, a table, a drawing action or the kept work is not waited for once it is wanted.
  for (const later of ['hold-board', 'kept-work-dialog', 'draw-panel', 'ask-sheets', 'pick-underlay'])
    expect((await scripts()).all.filter((url) => url.includes(later))).toHaveLength(1);
  await close();
});

test('a part of the page that does not come says so, and comes when it is asked for again', async () => {
  const part = /runs-table|hold-board/;
  const { page, close } = await open({
    watch: (context) => context.route(part, (route) => route.abort()).then(() => undefined),
  });
  const board = page.getByText('The board cannot be worked on: a part of the page could not be loaded.');
  await board.waitFor();
  await page.getByRole('button', { name: 'Runs 16' }).click();
  await page.getByText('This is not shown: a part of the page could not be loaded.').waitFor();
  await page.context().unroute(part);
  await page.locator('p[role=alert]').getByRole('button', { name: 'Try again' }).click();
  await page.locator('tr[data-row=EV01]').waitFor();
  await page.locator('.alert').getByRole('button', { name: 'Try again' }).click();
  await board.waitFor({ state: 'detached' });
  await page.getByTestId('board').focus();
  // The keys of the board work once they have come.
  await expect
    .poll(async () => {
      await page.keyboard.press('s');
      return (await tally(page)).tool;
    })
    .toBe('stalls');
  await close();
});

test.each(SAMPLES)('%s opens, is drawn, and has a row for each of its runs', async (name, title, stalls) => {
  const { page, offences, close } = await open();
  await openSample(page, name, title);
  await expect.poll(async () => Number((await tally(page)).baseMarks)).toBeGreaterThan(stalls * 4);
  await page.getByRole('button', { name: `Runs ${stalls}` }).click();
  const rows = page.getByRole('region', { name: 'Runs' });
  await expect.poll(() => rows.locator('table').getAttribute('aria-rowcount')).toBe(String(stalls + 1));
  expect(offences).toEqual([]);
  await close();
});

test('a press on the board before what answers it has come is answered when it comes', async () => {
  const { page, offences, close } = await open({
    watch: async (context) => {
      await context.route(/hold-board/, async (route) => {
        const [early] = context.pages();
        await drawn(early!);
        const [x, y] = await onScreen(early!, [52, 9]);
        await early!.mouse.click(x, y);
        await route.continue();
      });
    },
  });
  await page.getByTestId('selection-panel').getByRole('heading', { level: 2, name: 'D05' }).waitFor();
  expect(offences).toEqual([]);
  await close();
});

test('a large table draws only the rows in view', async () => {
  const { page, close } = await open();
  await openSample(page, 'Hospital lot', 'Mill Creek Hospital lot');
  await page.getByRole('button', { name: 'Runs 240' }).click();
  const rows = page.locator('tr[data-row]');
  await expect.poll(() => rows.count()).toBeLessThan(60);
  await page.getByRole('region', { name: 'Runs' }).evaluate((frame) => {
    frame.scrollTop = frame.scrollHeight;
  });
  await page.locator('tr[data-row=EV240]').waitFor();
  await expect.poll(() => rows.count()).toBeLessThan(60);
  await close();
});

test('cautions stand once, in full until they are folded, then as a line that opens, beside every table too', async () => {
  const { page, close } = await open();
  const cautions = page.getByText('For planning by qualified persons.');
  const line = page.getByText('For planning by qualified persons: verify before work');
  await expect.poll(() => cautions.isVisible()).toBe(true);
  await page.locator('.cautions summary').click();
  for (const table of ['Runs 16', 'Setting out 16']) {
    await page.getByRole('button', { name: table }).click();
    await expect.poll(() => line.count()).toBe(1);
    await expect.poll(() => line.isVisible()).toBe(true);
    await expect.poll(() => cautions.isVisible()).toBe(false);
  }
  expect((await page.locator('.cautions').boundingBox())!.height).toBeLessThan(40);
  await page.reload();
  await ready(page);
  await expect.poll(() => cautions.isVisible()).toBe(false);
  await line.click();
  await expect.poll(() => cautions.isVisible()).toBe(true);
  await close();
});

describe.each([
  ['desk', 1440, 900],
  ['phone', 390, 844],
] as const)('at %s size', (_, width, height) => {
  test.each(['light', 'dark'] as const)('axe finds no serious fault in the %s theme', async (theme) => {
    const { page, close } = await open({ width, height, theme, touch: width < 500 });
    expect(await seriousFaults(page)).toEqual([]);
    if (width > 500) {
      await page.getByRole('button', { name: 'Setting out 16' }).click();
      await page.locator('tr[data-row=D06] th button').click();
      await page.getByTestId('selection-panel').waitFor();
    } else {
      await page.locator('li[data-row=D06] button').click();
      await page.getByRole('region', { name: 'Drop D06' }).waitFor();
    }
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keys' }).click();
    expect(await seriousFaults(page)).toEqual([]);
    await close();
  });

  test('nothing is wider than the window and no lettering is smaller than 11 px', async () => {
    const { page, close } = await open({ width, height });
    const { overflow, small } = await page.evaluate(() => ({
      overflow: document.documentElement.scrollWidth - window.innerWidth,
      small: [...document.querySelectorAll('body *')].filter(
        (element) =>
          [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()) &&
          Number.parseFloat(getComputedStyle(element).fontSize) < 11,
      ).length,
    }));
    expect(overflow).toBeLessThanOrEqual(0);
    expect(small).toBe(0);
    await close();
  });
});

test('at phone size the page opens in the field lead’s station with the drawing above the facts', async () => {
  const { page, close } = await open({ width: 390, height: 844, touch: true });
  await expect.poll(() => page.locator('[aria-current=page]').textContent()).toBe('Build');
  const board = await page.getByTestId('board').boundingBox();
  const ledger = await page.getByLabel('Ledger').boundingBox();
  // A third of the screen; the list of drops has the rest.
  expect(board!.height).toBeGreaterThan(844 * 0.3);
  expect(ledger!.y).toBeGreaterThan(board!.y + board!.height);
  await close();
});

test('a finger pushes the drawing', async () => {
  const { page, close } = await open({ width: 390, height: 844, touch: true });
  const before = (await tally(page)).camera;
  const box = (await page.getByTestId('board').boundingBox())!;
  const client = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
  const [x, y] = [box.x + 60, box.y + 60];
  await touch('touchStart', x, y);
  for (let i = 1; i <= 5; i++) await touch('touchMove', x + i * 12, y + i * 6);
  await touch('touchEnd', x + 60, y + 30);
  await expect.poll(async () => (await tally(page)).camera).not.toBe(before);
  await close();
});

test('the theme can be changed and is remembered', async () => {
  const { page, close } = await open();
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const day = await ground();
  await page.getByRole('button', { name: 'Change to the dark theme' }).click();
  const night = await ground();
  expect(night).not.toBe(day);
  await page.reload();
  await page.waitForSelector('#page[data-ready=yes]');
  await expect.poll(() => ground()).toBe(night);
  await close();
});
