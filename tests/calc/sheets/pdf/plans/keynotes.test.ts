import { describe, expect, test } from 'vitest';
import { type Paper, sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { type DrawnSheet, drawnSheets } from '../drawn-sheets.ts';
import { TWELVE_LOTS } from '../twelve-lots.ts';

/** Numbers in hexagons, in the drawing and in the list beside it. */
function keynotes(
  { strokes, texts }: DrawnSheet,
  paper: Paper = 'ANSI D',
): {
  readonly marks: readonly string[];
  readonly list: readonly string[];
} {
  const { titleBlock } = sheetShape(paper);
  const found = strokes
    .filter(({ points, layer, ink }) => points.length === 7 && layer === null && ink.weight === 0.18)
    .map(({ points }) => {
      const x = (Math.min(...points.map(([px]) => px)) + Math.max(...points.map(([px]) => px))) / 2;
      const y = (Math.min(...points.map(([, py]) => py)) + Math.max(...points.map(([, py]) => py))) / 2;
      const inside = texts.filter(({ corners: [a, , c] }) => a![0] < x && x < c![0] && a![1] < y && y < c![1]);
      expect(inside).toHaveLength(1);
      return { number: inside[0]!.text, isListed: x > titleBlock.x };
    });
  const numbers = (isListed: boolean): readonly string[] =>
    found.flatMap((one) => (one.isListed === isListed ? [one.number] : [])).sort();
  return { marks: numbers(false), list: numbers(true) };
}

const wanted = /pedestals$|^fleet|^hospital|^tiny/;

describe.each(TWELVE_LOTS.filter(([name]) => wanted.test(name)))('the keynotes of %s', (name, file) => {
  test('each stand once on the plan and once in the list beside it, by one number in all of the set', async () => {
    const site = toSite({ ...file, drawings: { sheets: ['plan', 'enlarged'] } });
    const sheets = await drawnSheets(site, 'ANSI D', (key) => /^(plan|enlarged)/.test(key));
    const full = sheets.length > 1 ? sheets.slice(1) : sheets;
    const words = new Map<string, string>();
    for (const sheet of full) {
      const { marks, list } = keynotes(sheet);
      expect(list.length).toBeGreaterThan(0);
      expect(marks).toEqual(list);
      expect(new Set(list).size).toBe(list.length);
      const all = sheet.texts.map(({ text }) => text);
      for (const number of list) {
        // The line after a number in its hexagon is how its note begins.
        const at = sheet.texts.findLastIndex(
          ({ text, corners }) => text === number && corners[0]![0] > sheetShape('ANSI D').titleBlock.x,
        );
        const begins = all[at + 1]!;
        expect(words.get(number) ?? begins).toBe(begins);
        words.set(number, begins);
      }
    }
    if (name === 'library-pedestals') expect([...words.values()].join(' ')).toMatch(/Pedestal.*trench.*[Ss]ervice/);
    if (name === 'hospital-lot') expect([...words.values()].join(' ')).not.toMatch(/Pedestal/);
  });
});

describe.each(TWELVE_LOTS.filter(([name]) => wanted.test(name)))('the keynotes of %s on tabloid', (name, file) => {
  test('are on the general sheet that each plan names, where there is no room beside it', async () => {
    const site = toSite({ ...file, drawings: { sheets: ['plan', 'enlarged'] } });
    const sheets = await drawnSheets(site, 'tabloid', (key) => /^(cover|plan|enlarged)/.test(key));
    const list = sheets.filter(({ texts }) => texts.some(({ text }) => text === 'KEYNOTES OF THE PLANS'));
    const plans = sheets.filter(({ key }) => !key.startsWith('cover'));
    const full = plans.length > 1 ? plans.slice(1) : plans;
    let elsewhere = 0;
    for (const sheet of full) {
      const { marks, list: beside } = keynotes(sheet, 'tabloid');
      expect(marks.length).toBeGreaterThan(0);
      const told = sheet.texts.flatMap(({ text }) => /^All keynotes: (.*)$/.exec(text)?.[1] ?? []);
      const bare = marks.filter((mark) => !beside.includes(mark));
      expect(told).toEqual(bare.length > 0 ? [list[0]!.number] : []);
      elsewhere += bare.length;
      const { texts } = list[0] ?? { texts: [] };
      const from = texts.findIndex(({ text }) => text === 'KEYNOTES OF THE PLANS');
      for (const mark of bare) expect(texts.slice(from).map(({ text }) => text)).toContain(`${mark}.`);
    }
    if (name !== 'tiny') expect(elsewhere).toBeGreaterThan(0);
  });
});
