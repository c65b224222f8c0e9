import { expect, test } from 'vitest';
import { toSite } from '../../../../routing/site/to-site.ts';
import { SMALL } from '../../../web/document/small-site.ts';
import { drawnSheets } from './drawn-sheets.ts';

test.each([
  [0, -140],
  [-120, 10],
  [160, 60],
  [20, 150],
] as const)('a note at %d, %d ft, far off the lot, stands on the plan', async (...at) => {
  const site = toSite({ ...SMALL, notes: [{ id: 'N1', at: [...at], text: 'HYDRANT, KEEP CLEAR' }] });
  const sheets = await drawnSheets(site, 'ANSI D');
  const plan = sheets.find(({ number }) => number.startsWith('E-1'))!;
  expect(plan.texts.map(({ text }) => text).join(' ')).toContain('HYDRANT, KEEP CLEAR');
});
