import { describe, expect, test } from 'vitest';
import { PAPERS, sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { makeLot } from '../../../../bench/make-lot.ts';
import { drawnSheets } from '../drawn-sheets.ts';

const LOTS = {
  'a long lot': makeLot({ name: 'Long', stalls: 90, perCanopy: 90 }),
  'a tall lot': makeLot({ name: 'Tall', stalls: 80, perCanopy: 10 }),
};

describe.each(Object.entries(LOTS))('the raised view of %s', (_, file) => {
  const site = toSite({ ...file, drawings: { purpose: 'construction' } });

  test('shows all of it in parts on one sheet, every drop once and by its name', async () => {
    const sheets = await drawnSheets(site, 'ANSI D', (key) => key === 'raised');
    expect(sheets.map(({ title }) => title)).toEqual(['Raised view']);
    const words = sheets[0]!.texts.map(({ text }) => text);
    const parts = words.filter((text) => text.startsWith('PART '));
    expect(parts.length).toBeGreaterThan(1);
    expect(parts[0]).toMatch(new RegExp(`^PART 1 OF ${parts.length}, (LEFT|TOP) OF THE LOT$`));
    for (const { id } of [...site.drops, ...site.equipment])
      expect([id, words.filter((text) => text === id).length]).toEqual([id, 1]);
    expect(words.filter((text) => /OF THE LOT/.test(text))).toHaveLength(2);
  });

  test('lies within the border', async () => {
    const [sheet] = await drawnSheets(site, 'ANSI D', (key) => key === 'raised');
    const { field } = sheetShape('ANSI D');
    const clips = sheet!.strokes.flatMap(({ clip }) => (clip ? [clip] : []));
    expect(clips.length).toBeGreaterThan(100);
    for (const { x, y, width, height } of clips) {
      expect(x).toBeGreaterThanOrEqual(field.x - 1e-6);
      expect(y).toBeGreaterThanOrEqual(field.y - 1e-6);
      expect(x + width).toBeLessThanOrEqual(field.x + field.width + 1e-6);
      expect(y + height).toBeLessThanOrEqual(field.y + field.height + 1e-6);
    }
  });
});

test.each(PAPERS)('a lot that fills its sheet is left whole on %s', async (paper) => {
  const site = toSite({
    ...makeLot({ name: 'Square', stalls: 40, perCanopy: 20 }),
    drawings: { purpose: 'construction' },
  });
  const [sheet] = await drawnSheets(site, paper, (key) => key === 'raised');
  expect(sheet!.texts.filter(({ text }) => text.startsWith('PART '))).toEqual([]);
});
