import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../../calc/plan/compared/alternative.ts';
import { revision } from '../../../../../calc/plan/compared/revision.ts';
import { issueNames } from '../../../../../calc/plan/issue-names.ts';
import { INVENTED_LIST } from '../../../../../calc/prices/invented-list.ts';
import { withDeltas } from '../../../../../calc/sheets/pdf/kit/revision/deltas.ts';
import type { Table } from '../../../../../calc/sheets/pdf/kit/tables/table.ts';
import { panelTables } from '../../../../../calc/sheets/pdf/schedules/panel-schedules.ts';
import type { SiteFile } from '../../../../../routing/site/site.ts';
import { setOf } from '../../../../outside/sheets/pdf/drawing-set.ts';
import { linesOn, readPdf } from '../../../../outside/sheets/pdf/read-pdf.ts';
import { type Planned, plannedSample } from '../../../../outside/sheets/planned-samples.ts';

/** The library lot as issued, with the schedules whose rows go by names. */
let issued: Planned;
const later = (change: (file: SiteFile) => SiteFile): Planned =>
  plannedSample('library-lot', (file) => change(asIssued(file)));
const asIssued = (file: SiteFile): SiteFile => ({
  ...file,
  drawings: { sheets: ['circuits', 'conduits'] },
  ...(issued && { issued: issueNames(issued.site, issued.planned) }),
});
beforeAll(() => {
  issued = plannedSample('library-lot', asIssued);
  issued = later((file) => file);
});

/** A drop moved a little along or across, a charger of other amps, or a cord of another length. */
const edit = fc.oneof(
  fc.record({ drop: fc.nat(15), by: fc.tuple(fc.integer({ min: -2, max: 2 }), fc.integer({ min: -1, max: 1 })) }),
  fc.record({ charger: fc.nat(15), amps: fc.constantFrom(16, 24, 40) }),
  fc.record({ drop: fc.nat(15), cord: fc.integer({ min: 20, max: 30 }) }),
);
type Edit = typeof edit extends fc.Arbitrary<infer E> ? E : never;

const edited = (file: SiteFile, one: Edit): SiteFile => {
  if ('charger' in one)
    return { ...file, chargers: file.chargers!.map((c, i) => (i === one.charger ? { ...c, amps: one.amps } : c)) };
  return {
    ...file,
    drops: file.drops!.map((drop, i) => {
      if (i !== one.drop) return drop;
      if ('cord' in one) return { ...drop, cord: one.cord };
      const moved = ([x, y, z]: readonly [number, number, number]) => [x + one.by[0], y + one.by[1], z] as const;
      return { ...drop, box: moved(drop.box), ...(drop.retractor && { retractor: moved(drop.retractor) }) };
    }),
  };
};

/** Rows of a printed set by the name that they begin with: all that stands on them, and whether a delta does. */
async function rowsOf(bytes: Uint8Array): Promise<ReadonlyMap<string, { words: string; hasDelta: boolean }>> {
  const pdf = await readPdf(bytes);
  const rows = new Map<string, { words: string; hasDelta: boolean }>();
  for (const [i, { texts, label }] of pdf.pages.entries()) {
    if (!label.startsWith('E-6')) continue;
    const deltas = await linesOn(bytes, i + 1, 'G-ANNO-REVS');
    for (const [title, end, name] of [
      ['CIRCUIT AND RUN SCHEDULE', 'Calculation', /^EV\d/],
      ['CONDUIT SCHEDULE', 'Along', /^P1-\d/],
    ] as const) {
      const head = texts.find(({ text }) => text === title);
      const last = texts.find(({ text, y }) => text === end && head !== undefined && y < head.y);
      if (head === undefined || last === undefined) continue;
      const right = last.x + last.width + 40;
      const first = texts
        .filter(({ text, x, y }) => Math.abs(x - head.x - 4) < 0.5 && y < head.y && name.test(text))
        .sort((a, b) => b.y - a.y);
      const step = first[0]!.size * 1.22;
      for (const [k, key] of first.entries()) {
        const foot = (first[k + 1]?.y ?? key.y - step) + 0.5 * step;
        const mine = (y: number): boolean => y <= key.y + 0.5 * step && y > foot;
        const words = texts.filter(({ x, y }) => x >= head.x && x < right && mine(y)).map(({ text }) => text);
        const hasDelta = deltas.some(
          ([a, b, c, d]) => a! > last.x && c! < right + 15 && mine((b! + d!) / 2 - 0.3 * step),
        );
        rows.set(`${title} ${key.text}`, { words: words.filter((w) => w !== '1').join('|'), hasDelta });
      }
    }
  }
  return rows;
}

