import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { dayOf } from '../../calc/sheets/day.ts';
import type { Wanted } from '../../web/sheets/sheet-request.ts';
import { writeSheets } from '../../web/sheets/write-sheets.ts';
import { plannedSample } from '../outside/sheets/planned-samples.ts';
import { opener } from './open.ts';
import { openSample } from './open-page.ts';

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

const fonts = async () => ({
  regular: new Uint8Array(readFileSync('calc/sheets/fonts/overpass-regular.ttf')),
  bold: new Uint8Array(readFileSync('calc/sheets/fonts/overpass-semibold.ttf')),
});

/** What this process makes of a sample, with the arithmetic of an engine of another version. */
async function here(sample: string, wanted: Wanted, page = ''): Promise<Buffer> {
  const { site } = plannedSample(sample);
  const name = `${site.name}.site.json`;
  const content = await writeSheets(
    { name, site, wanted, prices: INVENTED_LIST, date: dayOf(new Date()), underlays: [], page },
    fonts,
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
