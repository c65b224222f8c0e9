import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChecklistLine, checklistOf } from '../../../../calc/field/checklist/checklist.ts';
import { valueIn } from '../../../../calc/field/checklist/recorded.ts';
import { testSheet } from '../../../../calc/field/commissioning/commissioning.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { checklistSheet } from '../../../../calc/sheets/site-work/checklist-sheet.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { newMarks, type Saying } from '../../../../routing/site/records/new-mark.ts';
import type { Mark, Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { libraryLot } from '../start-lot.ts';

const FILE = libraryLot();
/** A test of the insulation of a charger's branch, by its own lines. */
const insulationOf = (charger: string): string =>
  testSheet(LOT, plan(LOT), charger)!.rows.find(({ measure }) => measure.group === 'insulation')!.measure.id;
const LOT = toSite(FILE);
const LINES = checklistOf(LOT, plan(LOT));

let made = 0;
const written = (records: readonly Mark[], by: string, ...sayings: Saying[]): readonly Mark[] => [
  ...records,
  ...newMarks(records, sayings, { by, on: '2026-05-30' }, () => `m${++made}`),
];
const withRecords = (records: readonly Mark[]): Site => toSite({ ...FILE, records } as SiteFile);
const linesWith = (records: readonly Mark[]): readonly ChecklistLine[] => {
  const site = withRecords(records);
  return checklistOf(site, plan(site));
};
const lineOf = (lines: readonly ChecklistLine[], of: string, what: string): ChecklistLine =>
  lines.find((line) => line.of === of && line.what === what) ?? expect.fail(`no line ${of} ${what}`);

describe('the checklist of a lot', () => {
  test('has lines of its own circuits: as many as it has drops, chargers, conduits, boxes and equipment', () => {
    const planned = plan(LOT);
    const count = (list: string, test: (line: ChecklistLine) => boolean): number =>
      LINES.filter((line) => line.list === list && test(line)).length;
    expect(count('drops', ({ what }) => what === 'Set')).toBe(LOT.drops.length);
    expect(count('drops', ({ what }) => what === 'Place of the retractor')).toBe(LOT.drops.length);
    expect(count('chargers', ({ what }) => what.startsWith('Breaker'))).toBe(planned.circuits.length);
    expect(count('chargers', ({ what }) => what.startsWith('Cord to spare'))).toBe(planned.reach.length);
    expect(count('equipment', ({ what }) => /^Conduit /.test(what))).toBe(planned.conduits.length);
    // The sample's source is the utility's, which nobody here sets or tests.
    expect(count('equipment', ({ what }) => what === 'Tested')).toBe(
      LOT.equipment.filter(({ kind }) => kind !== 'source').length,
    );
    expect(new Set(LINES.map(({ key }) => key)).size).toBe(LINES.length);
  });

  test('says what is expected by which rule, from the figures of the plan', () => {
    // 40 A chargers take 125% of it, 50 A (NEC 2023, 625.41), on 8 AWG copper (Table 310.16, 75 °C: 50 A).
    const circuit = plan(LOT).circuits.find(({ charger }) => charger === 'EV05')!;
    expect(lineOf(LINES, 'EV05', 'Breaker, 2 poles')).toMatchObject({
      where: 'P1-10/12',
      expects: `${circuit.breakerAmps} A`,
      state: 'open',
      recorded: null,
    });
    expect(lineOf(LINES, 'EV05', 'Conductors').expects).toContain(`2 ${circuit.conductor.size} AWG copper`);
    expect(lineOf(LINES, 'D05', 'Length of the cord')).toMatchObject({
      rule: 'NEC 2023 625.17(C) (cords longer than allowed)',
      expects: `25' 0" or less; planned 25' 0"`,
    });
    expect(lineOf(LINES, 'D05', 'Place of the box').rule).toBe('the drawing, to the tolerance of this site');
  });

  test('follows the rules of the site', () => {
    const site = toSite({ ...FILE, rules: { ...FILE.rules, cordLimit: 20, builtTolerance: 0.5 } });
    const lines = checklistOf(site, plan(site));
    expect(lineOf(lines, 'D05', 'Length of the cord').expects).toMatch(/^20' 0" or less/);
    expect(lineOf(lines, 'D05', 'Place of the box').expects).toMatch(/, to 0' 6"$/);
  });
});

describe('what was recorded', () => {
  test('stands beside what is expected, with by whom and when, and is as expected or is not', () => {
    const [x, y, z] = LOT.drops.find(({ id }) => id === 'D05')!.box;
    const lines = linesWith(
      written(
        [],
        'JB',
        { of: 'D05', what: 'set' },
        { of: 'D05', part: 'box', what: 'place', place: [x + 1, y, z] },
        { of: 'D05', part: 'retractor', what: 'place', place: [x + 0.2, y, z - 1] },
        { of: 'D05', part: 'cord', what: 'checked', text: `24' 6"` },
        { of: 'EV05', part: 'breaker', what: 'checked', text: '60 A' },
        { of: 'EV05', part: 'conductors', what: 'checked', text: 'ok' },
        { of: 'EV06', part: 'conductors', what: 'checked', text: '10 AWG found' },
      ),
    );
    const states = (of: string, what: string) => {
      const { state, by, on } = lineOf(lines, of, what);
      return `${state} ${by} ${on}`.trim();
    };
    expect(states('D05', 'Set')).toBe('ok JB 2026-05-30');
    expect(states('D05', 'Place of the box')).toBe('deviates JB 2026-05-30');
    expect(lineOf(lines, 'D05', 'Place of the box').recorded).toContain(`1' 0" from the drawing`);
    expect(states('D05', 'Place of the retractor')).toBe('ok JB 2026-05-30');
    expect(states('D05', 'Length of the cord')).toBe('ok JB 2026-05-30');
    expect(states('EV05', 'Breaker, 2 poles')).toBe('deviates JB 2026-05-30');
    expect(states('EV05', 'Conductors')).toBe('ok JB 2026-05-30');
    expect(states('EV06', 'Conductors')).toBe('deviates JB 2026-05-30');
    expect(states('EV07', 'Conductors')).toBe('open');
  });

  test('that was taken back is open again, and what two say is the later of both, told as such', () => {
    const first = written([], 'JB', { of: 'D05', part: 'cord', what: 'checked', text: `30'` });
    const hers = written([], 'RL', { of: 'D05', part: 'cord', what: 'checked', text: `24'` });
    expect(lineOf(linesWith(first), 'D05', 'Length of the cord').state).toBe('deviates');
    const back = written(first, 'JB', { of: 'D05', part: 'cord', what: 'checked', gone: true });
    expect(lineOf(linesWith(back), 'D05', 'Length of the cord').state).toBe('open');
    expect(lineOf(linesWith([...first, ...hers]), 'D05', 'Length of the cord')).toMatchObject({
      conflict: true,
      by: 'RL',
      state: 'ok',
    });
  });

  test('of an older file, in its table, counts too', () => {
    const site = toSite({
      ...FILE,
      asBuilt: { D05: { box: [53, 9, 11], checkedOn: '2026-05-30', checkedBy: 'JB' } },
    });
    const lines = checklistOf(site, plan(site));
    expect(lineOf(lines, 'D05', 'Set')).toMatchObject({ state: 'ok', by: 'JB' });
    expect(lineOf(lines, 'D05', 'Place of the box')).toMatchObject({ state: 'deviates', on: '2026-05-30' });
  });

  test('by a test before handover stands beside its limit: one that passes is ok, one that fails deviates', () => {
    const lines = linesWith(
      written(
        [],
        'JB',
        { of: 'EV05', part: insulationOf('EV05'), what: 'measured', reading: { value: 200, unit: 'Mohm' } },
        { of: 'EV06', part: insulationOf('EV06'), what: 'measured', reading: { value: 2, unit: 'Mohm' } },
      ),
    );
    const of = (id: string) => lines.find((line) => line.of === id && line.mark.what === 'measured');
    expect(of('EV05')).toMatchObject({ state: 'ok', by: 'JB', on: '2026-05-30' });
    expect(of('EV06')).toMatchObject({ state: 'deviates' });
    expect(of('EV06')!.expects).toContain('50');
    expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
  });

  test('and the plan has nothing to hold against is noted, never called ok', () => {
    const lines = linesWith(written([], 'JB', { of: 'D05', part: 'paint', what: 'checked', text: 'scratched' }));
    expect(lineOf(lines, 'D05', 'checked: paint')).toMatchObject({
      state: 'noted',
      recorded: 'scratched',
      expected: null,
    });
  });
});

test('a value inside its limits is as expected, one outside is not, whatever the units it is written in', () => {
  const limit = LOT.rules.cordLimit;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 * 16 }), fc.constantFrom('ft', 'm'), (sixteenths, units) => {
      const feet = sixteenths / 16;
      const text = units === 'ft' ? printLength(feet, 'ft') : `${(feet * 0.3048).toFixed(6)} m`;
      const lines = linesWith(written([], 'JB', { of: 'D05', part: 'cord', what: 'checked', text }));
      const { state } = lineOf(lines, 'D05', 'Length of the cord');
      expect(state).toBe(feet <= limit ? 'ok' : 'deviates');
    }),
    { numRuns: 30 },
  );
});

test('numbers are read with or without their unit, and nothing else is', () => {
  expect(valueIn('50', 'number', 'ft')).toBe(50);
  expect(valueIn('50 A', 'number', 'ft')).toBe(50);
  expect(valueIn('22,000 A', 'number', 'ft')).toBe(22000);
  expect(valueIn('270°', 'number', 'ft')).toBe(270);
  for (const text of ['', 'about 50', '50 or 60', 'A 50']) expect(valueIn(text, 'number', 'ft')).toBe(null);
  expect(valueIn('nine', 'length', 'ft')).toBe(null);
});

test('the sheet has a row for each line, and claims no compliance', () => {
  const rows = checklistSheet(LOT, plan(LOT));
  expect(rows.length).toBe(LINES.length + 4);
  const words = rows.flat().join(' ');
  expect(words).toContain('None of it says that the work complies.');
  expect(words.match(/compl(y|ies|iant)/g)).toEqual(['complies']);
});
