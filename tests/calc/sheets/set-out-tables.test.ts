import { expect, test } from 'vitest';
import { setOutPoints } from '../../../calc/field/set-out-points.ts';
import { setOutRows } from '../../../calc/field/set-out-rows.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { setOutTables } from '../../../calc/sheets/pdf/schedules/set-out-tables.ts';
import { settingOutSheet } from '../../../calc/sheets/site-work/setting-out-sheet.ts';
import { parseLength } from '../../../routing/site/numbers/parse-length.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../field/start-lot.ts';

const LOT = toSite(libraryLot());
const PLAN = plan(LOT);
const ROWS = settingOutSheet(LOT, PLAN);
const after = (title: string): readonly (readonly unknown[])[] => {
  const from = ROWS.findIndex(([first]) => first === title) + 2;
  return ROWS.slice(
    from,
    ROWS.findIndex((row, i) => i > from && row.length === 0),
  );
};
const feet = (words: string): number => {
  const read = parseLength(words.trim(), 'ft');
  return read.ok ? read.feet : expect.fail(words);
};

test('the setting-out sheet has every point that is set out: boxes, supports, column cores, pads and pull points', () => {
  const names = after('every point by the tape').map(([name]) => name);
  expect(names).toEqual(setOutPoints(LOT, PLAN).map(({ name }) => name));
  for (const name of ['D05 box', 'PB1', 'C1 core', 'P1 corner 3', 'P1 entry', 'R1 support 1'])
    expect(names).toContain(name);
});

test('its readings are those of the tape, and what closes adds up as it is printed', () => {
  const rows = after('every point by the tape');
  // Lines 2 and 3 of the sample at 26 and 53, A at 0; the box at 52, 9, 11 ft up, beam B3 a foot over it.
  expect(rows.find(([name]) => name === 'D05 box')).toEqual([
    'D05 box',
    'box',
    `3 − 1' 0"`,
    `A + 9' 0"`,
    `11' 0" up, 1' 0" under B3`,
    `2 + 26' 0" and 3 − 1' 0": 27' 0"`,
    null,
    `9' 0 5/8" from where 3 and A cross`,
  ]);
  let closed = 0;
  for (const closing of rows.flatMap((row) => [row[5], row[6]])) {
    const [, before, next, sum] = /^\S+ \+ (.*) and \S+ − (.*): (.*)$/.exec(String(closing)) ?? [];
    if (before === undefined) continue;
    closed++;
    expect(Math.abs(feet(before) + feet(next!) - feet(sum!))).toBeLessThanOrEqual(1 / 96 + 1e-9);
  }
  expect(closed).toBeGreaterThan(20);
});

test('running dimensions have a line for each mark of each row, its end and its diagonal, in order along the tape', () => {
  const tapes = setOutRows(LOT, setOutPoints(LOT, PLAN));
  const rows = after('running dimensions, one tape a row');
  expect(rows).toHaveLength(
    tapes.reduce((sum, { marks, end, diagonal }) => sum + marks.length + (end ? 1 : 0) + (diagonal ? 1 : 0), 0),
  );
  const boxes = rows.filter(
    ([row, , point]) => String(row).startsWith('box, along x, A + 9') && /^D\d+ box$/.test(String(point)),
  );
  const readings = boxes.map(([, , , reading]) => feet(String(reading)));
  expect(readings.length).toBe(7);
  expect(readings).toEqual([...readings].sort((a, b) => a - b));
  expect(rows.some(([, , point, reading]) => point === 'D05 box' && reading === `52' 0"`)).toBe(true);
});

test('the drawing set has the same tables, in millimeters where the file is metric', () => {
  const [points, tape] = setOutTables({ site: LOT, plan: PLAN });
  expect(points!.rows.length).toBe(setOutPoints(LOT, PLAN).length);
  expect(tape!.rows.length).toBe(after('running dimensions, one tape a row').length);
  // The engine works in feet: units are those of the file, to be shown.
  const [own] = setOutTables({ site: { ...LOT, units: 'm' }, plan: PLAN });
  const box = own!.rows.find(([name]) => name === 'D05 box')!;
  // 9 ft are 2.743 m.
  expect(box.join(' ')).toMatch(/A \+ 2\.743 m/);
});
