import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { packedFonts } from '../../calc/cli/writing/fonts.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { dayOf } from '../../calc/sheets/days/day.ts';
import { readSite } from '../../routing/site/file/read.ts';
import type { Site } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { fileNameOf } from '../../web/document/files/files.ts';
import type { Wanted } from '../../web/sheets/sheet-request.ts';
import { writeRequest } from '../../web/sheets/write-sheets.ts';
import { plannedSample } from '../outside/sheets/planned-samples.ts';
import { manyScripts } from '../scripts/many-scripts.ts';
import { NAMES } from '../scripts/names.ts';
import { opener } from './open.ts';
import { openSample, ready } from './open-page.ts';

const open = opener();

const SAMPLES = [
  ['Library lot', 'Alder Street Library lot', 'library-lot'],
  ['Library pedestals', 'Alder Street Library lot, pedestals', 'library-pedestals'],
  ['Fleet yard', 'Quarry Road fleet yard', 'fleet-yard'],
  ['Hospital lot', 'Mill Creek Hospital lot', 'hospital-lot'],
] as const;

async function sheet(page: Page, name: string): Promise<Buffer> {
  await page.getByRole('button', { name: 'Sheets' }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('menuitem', { name }).click()]);
  return readFile((await download.path())!);
}

/** What this process makes of a site, with the arithmetic of an engine of another version. */
async function here(sample: string | Site, wanted: Wanted, page = '', file?: string): Promise<Buffer> {
  const site = typeof sample === 'string' ? plannedSample(sample).site : sample;
  const name = file ?? `${site.name}.site.json`;
  const content = await writeRequest(
    { name, site, wanted, prices: INVENTED_LIST, date: dayOf(new Date()), underlays: [], page },
    packedFonts,
    () => undefined,
  );
  return Buffer.from(content as Uint8Array);
}

test('the page writes the very bytes of the plan and the drawing that Node writes', async () => {
  const { page, offences, close } = await open();
  for (const [name, title, sample] of SAMPLES) {
    await openSample(page, name, title);
    for (const [says, ending] of [
      ['The plan, as JSON', '.plan.json'],
      ['Plan drawing, as DXF', '.dxf'],
    ] as const)
      expect(
        (await sheet(page, says)).equals(await here(sample, { kind: 'sheet', ending })),
        `${sample}${ending}`,
      ).toBe(true);
  }
  // Names in every script, in typefaces that the page brings when a name needs them.
  const text = manyScripts();
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'A site file…' }).click();
  await (await choosing).setFiles({ name: 'many.site.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('heading', { level: 1, name: NAMES.simplified }).waitFor();
  await ready(page);
  const read = readSite(text);
  if (!read.ok) throw new Error('the site with many scripts was not read');
  const site = toSite(read.file);
  const theirs = await sheet(page, 'Drawing set, ANSI D PDF');
  expect(theirs.equals(await here(site, { kind: 'sheet', ending: '.drawings.pdf' }, '', fileNameOf(site.name)))).toBe(
    true,
  );
  expect(offences).toEqual([]);
  await close();
});

test('and so of every sheet', async () => {
  const { page, close } = await open();
  await openSample(page, 'Fleet yard', 'Quarry Road fleet yard');
  const theirs = unzipSync(new Uint8Array(await sheet(page, 'Every sheet, in one ZIP')));
  const ours = unzipSync(
    new Uint8Array(await here('fleet-yard', { kind: 'every' }, page.url().replace(/[?#].*$/, ''))),
  );
  expect(Object.keys(theirs)).toEqual(Object.keys(ours));
  for (const [name, bytes] of Object.entries(theirs))
    expect([name, Buffer.from(bytes).equals(Buffer.from(ours[name]!))]).toEqual([name, true]);
  await close();
});
