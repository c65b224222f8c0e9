import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { circuitTags, sizeWords } from '../../../../calc/sheets/pdf/schedules/circuit-words.ts';
import { panelTables } from '../../../../calc/sheets/pdf/schedules/panel-schedules.ts';
import { runSchedule } from '../../../../calc/sheets/pdf/schedules/run-schedule.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { toSite } from '../../../../routing/site/to-site.ts';

const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
if (!read.ok) throw new RangeError('the sample is not read');
const site = toSite(read.file);
const planned = plan(site);
const words = (cell: string | { readonly text: string }): string => (typeof cell === 'string' ? cell : cell.text);
const rows = panelTables({ site, plan: planned })
  .find(({ title }) => title === 'Panel P1')!
  .rows.map((row) => row.map(words));

test('a panel schedule has the wire of every breaker, and under its rows what lies on each line', () => {
  for (const { charger, conductor } of planned.circuits) {
    const mine = rows.find(
      ([left, , , , , , , , , , right]) => left!.startsWith(charger) || right!.startsWith(charger),
    )!;
    expect(mine[mine[0]!.startsWith(charger) ? 1 : 9]).toBe(sizeWords(conductor.size));
  }
  // Sixteen chargers of 32 A at 208 V between two lines, half of each on each of its lines.
  const totals = rows
    .filter(([name]) => name!.startsWith('Total line'))
    .map((row) => Number(row[3]!.replace(/,/g, '')));
  expect(totals).toHaveLength(3);
  const other = site.loads.filter(({ from }) => from === 'P1').reduce((sum, { va }) => sum + va, 0);
  expect(totals.reduce((sum, va) => sum + va, 0)).toBeCloseTo(16 * 32 * 208 + other, -1);
});

test('a breaker of a charger is described by its stalls and its amperes; what the site does not say is left to be filled in', () => {
  const cells = rows.flatMap((row) => [row[0], row[10]]);
  for (const { id, stalls, amps } of site.chargers) {
    const numbers = stalls
      .map((stall) => site.stalls.find((one) => one.id === stall)!)
      .map((one) => one.label ?? one.id);
    expect(cells.filter((words) => words!.startsWith(`${id},`))).toEqual([
      `${id}, ${numbers.length === 1 ? 'stall' : 'stalls'} ${numbers.join(' and ')}, ${amps} A charger`,
    ]);
  }
  for (const { lead } of panelTables({ site, plan: planned }))
    expect(lead!.filter((line) => /^Enclosure type _+ Mounting _+/.test(line))).toHaveLength(1);
});

test('the circuit of a row of the run schedule stands at the spaces of its breaker', () => {
  const tags = circuitTags(site);
  const circuitColumn = runSchedule({ site, plan: planned }).rows.map((row) => [words(row[0]!), words(row[3]!)]);
  for (const [charger, tag] of circuitColumn) {
    expect(tag).toBe(tags.get(charger!));
    const [first] = tag!.slice('P1-'.length).split(',').map(Number);
    const row = rows.find((cells) => cells[4] === String(first) || cells[6] === String(first))!;
    expect(row[row[4] === String(first) ? 0 : 10]).toContain(charger);
  }
});

test('the run schedule has the drop that each branch may have only where a charger has a limit of its own', () => {
  const heads = (of: typeof site) => {
    const { columns, rows } = runSchedule({ site: of, plan: plan(of) });
    const at = columns.findIndex(({ head }) => head === 'Branch drop allowed %');
    return { at, cells: rows.map((row) => row[at]) };
  };
  expect(heads(site).at).toBe(-1);
  const { cells } = heads({
    ...site,
    chargers: site.chargers.map((one, i) => (i === 1 ? { ...one, branchDrop: 0.75 } : one)),
  });
  expect(cells.slice(0, 3)).toEqual(['3', '0.75', '3']);
});