describe('deltas beside rows', () => {
  test('stand at the rows whose words are others in the two printed sets, and at no others', async () => {
    const before = await rowsOf(await setOf(issued, { paper: 'ANSI D' }));
    expect(before.size).toBe(16 + issued.planned.conduits.length);
    let marked = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 2 }), async (edits) => {
        const after = later((file) => edits.reduce(edited, file));
        const changes = revision(
          alternativeOf('before', issued.site, INVENTED_LIST),
          alternativeOf('after', after.site, INVENTED_LIST),
        );
        const rows = await rowsOf(
          await setOf(after, {
            paper: 'ANSI D',
            revision: {
              number: '1',
              date: '2026-11-20',
              text: null,
              since: 'before',
              before: { site: issued.site, plan: issued.planned },
              changes,
            },
          }),
        );
        const others = [...rows].filter(([name, { words }]) => before.get(name)?.words !== words).map(([name]) => name);
        const deltas = [...rows].filter(([, { hasDelta }]) => hasDelta).map(([name]) => name);
        expect(deltas).toEqual(others);
        marked += deltas.length;
      }),
      { numRuns: 6 },
    );
    expect(marked).toBeGreaterThan(6);
  });

  test('of a door card stand at the spaces that read otherwise', () => {
    fc.assert(
      fc.property(edit, (one) => {
        const after = later((file) => edited(file, one));
        const cards = (of: Planned): readonly Table[] => panelTables({ site: of.site, plan: of.planned });
        const words = (row: Table['rows'][number]): string =>
          row.map((cell) => (typeof cell === 'string' ? cell : cell.text)).join('|');
        const was = cards(issued);
        for (const [i, card] of cards(after).entries()) {
          const { deltas } = withDeltas(card, was[i], { number: '1', since: 'before' });
          const others = card.rows.flatMap((row, k) => (words(row) === words(was[i]!.rows[k]!) ? [] : [k]));
          expect([...(deltas?.rows ?? [])]).toEqual(others);
        }
      }),
      { numRuns: 10 },
    );
  });

  test('stand at the run strips that say something else, and after lines of the one-line that are new', async () => {
    const drawings = { sheets: ['strips', 'one-line'] } as const;
    const of = (file: SiteFile): SiteFile => ({ ...file, drawings });
    const before = later(of);
    const after = later((file) => of(edited(edited(file, { charger: 8, amps: 24 }), { drop: 3, by: [2, 0] })));
    const changes = revision(
      alternativeOf('before', before.site, INVENTED_LIST),
      alternativeOf('after', after.site, INVENTED_LIST),
    );
    const was = { site: before.site, plan: before.planned };
    const issue = { number: 'B', date: '2026-11-20', text: 'for construction', since: 'before' };
    const first = await setOf(before, { paper: 'ANSI D' });
    const bytes = await setOf(after, { paper: 'ANSI D', revision: { ...issue, before: was, changes } });
    const [old, now] = [await readPdf(first), await readPdf(bytes)];
    const pageOf = (pdf: typeof now, label: string): number => pdf.pages.findIndex((page) => page.label === label);
    const stripsOf = (
      { pages }: typeof now,
      page: number,
    ): ReadonlyMap<string, { words: string; at: readonly number[] }> => {
      const texts = pages[page]!.texts.filter(({ text }) => text !== 'B');
      const heads = texts.filter(({ text }) => /^EV\d+ at D\d+$/.test(text));
      const wide = 1.05 * Math.max(...heads.map(({ x }) => x)) - Math.min(...heads.map(({ x }) => x));
      return new Map(
        heads.map(({ text: name, x, y, size }) => {
          const foot = Math.max(0, ...heads.filter((one) => one.x === x && one.y < y).map((one) => one.y)) + size;
          const next = Math.min(x + wide, ...heads.filter((one) => one.x > x + 1).map((one) => one.x));
          const mine = texts.filter((one) => one.x >= x - 1 && one.x < next - 1 && one.y <= y + 1 && one.y > foot);
          return [
            name,
            {
              words: mine
                .map(({ text }) => text)
                .sort()
                .join('|'),
              at: [x, next, y],
            },
          ];
        }),
      );
    };
    const strips = stripsOf(now, pageOf(now, 'E-201'));
    const oldStrips = stripsOf(old, pageOf(old, 'E-201'));
    expect(strips.size).toBe(16);
    const deltas = await linesOn(bytes, pageOf(now, 'E-201') + 1, 'G-ANNO-REVS');
    const marked = [...strips].filter(
      ([
        ,
        {
          at: [x, next, y],
        },
      ]) => deltas.some(([a, b, c, d]) => a! > x! && c! < next! && b! < y! + 12 && d! > y! - 12),
    );
    const others = [...strips].filter(([name, { words }]) => oldStrips.get(name)?.words !== words);
    expect(marked.map(([name]) => name)).toEqual(others.map(([name]) => name));
    expect(others.map(([name]) => name)).toEqual(expect.arrayContaining(['EV04 at D04', 'EV09 at D09']));

    const line = now.pages[pageOf(now, 'E-601')]!.texts;
    const known = new Set(old.pages[pageOf(old, 'E-601')]!.texts.map(({ text }) => text));
    const onLine = await linesOn(bytes, pageOf(now, 'E-601') + 1, 'G-ANNO-REVS');
    const said = onLine.map(
      ([a, b]) =>
        line.find(({ x, y, width, size }) => Math.abs(x + width + 2 - a!) < 2 && Math.abs(y - b!) < size)?.text,
    );
    expect(said.length).toBeGreaterThan(2);
    for (const text of said) expect(known).not.toContain(text);
    expect(said).toContain('(1) 30 A 2P: EV09');
  });

  test('name what is gone, and mark all of a table that is new', () => {
    const table = (...names: readonly string[]): Table => ({
      short: 't',
      title: 'T',
      columns: [{ head: 'Name' }],
      rows: names.map((name) => [name]),
      foot: ['A line.'],
    });
    const since = { number: 'B', since: 'first' };
    const less = withDeltas(table('a', 'c'), table('a', 'b', 'c'), since);
    expect(less.foot).toEqual(['A line.', 'Gone since first: b.']);
    expect([...less.deltas!.rows, ...less.deltas!.foot]).toEqual([1]);
    expect([...withDeltas(table('a', 'b'), undefined, since).deltas!.rows]).toEqual([0, 1]);
    expect(withDeltas(table('a'), table('a'), since).deltas).toBeUndefined();
  });
});
