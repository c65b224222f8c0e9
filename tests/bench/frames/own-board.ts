import type { Browser, Page } from 'playwright-core';
import type { SiteFile } from '../../../routing/site/site.ts';
import { onScreen, openPage, ready, tally } from '../../browser/open-page.ts';
import { servePage } from '../../browser/serve.ts';
import { around, type BoardTimes, DRAG_SCALE, dragged, VIEW, wheeled } from './gestures.ts';

/**
 * Frame times of the built page with a site open, flat or with its heights raised: the whole of it panned and zoomed, then
 * a drop dragged.
 */
export async function ownBoard(browser: Browser, site: SiteFile, isRaised = false): Promise<BoardTimes> {
  const served = await servePage();
  const { page, close } = await openPage(browser, served, VIEW);
  await openSite(page, site);
  if (isRaised) {
    await page.getByRole('button', { name: 'Raise' }).click();
    await page.locator('[data-raised=yes]').waitFor();
  }
  const box = (await page.getByTestId('board').boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await settled(page);
  const pan = await dragged(page, around(middle, 120), 'middle');
  const zoom = await wheeled(page, middle, 24);
  const drop = site.drops![Math.floor(site.drops!.length / 2)]!;
  const [x, planY, z] = drop.retractor ?? drop.box;
  // The hand takes what it sees: raised, that is drawn higher up.
  const y = planY + (isRaised ? z : 0);
  for (let i = 0; i < 60 && Number((await tally(page)).camera!.split(' ')[2]) < DRAG_SCALE; i++) {
    const [px, py] = await onScreen(page, [x, y]);
    await page.mouse.move(px, py);
    await page.mouse.wheel(0, -60);
    await page.waitForTimeout(30);
  }
  await settled(page);
  const [px, py] = await onScreen(page, [x, y]);
  const near = await dragged(page, around({ x: px, y: py }, 120), 'middle');
  const nudge = await dragged(page, around({ x: px, y: py }, 12), 'left');
  const drag = await dragged(page, around({ x: px, y: py }, 40), 'left');
  await close();
  await served.close();
  return { pan, zoom, near, nudge, drag };
}

async function openSite(page: Page, site: SiteFile): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('menuitem', { name: /^A site file/ }).click();
  await (await choosing).setFiles({
    name: 'bench.site.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(site)),
  });
  await page.getByRole('heading', { level: 1, name: site.name }).waitFor({ timeout: 120_000 });
  await ready(page);
}

/** Waits until what follows an opening (keeping the site, drawing the tables) is over. */
const settled = (page: Page): Promise<void> => page.waitForTimeout(1500);
