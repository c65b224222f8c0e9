import { describe, expect, test } from 'vitest';
import { takeoffSheet } from '../../../../calc/sheets/cost/takeoff-sheet.ts';
import { type Planned, plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { type PageText, type ReadPage, readPdf } from './read-pdf.ts';

/** Feet of a printed length: `105' 6 1/16"`. Not by the reader of the project. */
function feetOf(words: string): number {
  const found = /^(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/.exec(words);
  if (!found) throw new RangeError(`no length: ${words}`);
  const [, feet, inches, over = '0', under = '1'] = found;
  return Number(feet) + (Number(inches) + Number(over) / Number(under)) / 12;
}

/** Half of a sixteenth of an inch, feet: no printed length is farther from its own. */
const PRINTED = 1 / 384 + 1e-9;

/**
 * Figures under a heading of a printed table, by the first word of their rows: of all sheets on which a table of the
 * title stands, its columns told by where the headings stand on the paper.
 */
function columnOf(
  pages: readonly ReadPage[],
  title: string,
  first: string,
  column: string,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { texts } of pages)
    for (const head of texts.filter(({ text }) => text === title || text === `${title} (CONTINUED)`)) {
      const under = texts.filter(({ y }) => y < head.y);
      const [key] = nearestUnder(under, head, first, ({ x }) => Math.abs(x - head.x) < 8);
      const [heading] = nearestUnder(under, head, column, ({ x, y }) => x > head.x && Math.abs(y - (key?.y ?? 0)) < 12);
      const end = Math.max(0, ...texts.filter((one) => isTitle(one, head)).map(({ y }) => y));
      if (!key || !heading) continue;
      const right = heading.x + heading.width;
      for (const row of under.filter(({ x, y }) => Math.abs(x - key.x) < 0.5 && y < key.y - 1 && y > end)) {
        const cell = under.find(
          ({ x, y, width }) =>
            Math.abs(y - row.y) < 0.5 && (Math.abs(x + width - right) < 1 || Math.abs(x - heading.x) < 0.5),
        );
        if (cell && !found.has(row.text)) found.set(row.text, cell.text);
      }
    }
  return found;
}

const nearestUnder = (
  under: readonly PageText[],
  head: PageText,
  words: string,
  also: (text: PageText) => boolean,
): readonly PageText[] =>
  under.filter((one) => one.text === words && also(one)).sort((a, b) => head.y - a.y - (head.y - b.y));

/** The title of a table that begins below another in the same column. */
const isTitle = ({ text, x, y, size }: PageText, head: PageText): boolean =>
  y < head.y - 1 && Math.abs(x - head.x) < 1 && Math.abs(size - head.size) < 0.1 && text === text.toUpperCase();

const sum = (values: Iterable<number>): number => [...values].reduce((all, one) => all + one, 0);

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

interface Takeoff {
  readonly item: string;
  readonly spec: string;
  readonly quantity: number;
}

/** The rows of the takeoff's own file. */
const takeoffOf = ({ site, planned }: Planned): readonly Takeoff[] =>
  takeoffSheet(site, planned)
    .slice(1)
    .flatMap(([item, spec, quantity]) =>
      typeof quantity === 'number' ? [{ item: String(item), spec: String(spec), quantity }] : [],
    );

const SHEETS = ['circuits', 'panels', 'feeders', 'conduits', 'takeoff'] as const;

describe.each(['library-lot', 'library-pedestals', 'fleet-yard', 'hospital-lot'])(
  'the printed schedules of %s',
  (name) => {
    const sample = plannedSample(name, (file) => ({ ...file, drawings: { sheets: [...SHEETS] } }));
    const { site, planned } = sample;
    const takeoff = takeoffOf(sample);
    const read = setOf(sample, { paper: 'ANSI D' }).then(readPdf);
    const raceway = 1 + site.rules.waste.raceway;
    const conductor = 1 + site.rules.waste.conductor;

    test('have the lengths of the conduits of the plan, which come to those of the takeoff', async () => {
      const { pages } = await read;
      const lengths = columnOf(pages, 'CONDUIT SCHEDULE', 'Conduit', 'Length');
      expect(lengths.size).toBe(planned.conduits.length);
      const printed = new Map([...lengths].map(([id, words]) => [id, feetOf(words)]));
      for (const { id, length } of planned.conduits) expect(Math.abs(printed.get(id)! - length)).toBeLessThan(PRINTED);
      const bySpec = grouped(planned.conduits, ({ method, tradeSize }) => `${method} ${tradeSize} in`);
      for (const [spec, own] of bySpec) {
        const bought = takeoff.filter((row) => row.item === 'raceway' && row.spec === spec);
        const feet = sum(own.map(({ id }) => printed.get(id)!)) * raceway;
        // A row of the takeoff is in whole feet.
        expect(Math.abs(sum(bought.map(({ quantity }) => quantity)) - feet)).toBeLessThan(
          0.5 + own.length * PRINTED * raceway,
        );
      }
    });

    test('have a row for each charger, its breakers counted as bought, its conductors as long as bought', async () => {
      const { pages } = await read;
      const [breakers, lengths, amps] = ['Breaker', 'Conductor length', 'Amps'].map((column) =>
        columnOf(pages, 'CIRCUIT AND RUN SCHEDULE', 'Charger', column.split(' ')[0]!),
      ) as [ReadonlyMap<string, string>, ReadonlyMap<string, string>, ReadonlyMap<string, string>];
      expect(breakers.size).toBe(site.chargers.length);
      for (const [words, own] of grouped([...breakers.values()], (each) => each)) {
        if (words === '–') {
          // Without a run there is no circuit.
          expect(own.length).toBe(planned.runs.filter(({ length }) => length === null).length);
          continue;
        }
        const [, rating, poles] = /^(\d+) A (\d)P$/.exec(words)!;
        const spec = `${poles}-pole ${rating} A`;
        const others = takeoff.filter((row) => row.item === 'breaker' && row.spec.startsWith(spec));
        const loads = site.loads.length + site.feeders.length;
        const bought = sum(others.map(({ quantity }) => quantity));
        // The rest of a row are breakers of loads and of feeders.
        expect(bought - own.length).toBeGreaterThanOrEqual(0);
        expect(bought - own.length).toBeLessThanOrEqual(loads);
      }
      for (const { id, amps: drawn } of site.chargers) expect(amps.get(id)).toBe(drawn.toFixed(0));
      const poles = (id: string): number => Number(/(\d)P$/.exec(breakers.get(id)!)?.[1] ?? 0);
      const feet = sum([...lengths].map(([id, words]) => (words === '–' ? 0 : feetOf(words) * poles(id)))) * conductor;
      const rows = takeoff.filter(({ item }) => item === 'conductor');
      expect(rows.length).toBeGreaterThan(0);
      expect(Math.abs(sum(rows.map(({ quantity }) => quantity)) - feet)).toBeLessThan(
        0.5 * rows.length + lengths.size * 3 * PRINTED,
      );
    });

    test('have the lines of each board, which come to what is connected to it', async () => {
      const { pages } = await read;
      const from = new Map(site.chargers.map((one) => [one.id, one.from]));
      const vaOf = new Map(
        site.chargers.map(({ id, amps, volts, phases }) => [id, amps * volts * (phases === 3 ? Math.sqrt(3) : 1)]),
      );
      for (const { id, connectedVa } of planned.supply.equipment) {
        const titles = pages.flatMap(({ texts }) =>
          texts.filter(({ text }) => new RegExp(`^(PANEL|BOARD) ${id}$`).test(text)).map(({ text }) => text),
        );
        const [title] = titles;
        if (title === undefined) continue;
        const totals = columnOf(pages, title, 'Serves', 'VA');
        const lines = [...totals].filter(([words]) => words.startsWith('Total line'));
        expect(lines.length).toBeGreaterThan(0);
        // What has no run has its spaces kept and is not connected; the schedule says so.
        const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
        const without = planned.runs.filter(({ charger, length }) => length === null && from.get(charger) === id);
        for (const { charger } of without) expect(said).toMatch(new RegExp(`Without a run: [^;]*${charger}`));
        const apart = sum(without.map(({ charger }) => vaOf.get(charger)!));
        expect(Math.abs(sum(lines.map(([, va]) => Number(va))) - apart - connectedVa)).toBeLessThan(2);
      }
    });

    test('have the feeders of the plan, their lengths and amperes', async () => {
      const { pages } = await read;
      const [lengths, amps] = ['Length', 'Amps A, B, C'].map((column) =>
        columnOf(pages, 'FEEDER SCHEDULE', 'Feeder', column),
      ) as [ReadonlyMap<string, string>, ReadonlyMap<string, string>];
      expect([...lengths.keys()].sort()).toEqual(site.feeders.map(({ id }) => id).sort());
      for (const solved of planned.supply.feeders) {
        expect(Math.abs(feetOf(lengths.get(solved.id)!) - solved.length!)).toBeLessThan(PRINTED);
        const printed = amps.get(solved.id)!.split(', ').map(Number);
        for (const [i, line] of (['A', 'B', 'C'] as const).entries())
          expect(Math.abs(printed[i]! - (solved.amps[line] ?? 0))).toBeLessThanOrEqual(0.5);
      }
      const fresh = site.feeders.filter(({ existing }) => existing !== true);
      const feet = sum(fresh.map(({ id, conductor }) => feetOf(lengths.get(id)!) * conductor.sets)) * raceway;
      const rows = takeoff.filter(({ item }) => item === 'feeder raceway');
      expect(Math.abs(sum(rows.map(({ quantity }) => quantity)) - feet)).toBeLessThan(0.5 * rows.length + 0.1);
    });

    test('have the takeoff as its own file has it, row by row, and no price', async () => {
      const { pages } = await read;
      const printed = pages.flatMap(({ texts }) => texts);
      expect(printed.filter(({ text }) => text.includes('$'))).toEqual([]);
      const listed = pages.flatMap((page) => quantitiesIn(page));
      expect(listed.length).toBe(takeoff.length);
      for (const [i, { item, quantity }] of takeoff.entries()) {
        expect(item.startsWith(listed[i]!.item)).toBe(true);
        expect([item, Math.abs(listed[i]!.quantity - quantity) <= 0.5]).toEqual([item, true]);
      }
    });
  },
);

/** The rows of the takeoff on a sheet: what stands under its headings on one line, from the top of each column down. */
function quantitiesIn({ texts }: ReadPage): readonly Pick<Takeoff, 'item' | 'quantity'>[] {
  const heads = texts
    .filter(({ text }) => text === 'TAKEOFF' || text === 'TAKEOFF (CONTINUED)')
    .sort((a, b) => a.x - b.x);
  return heads.flatMap((head) => {
    const under = texts.filter(({ y }) => y < head.y);
    const [key] = nearestUnder(under, head, 'Item', ({ x }) => Math.abs(x - head.x) < 8);
    const [heading] = nearestUnder(under, head, 'Quantity', ({ x }) => x > head.x);
    if (!key || !heading) return [];
    const right = heading.x + heading.width;
    return under
      .filter(({ x, width, y }) => Math.abs(x + width - right) < 1 && y < key.y - 1)
      .sort((a, b) => b.y - a.y)
      .flatMap((cell) => {
        const item = under.find(({ x, y }) => Math.abs(x - key.x) < 0.5 && Math.abs(y - cell.y) < 0.5);
        return item ? [{ item: item.text, quantity: Number(cell.text.replace(/[,'"]/g, '')) }] : [];
      });
  });
}
