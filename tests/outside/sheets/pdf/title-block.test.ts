import { expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { readPdf } from './read-pdf.ts';

const PROJECT = {
  number: '24-017',
  client: 'An invented owner',
  address: '1 Invented Street',
  jurisdiction: 'An invented county',
  phase: 'For permit',
  drawn: 'A.B.',
  checked: 'C.D.',
  issues: [
    { mark: 'A', date: '2026-11-01', text: 'For review' },
    { mark: 'B', date: '2026-11-20', text: 'For permit' },
  ],
};

test('every title block says what the file says of the job, with the last issues, and nothing where it says nothing', async () => {
  const withProject = (file: SiteFile): SiteFile => ({ ...file, project: PROJECT });
  const said = ['Project 24-017', 'For An invented owner', '1 Invented Street', 'Authority: An invented county'];
  const { pages } = await readPdf(await setOf(plannedSample('library-lot', withProject)));
  for (const { texts, label } of pages) {
    const words = texts.map(({ text }) => text);
    for (const line of [...said, 'For permit', 'A.B.', 'C.D.', '2026-11-01']) expect(words, label).toContain(line);
  }
  const bare = await readPdf(await setOf(plannedSample('library-lot')));
  for (const { texts } of bare.pages)
    expect(texts.map(({ text }) => text).join('\n')).not.toMatch(/Project |Authority: |Drawn by|Checked by/);
});
