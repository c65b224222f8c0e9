import { describe, expect, test } from 'vitest';
import { GRADES } from '../../../routing/site/rules/finding.ts';
import { setOf } from './pdf/drawing-set.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { plannedSample } from './planned-samples.ts';

/** What an issued sheet does not say of its figures: it lists what is to be confirmed instead. */
const UNFIT =
  /guess|hobby|from memory|convention of this planner|training page|trade teaching|public notes|, no source/i;

/** Every text of a set, page by page, in the order of drawing. */
async function textsOf(name: string): Promise<readonly string[]> {
  const { pages } = await readPdf(await setOf(plannedSample(name)));
  return pages.map(({ texts }) => texts.map(({ text }) => text).join(' '));
}

describe.each(['library-lot', 'fleet-yard', 'hospital-lot'])('the sheets of %s', (name) => {
  test('say nothing that is unfit to be issued', async () => {
    for (const text of await textsOf(name)) {
      const at = UNFIT.exec(text)?.index;
      expect(at === undefined ? '' : text.slice(Math.max(0, at - 80), at + 40)).toBe('');
    }
  });
});

test('the cover lists what was checked, what nobody looked at and what is to be confirmed, by the grades of the page', async () => {
  const set = plannedSample('library-lot');
  const cover = (await textsOf('library-lot')).join(' ').replace(/\s+/g, ' ').toLowerCase();
  for (const title of [
    'checks made',
    'not looked at: for others to check',
    'assumptions to be confirmed',
    'design criteria',
  ])
    expect(cover).toContain(title);
  for (const { title } of set.planned.checks)
    expect(cover.replaceAll(' ', '')).toContain(title.toLowerCase().replaceAll(' ', ''));
  for (const text of set.planned.notChecked)
    expect(cover.replaceAll(' ', '')).toContain(text.toLowerCase().replaceAll(' ', ''));
  expect(cover).toContain('design temperature of the site');
  expect(cover).toContain('40 °c (104 °f)');
  expect(cover).toContain(GRADES.warn.toLowerCase());
});
