import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSite } from '../../../routing/site/file/read.ts';
import type { AsBuilt } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { buildRows, isShown, nextRow } from '../../../web/field/cards/build-rows.ts';
import { ALL_DROPS } from '../../../web/page-state/build-filter.ts';

function rowsWith(asBuilt: Readonly<Record<string, AsBuilt>>) {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return buildRows(toSite({ ...read.file, asBuilt }));
}

const shown = (rows: ReturnType<typeof rowsWith>, filter: Partial<typeof ALL_DROPS>) =>
  rows.filter((row) => isShown(row, { ...ALL_DROPS, ...filter })).map(({ id }) => id);

test('a row says where the drop is set out, whether it is done, and how far off it was built', () => {
  const rows = rowsWith({
    D05: { box: [54.5, 9, 11], checkedOn: '2026-05-31' },
    D06: { checkedOn: '2026-05-31' },
    D07: { note: 'no lift' },
  });
  const row = (id: string) => rows.find((each) => each.id === id)!;
  // Drawn at x 52, y 9, 11 ft up; line 3 at 53, line A at 0.
  expect(row('D05')).toMatchObject({
    done: true,
    off: '2\' 6"',
    place: `3 − 1' 0", A + 9' 0", 11' 0" up`,
    stalls: '05',
  });
  expect(row('D06')).toMatchObject({ done: true, off: null });
  expect(row('D07')).toMatchObject({ done: false, off: null });
});

test('the list is found in by drop, charger and stall, and cut to what is not done or is off the drawing', () => {
  const rows = rowsWith({ D05: { box: [54.5, 9, 11], checkedOn: '2026-05-31' } });
  expect(shown(rows, {})).toHaveLength(16);
  expect(shown(rows, { find: 'd1' })).toEqual(['D10', 'D11', 'D12', 'D13', 'D14', 'D15', 'D16']);
  expect(shown(rows, { find: 'EV05' })).toEqual(['D05']);
  expect(shown(rows, { find: 'no such' })).toEqual([]);
  expect(shown(rows, { notDone: true })).toHaveLength(15);
  expect(shown(rows, { offDrawing: true })).toEqual(['D05']);
});

test('the next drop is the next that is shown, from the top again, and never the same', () => {
  const done = { checkedOn: '2026-05-31' };
  const rows = rowsWith({ D05: done, D06: done, D16: done });
  const filter = { ...ALL_DROPS, notDone: true };
  expect(nextRow(rows, filter, 'D05')?.id).toBe('D07');
  expect(nextRow(rows, ALL_DROPS, 'D05')?.id).toBe('D06');
  expect(nextRow(rows, filter, 'D15')?.id).toBe('D01');
  expect(nextRow(rows, { ...ALL_DROPS, find: 'D05' }, 'D05')).toBeNull();
});
