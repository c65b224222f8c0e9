import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { feederLines } from '../../../calc/sheets/pdf/one-line/one-line-words.ts';
import { feederConduitsOf, feederSchedule } from '../../../calc/sheets/pdf/schedules/feeder-schedule.ts';
import { settingOutSchedule } from '../../../calc/sheets/pdf/schedules/setting-out-schedule.ts';
import { settingOutSheet } from '../../../calc/sheets/site-work/setting-out-sheet.ts';
import { treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

function sample(name: string): SiteFile {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

test('the setting-out sheets tell what was measured from the lines of the drawing, what it leaves of the cord, and by whom', () => {
  // D05 is drawn at x 52, 1 ft before line 3; it was built at 54.5, 1' 6" past it.
  const asBuilt = { D05: { box: [54.5, 9, 10.75], checkedOn: '2026-05-31', checkedBy: 'JB', note: 'beam' } } as const;
  const site = toSite({ ...sample('library-lot'), asBuilt });
  const planned = plan(site);
  const [head, ...rows] = settingOutSheet(site, planned);
  const row = rows.find((each) => each[0] === 'D05' && each[1] === 'box')!;
  const cell = (name: string) => row[head!.indexOf(name)];
  expect([cell('as built offset x'), cell('as built offset y'), cell('as built above grade')]).toEqual([
    `1' 6"`,
    `9' 0"`,
    `10' 9"`,
  ]);
  expect([cell('checked on'), cell('checked by'), cell('note')]).toEqual(['2026-05-31', 'JB', 'beam']);
  expect(cell('cord spare as drawn')).toBe(`3' 9"`);
  expect(cell('cord spare as built')).not.toBe(cell('cord spare as drawn'));
  const printed = settingOutSchedule({ site, plan: planned }).rows.find((each) => each[0] === 'D05')!;
  expect(printed.slice(-4)).toEqual([`3 + 1' 6"`, `A + 9' 0"`, `10' 9"`, '2026-05-31 JB']);
});

test('a feeder whose length is not known has dashes for its length, drop and loss', () => {
  const file = sample('library-lot');
  const feeders = file.feeders!.map(({ length: _, ...rest }) => rest);
  const known = toSite(file);
  const site = toSite({ ...file, feeders } as SiteFile);
  const cells = (of: typeof site) => {
    const table = feederSchedule({ site: of, plan: plan(of) });
    return ['Length', 'Drop %', 'Loss W'].map(
      (name) => table.rows[0]![table.columns.findIndex(({ head }) => head === name)],
    );
  };
  expect(cells(site)).toEqual(['–', '–', '–']);
  expect(cells(known)).not.toContain('–');
  const node = treeOf(site).nodes.find(({ feeder }) => feeder?.id === site.feeders[0]!.id)!;
  const words = feederLines(node, site, plan(site), feederConduitsOf({ site })).join('\n');
  expect(words).toContain('length not known');
  expect(words).toContain('drop –');
  expect(words).not.toMatch(/0' 0"|0\.00/);
});
