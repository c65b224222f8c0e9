import { beforeAll, describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { revision } from '../../../../calc/plan/compared/revision.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { linesOn, type ReadPage, type ReadPdf, readPdf } from './read-pdf.ts';

/** Two drops stand elsewhere, 2 ft nearer to the raceway and 40 ft apart, and a column has gone. */
const later = (file: SiteFile): SiteFile => ({
  ...file,
  drops: file.drops!.map((drop) =>
    MOVED.includes(drop.id)
      ? { ...drop, box: lower(drop.box), ...(drop.retractor && { retractor: lower(drop.retractor) }) }
      : drop,
  ),
  columns: file.columns!.slice(0, -1),
});
const MOVED = ['D03', 'D07'];
const lower = ([x, y, z]: readonly [number, number, number]) => [x, y - 2, z] as const;

const turned = (file: SiteFile): SiteFile => ({
  ...file,
  gridlines: { ...file.gridlines, origin: [3, -5], rotation: 30 },
});

async function revised(change: (file: SiteFile) => SiteFile) {
  const before = plannedSample('library-lot', change);
  const after = plannedSample('library-lot', (file) => later(change(file)));
  const changes = revision(
    alternativeOf('before', before.site, INVENTED_LIST),
    alternativeOf('after', after.site, INVENTED_LIST),
  );
  const bytes = await setOf(after, {
    revision: {
      number: '7',
      date: '2026-11-20',
      text: null,
      since: 'first.site.json',
      before: { site: before.site, plan: before.planned },
      changes,
    },
  });
  return { before, after, changes, bytes, pdf: await readPdf(bytes) };
}

const wordsOf = ({ texts }: ReadPage): string => texts.map(({ text }) => text).join(' ');
const pageOf = (pdf: ReadPdf, label: string): number => pdf.pages.findIndex((page) => page.label === label);

let made: Awaited<ReturnType<typeof revised>>;
beforeAll(async () => {
  made = await revised((file) => file);
});

describe('a revised drawing set, as pdf.js reads it', () => {
  test.each(['along', 'turned'] as const)(
    'has a cloud to scale round each thing that moved and the place of what is gone, each with its delta: gridlines %s',
    async (how) => {
      const { pdf, bytes, before, after } = how === 'along' ? made : await revised(turned);
      const number = pageOf(pdf, 'E-101');
      const { texts } = pdf.pages[number]!;
      // Gridlines tell how the plan lies on the sheet: labels stand in the middle of their bubbles.
      const middle = (label: string): { x: number; y: number } => {
        const text = texts.find((one) => one.text === label)!;
        return { x: text.x + text.width / 2, y: text.y + 0.35 * text.size };
      };
      const { x: lines, y: rows, origin = [0, 0], rotation = 0 } = after.site.gridlines;
      const [first, last, row] = [middle(lines[0]!.label), middle(lines.at(-1)!.label), middle(rows[0]!.label)];
      const perFoot = (last.x - first.x) / (lines.at(-1)!.at - lines[0]!.at);
      const [cos, sin] = [Math.cos((rotation * Math.PI) / 180), Math.sin((rotation * Math.PI) / 180)];
      const onSheet = ([px, py]: readonly number[]): readonly [number, number] => {
        const [dx, dy] = [px! - origin[0], py! - origin[1]];
        const [x, y] = [dx * cos + dy * sin, dy * cos - dx * sin];
        return [first.x + (x - lines[0]!.at) * perFoot, row.y + (y - rows[0]!.at) * perFoot];
      };
      const gone = before.site.columns.at(-1)!;
      const places = [
        ...after.site.drops.filter(({ id }) => MOVED.includes(id)).map(({ box }) => onSheet(box)),
        onSheet(gone.at),
      ];
      const boxes = await linesOn(bytes, number + 1, 'G-ANNO-REVS');
      const clouds = boxes.filter((_, i) => i % 2 === 0);
      const deltas = boxes.filter((_, i) => i % 2 === 1);
      expect(places).toHaveLength(3);
      expect(clouds).toHaveLength(3);
      for (const [x, y] of places) {
        const round = clouds.filter(([a, b, c, d]) => x > a! && x < c! && y > b! && y < d!);
        expect(round).toHaveLength(1);
        const [a, b, c, d] = round[0]!;
        expect((a! + c!) / 2).toBeCloseTo(x, 0);
        expect((b! + d!) / 2).toBeCloseTo(y, 0);
        expect(Math.max(c! - a!, d! - b!)).toBeLessThan(7 * perFoot + 13);
      }
      for (const [a, b, c, d] of deltas)
        expect(texts.filter(({ text, x, y }) => text === '7' && x > a! && x < c! && y > b! && y < d!)).toHaveLength(1);
    },
  );

  test('every title block names the revision and what it changed; a schedule lists each change', () => {
    const { pdf, changes } = made;
    for (const page of pdf.pages) {
      expect(wordsOf(page).replace(/\s+/g, ' ')).toContain('elements: 1 removed, 2 moved');
      expect(wordsOf(page)).toContain('first.site.json');
    }
    const all = pdf.pages.map(wordsOf).join(' ').replace(/\s+/g, ' ');
    expect(all).toContain('CHANGES OF REVISION 7');
    for (const { id, list, change } of changes.elements) expect(all).toContain(`${id} (${list}) ${change}`);
    expect(changes.quantities.length).toBeGreaterThan(0);
    for (const { item, spec } of changes.quantities)
      expect(all.replace(/\s/g, '')).toContain(`${item}, ${spec}`.replace(/\s/g, ''));
  });

  test('a first set has no cloud, no delta and no word of a revision', async () => {
    const bytes = await setOf(made.after);
    const pdf = await readPdf(bytes);
    for (const [i, page] of pdf.pages.entries()) {
      expect(await linesOn(bytes, i + 1, 'G-ANNO-REVS')).toEqual([]);
      expect(wordsOf(page)).not.toMatch(/revision \d|Since \S+\.site/i);
    }
  });
});
