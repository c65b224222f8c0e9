import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { revision } from '../../../../calc/plan/compared/revision.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { type Planned, plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';

/** The mark of the revision: no other word of the sheets reads so. */
const MARK = 'Q7';

interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  /** From the upper edge of the page to its middle, points. */
  readonly down: number;
}

/** The words of each page of a PDF with their places, as poppler reads them. */
function wordsOf(bytes: Uint8Array): readonly (readonly Word[])[] {
  const folder = mkdtempSync(join(tmpdir(), 'overrow-deltas-'));
  const file = join(folder, 'set.pdf');
  writeFileSync(file, bytes);
  const out = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  rmSync(folder, { recursive: true });
  return out
    .split('<page ')
    .slice(1)
    .map((page) =>
      [...page.matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)<\/word>/g)].map(
        ([, left, above, right, below, text]) => ({
          text: text!,
          left: Number(left),
          right: Number(right),
          down: (Number(above) + Number(below)) / 2,
        }),
      ),
    );
}

interface Line {
  readonly text: string;
  readonly right: number;
  readonly down: number;
}

/** Words on one base line with no wide gap between them. */
function linesOf(words: readonly Word[], gap = 60): readonly Line[] {
  const lines: Word[][] = [];
  for (const word of [...words].sort((a, b) => a.left - b.left)) {
    const line = lines.find(
      (one) => Math.abs(one.at(-1)!.down - word.down) < 1.5 && word.left - one.at(-1)!.right < gap,
    );
    if (line) line.push(word);
    else lines.push([word]);
  }
  return lines.map((line) => ({
    text: line.map(({ text }) => text).join(' '),
    right: line.at(-1)!.right,
    down: line[0]!.down,
  }));
}

const { field } = sheetShape('ANSI D');
const END = field.x + field.width;

const lot = (parts: readonly SheetPart[], change: (file: SiteFile) => SiteFile = (file) => file): Planned =>
  plannedSample('library-lot', (file) => {
    const chargers = file.chargers!.slice(0, 5);
    const drops = file.drops!.filter(({ id }) => chargers.some(({ drop }) => drop === id));
    return change({
      ...file,
      pullpoints: [],
      stalls: file.stalls!.slice(0, 5),
      chargers,
      drops,
      drawings: { sheets: parts },
    });
  });

/** A charger of less current, a drop moved along its row, another load, a pull point. */
const changed = (file: SiteFile): SiteFile => ({
  ...file,
  chargers: file.chargers!.map((one, i) => (i === 1 ? { ...one, amps: 24 } : one)),
  drops: file.drops!.map((drop, i) => {
    if (i !== 3) return drop;
    const [x, y, z] = drop.box;
    return { ...drop, box: [x + 1, y, z], ...(drop.retractor && { retractor: [x + 1, y, drop.retractor[2]] }) };
  }),
  loads: [
    ...(file.loads ?? []),
    { id: 'L9', from: 'P1', name: 'Gate', volts: 120, phases: 1, va: 900, continuous: true },
  ],
  pullpoints: [...(file.pullpoints ?? []), { id: 'PB9', at: [file.raceways![0]!.path[1]![0], 0, 11] }],
});

async function setsOf(parts: readonly SheetPart[]) {
  const [before, after] = [lot(parts), lot(parts, changed)];
  const changes = revision(
    alternativeOf('before', before.site, INVENTED_LIST),
    alternativeOf('after', after.site, INVENTED_LIST),
  );
  const was = { site: before.site, plan: before.planned };
  const issue = { number: MARK, date: '2026-11-20', text: null, since: 'before', before: was, changes };
  const [first, then] = await Promise.all([
    setOf(before, { paper: 'ANSI D' }),
    setOf(after, { paper: 'ANSI D', revision: issue }),
  ]);
  return { first: wordsOf(first), later: wordsOf(then) };
}

/** Points that a delta may stand over the middle of its line, and under it: a row of two lines has one at its first. */
const [OVER, UNDER] = [26, 6];

const PARTS: readonly SheetPart[] = ['panels', 'loads', 'takeoff', 'setting-out', 'feeders', 'steel'];

test.each(PARTS)('of %s every printed line that reads otherwise has a delta', async (part) => {
  const { first, later } = await setsOf([part]);
  // The cover is left out: its index and notes are tables as the others; so is the list of changes, which is all new.
  const own = (pages: readonly (readonly Word[])[]) =>
    pages
      .map((words) => words.filter(({ left }) => left < END))
      .filter((words) => !words.some(({ text }) => text === 'INDEX') && !words.some(({ text }) => text === 'CHANGES'));
  const before = new Set(own(first).flatMap((words) => linesOf(words).map(({ text }) => text)));
  // Columns that are wider part a row elsewhere.
  const rows = own(first).flatMap((words) => linesOf(words, Infinity).map(({ text }) => text));
  let marks = 0;
  for (const words of own(later)) {
    const deltas = words.filter(({ text }) => text === MARK);
    const lines = linesOf(words.filter(({ text }) => text !== MARK)).filter(({ text }) => !before.has(text));
    // What goes on in another place, and prose that is wrapped anew under a wider table, reads as it did.
    const isRow = (text: string): boolean => text.length < 100 && !text.includes('(CONTINUED)');
    const fresh = lines.filter(({ text }) => isRow(text) && !rows.some((row) => row.includes(text)));
    const isMarked = ({ down }: Line): boolean =>
      deltas.some((delta) => down - delta.down < OVER && delta.down - down < UNDER);
    expect(fresh.filter((line) => !isMarked(line)).map(({ text }) => text)).toEqual([]);
    expect(deltas.length).toBeLessThan(linesOf(words).length);
    marks += deltas.length;
  }
  expect(marks).toBeGreaterThan(0);
});

test('a keynote that is new has a delta in the title block, and those before it have none', async () => {
  const { first, later } = await setsOf(['plan']);
  const notesOf = (pages: readonly (readonly Word[])[]) => {
    const page = pages.find((words) => words.some(({ text, left }) => text === 'KEYNOTES' && left > END))!;
    const block = page.filter(({ left }) => left > END);
    const from = block.find(({ text }) => text === 'KEYNOTES')!;
    return { from, block: block.filter(({ down }) => down > from.down) };
  };
  const [old, now] = [notesOf(first), notesOf(later)];
  const text = ({ block }: typeof now): string =>
    linesOf(block)
      .map((line) => line.text)
      .join(' ');
  expect(text(old)).not.toContain('Pull point');
  const line = linesOf(now.block).find((one) => one.text.includes('Pull point'))!;
  const last = linesOf(now.block).find((one) => one.text.includes('Seal'))!;
  const deltas = now.block.filter((word) => word.text === MARK && word.down < last.down);
  // Those before it keep their numbers, and stand without.
  expect(deltas.filter(({ down }) => Math.abs(down - line.down) < 14)).toHaveLength(1);
  expect(deltas.filter(({ down }) => down < line.down - 14)).toEqual([]);
});
