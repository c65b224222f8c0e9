import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { circularMils } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES } from '../../../calc/tables/sizes.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';
import service from '../reference/service.json' with { type: 'json' };

const value = (kind: string, input: object): Readonly<Record<string, { readonly size: string }>> => {
  const result = CALC_KINDS.get(kind)!(input, SILENT);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value as Readonly<Record<string, { readonly size: string }>>;
};

const METALS = ['copper', 'aluminum'] as const;
const SHORT = { copper: 'cu', aluminum: 'al' } as const;

describe.each(service.grounding_check_rows)('$sets x $size $metal', (row) => {
  const conductor = { size: row.size, metal: row.metal, sets: row.sets };
  test('asks for the electrode conductor and the jumper of the check values', () => {
    const electrode = value('electrode', { conductor, metal: 'copper', electrode: 'water-pipe' });
    expect(electrode.conductor).toEqual({ size: row.gec_cu, metal: 'copper' });
    expect(value('bonding', { conductor, metal: 'copper' }).jumper).toEqual({
      size: row.bonding_jumper_cu,
      metal: 'copper',
    });
  });
  test('tells how many circular mils it asks for past the table', () => {
    const { steps } = explained((tell) => CALC_KINDS.get('bonding')!({ conductor, metal: 'copper' }, tell));
    const asked = steps.at(-1)!.values['asked for'];
    expect(asked).toBe(row.jumper_cmil_needed === null ? undefined : `${row.jumper_cmil_needed} cmil`);
  });
});

// Every size of both metals in one to eight sets, each cell of the printed rows found by this file's own reading of them.
test.each(METALS)('each size of %s in parallel, against the printed rows', (metal) => {
  let cells = 0;
  for (const size of CONDUCTOR_SIZES.slice(CONDUCTOR_SIZES.indexOf('8')))
    for (let sets = 1; sets <= 8; sets++)
      for (const other of METALS) {
        const mils = circularMils(nec, size) * sets;
        const most = `ungrounded_${SHORT[metal]}_max_cmil` as const;
        const isWithin = (row: { readonly [K in typeof most]: number | null }): boolean =>
          row[most] === null || mils <= row[most];
        const given = { conductor: { size, metal, sets }, metal: other };
        const electrode = service.table_250_66.find(isWithin)!;
        expect(value('electrode', { ...given, electrode: 'building-steel' }).conductor!.size).toBe(
          electrode[`gec_${SHORT[other]}`],
        );
        const jumper = service.table_250_102_C_1.find(isWithin)!;
        if (jumper[most] === null) continue;
        expect(value('bonding', given).jumper!.size).toBe(jumper[`jumper_${SHORT[other]}`]);
        cells++;
      }
  expect(cells).toBeGreaterThan(150);
});

test('what goes to rods, to a concrete-encased electrode or to a ring alone need be no larger than those ask', () => {
  const to = (electrode: string, metal: string, size = '500') =>
    value('electrode', { conductor: { size, metal: 'copper', sets: 4 }, metal, electrode }).conductor!.size;
  expect(['rods', 'concrete-encased', 'ring', 'water-pipe', 'building-steel'].map((one) => to(one, 'copper'))).toEqual([
    '6',
    '4',
    '2',
    '3/0',
    '3/0',
  ]);
  // Of aluminum the code has a size to rods alone; the others go by the table.
  expect(['rods', 'concrete-encased', 'ring'].map((one) => to(one, 'aluminum'))).toEqual(['4', '250', '250']);
  // And never more than the table: 4 x 10 AWG are 41,520 cmil.
  expect(to('rods', 'copper', '10')).toBe('8');
});

test('past the table a supply of the other metal counts by its ampacity at 75 °C', () => {
  // Hand-worked: 4 x 600 kcmil aluminum, 340 A each; copper of 350 kcmil has 310 A, of 400 335 A, of 500 380 A: 4 x 500 x 12.5% is 250 kcmil.
  const jumper = value('bonding', { conductor: { size: '600', metal: 'Al', sets: 4 }, metal: 'Cu' }).jumper;
  expect(jumper).toEqual({ size: '250', metal: 'copper' });
});

test('more than any size is refused, with what it asks for', () => {
  const result = CALC_KINDS.get('bonding')!({ conductor: { size: '600', metal: 'Cu', sets: 30 }, metal: 'Cu' }, SILENT);
  expect(result).toEqual({
    ok: false,
    errors: [{ place: 'conductor', says: expect.stringContaining('2250000 circular mils') }],
  });
});
