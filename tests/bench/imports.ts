import DxfParser from 'dxf-parser';
import { drawDxf } from '../../routing/site/import/dxf.ts';
import { linePacker } from '../../web/underlay/reading/packed-lines.ts';
import { launchBrowser } from '../browser/chromium.ts';
import { openPage } from '../browser/open-page.ts';
import { servePage } from '../browser/serve.ts';
import { largeDrawing } from './large-drawing.ts';

export interface ImportRow {
  readonly entities: number;
  readonly megabytes: number;
  readonly what: string;
  /** Milliseconds: of the processor, the fastest of some repeats; in the page from the choice of the file to its picture. */
  readonly ms: number;
  /** Times as long as reading by this project. */
  readonly ratio: number;
  /** Longest that the page did not draw a frame, milliseconds. */
  readonly stalls?: number;
  /** Things read: the same by all. */
  readonly things: number;
}

const REPEATS = 4;

/**
 * A large DXF read and packed by this project, cut into entities by a reader that is not ours (which draws no curve and
 * expands no block), and laid under the drawing in the built page.
 */
export async function importBench(sizes: readonly number[]): Promise<ImportRow[]> {
  const rows: ImportRow[] = [];
  for (const entities of sizes) {
    const text = largeDrawing(entities);
    const megabytes = text.length / 1e6;
    const own = fastest(() => {
      const packer = linePacker();
      const read = drawDxf(text, packer.put);
      if (!read.ok) throw new Error(read.fault.says);
      return packer.packed().closed.length + read.value.words.length;
    });
    const peer = fastest(() => new DxfParser().parseSync(text)?.entities.length ?? 0);
    const page = await inPage(Buffer.from(text));
    const row = (what: string, { ms, things }: Timed): ImportRow => ({
      entities,
      megabytes,
      what,
      ms,
      ratio: ms / own.ms,
      things,
    });
    rows.push(row('this project', own), row('dxf-parser, nothing drawn', peer), {
      ...row('in the page, to its picture', page),
      stalls: page.stalls,
    });
  }
  return rows;
}

interface Timed {
  readonly ms: number;
  readonly things: number;
}

function fastest(work: () => number): Timed {
  let [ms, things] = [Infinity, 0];
  for (let i = 0; i < REPEATS; i++) {
    const from = process.cpuUsage();
    things = work();
    const { user, system } = process.cpuUsage(from);
    ms = Math.min(ms, (user + system) / 1000);
  }
  return { ms, things };
}

async function inPage(buffer: Buffer): Promise<Timed & { readonly stalls: number }> {
  const browser = await launchBrowser();
  const served = await servePage();
  const { page, close } = await openPage(browser, served);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'An empty site' }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Put a site plan underneath/ }).click(),
  ]);
  await page.waitForTimeout(1500);
  const frames = page.evaluate(async () => {
    let longest = 0;
    let last = performance.now();
    const shown = (): boolean => document.querySelector('[data-testid=underlay][data-state=shown]') !== null;
    let begun = Number.NaN;
    while (!shown()) {
      const now = await new Promise<number>((resolve) => requestAnimationFrame(resolve));
      if (Number.isNaN(begun) && document.querySelector('.underlay-reading')) begun = now;
      if (!Number.isNaN(begun)) longest = Math.max(longest, now - last);
      last = now;
    }
    return { ms: last - begun, longest };
  });
  await chooser.setFiles({ name: 'large.dxf', mimeType: 'application/dxf', buffer });
  const { ms, longest } = await frames;
  const says = await page.getByTestId('underlay').textContent();
  const [, lines = '', words = '0'] =
    /([\d,]+) lines on [\d,]+ layers(?:, ([\d,]+) lines of words)?/.exec(says ?? '') ?? [];
  const count = (text: string): number => Number(text.replaceAll(',', ''));
  await close();
  await served.close();
  await browser.close();
  return { ms, stalls: longest, things: count(lines) + count(words) };
}
