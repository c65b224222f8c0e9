import { describe, expect, test } from 'vitest';
import { plan } from '../../../../../calc/plan/plan.ts';
import { circuitTags } from '../../../../../calc/sheets/pdf/schedules/circuit-words.ts';
import { toSite } from '../../../../../routing/site/to-site.ts';
import { type DrawnSheet, drawnSheets, type Stroke } from '../drawn-sheets.ts';
import { textsOverLines, textsOverTexts } from '../over-words.ts';
import { TWELVE_LOTS } from '../twelve-lots.ts';

/** What no word may lie over, hidden or not. */
const MATTER: ReadonlySet<string> = new Set([
  'raceways',
  'underground',
  'existingRaceways',
  'existingUnderground',
  'existingFeeders',
  'equipment',
  'drops',
  'pullPoints',
  'cords',
  'columns',
  'sections',
  'revisions',
]);
/** A feeder whose way is not drawn, and which a word may part. */
const isDiagram = ({ ink }: Stroke): boolean => ink.dash?.[0] === 1 && ink.dash[1] === 1.6;
/** Words that a person put there stay there, and part what is under them. */
const isOwn = ({ layer }: { readonly layer: string | null }): boolean =>
  layer === 'notes' || layer === 'dimensions' || layer === 'revisions';

const matters = (stroke: Stroke): boolean =>
  stroke.layer === null ? stroke.ink.weight >= 0.35 : MATTER.has(stroke.layer) && !isDiagram(stroke);

/** All that is wrong with the words of a sheet: over one another, over what matters, over any line bare, cut short. */
function faults(sheet: DrawnSheet): readonly string[] {
  const isPlan = /^(plan|enlarged)/.test(sheet.key);
  const placed = { ...sheet, texts: sheet.texts.filter((text) => !(isPlan && isOwn(text))) };
  return [
    ...textsOverTexts(sheet),
    ...textsOverLines(placed, matters),
    // Thin lines are parted under words, on plans and in every other view and picture.
    ...textsOverLines(sheet, (stroke) => !matters(stroke), true),
    ...sheet.texts.filter(({ text }) => text.includes('…')).map(({ text }) => `${sheet.number}: cut short: ${text}`),
  ];
}

const LOTS = TWELVE_LOTS.map(([name, file]) => [name, toSite(file)] as const);

describe.each(LOTS)('the set of %s on ANSI D', (_, site) => {
  test('has no word over a word, a symbol or a raceway, and none cut short', async () => {
    const sheets = await drawnSheets(site, 'ANSI D');
    expect(sheets.flatMap(faults)).toEqual([]);
    // On the plans drawn in full each drop has its number and circuits, and each conduit its name, as the schedules do.
    const plans = sheets.filter(({ key }) => /^(plan|enlarged)/.test(key));
    const full = plans.length > 1 ? plans.slice(1) : plans;
    const words = full.flatMap(({ texts }) => texts.map(({ text }) => text));
    const all = new Set(words);
    expect(site.drops.filter(({ id }) => !all.has(id)).map(({ id }) => id)).toEqual([]);
    expect([...circuitTags(site).values()].filter((tag) => !all.has(tag))).toEqual([]);
  });
});

describe.each(LOTS.filter(([name]) => !/600|ninety|eight/.test(name)))('the set of %s on tabloid', (_, site) => {
  test('has no word over a word, a symbol or a raceway, and none cut short', async () => {
    expect((await drawnSheets(site, 'tabloid')).flatMap(faults)).toEqual([]);
  });
});

test.each(['permit', 'construction', 'as-built'] as const)(
  'the title block of a set for %s has no word over a word on either paper, keynotes and all',
  async (purpose) => {
    const [, site] = LOTS.find(([name]) => name === 'library-lot')!;
    for (const paper of ['ANSI D', 'tabloid'] as const) {
      const drawings = { ...site.drawings, purpose };
      const sheets = await drawnSheets({ ...site, drawings }, paper, (key) => /^(plan|cover)/.test(key));
      expect(sheets.flatMap(faults)).toEqual([]);
    }
  },
);

test('conduits of the samples are named on the plans as its schedule has it', async () => {
  for (const [name, site] of LOTS.slice(0, 4)) {
    const sheets = await drawnSheets(site, 'ANSI D', (key) => /^(plan|enlarged)/.test(key));
    const words = sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    const { conduits } = plan(site);
    const named = conduits.filter(({ id }) => words.includes(id));
    const between = new Set(
      [...words.matchAll(/(\S+?)(\d+)(\.\d+) to \S+?(\d+)\.\d+/g)].flatMap(([, head, from, tail, to]) =>
        Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${head}${Number(from) + i}${tail}`),
      ),
    );
    const missing = conduits.filter(({ id }) => !between.has(id) && !named.some((one) => one.id === id));
    // A few in the thick of a home run have no room: the notes send whoever looks for them to the strips.
    expect([name, missing.length <= conduits.length * 0.06]).toEqual([name, true]);
  }
});
