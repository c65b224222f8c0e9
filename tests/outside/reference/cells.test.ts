import { expect, test } from 'vitest';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { SupportRow } from '../../../calc/tables/raceway-rows.ts';
import type { PerColumn, PerRaceway } from '../../../calc/tables/table.ts';
import ampacity from './ampacity.json';
import conductors from './conductors.json';
import raceways from './raceways.json';

/**
 * Every cell of the tables against a separately kept digest of the same printed tables (digest.py). How far the digest
 * itself was seen in print stands in each table's `verified` and `doubts`.
 */

const triple = (name: string, [c60, c75, c90]: PerColumn) => ({
  [`${name}_60`]: c60,
  [`${name}_75`]: c75,
  [`${name}_90`]: c90,
});

const byRaceway = (name: string, of: PerRaceway<number> | null) => ({
  [`${name}_pvc`]: of?.PVC ?? null,
  [`${name}_al`]: of?.aluminum ?? null,
  [`${name}_steel`]: of?.steel ?? null,
});

const METAL = { copper: 'Cu', aluminum: 'Al', 'copper-clad aluminum': 'Cu-clad Al' } as const;

test('Table 310.16, ampacity', () => {
  const rows = nec.ampacity.rows.map(({ size, copper, aluminum }) => ({
    size,
    ...triple('cu', copper),
    ...triple('al', aluminum),
  }));
  expect(rows).toEqual(ampacity.table_310_16);
});

test('Table 310.15(B)(1)(1), ambient correction', () => {
  const rows = nec.ambient.rows.map(({ upToC, factors: [k60, k75, k90] }) => ({ c_max: upToC, k60, k75, k90 }));
  expect(rows).toEqual(ampacity.table_310_15_B_1_1.map(({ c_max, k60, k75, k90 }) => ({ c_max, k60, k75, k90 })));
});

test('Table 310.15(C)(1), adjustment for bundling', () => {
  const rows = nec.bundling.rows.map(({ from, to, percent }) => ({ n_min: from, n_max: to, percent }));
  expect(rows).toEqual(ampacity.table_310_15_C_1);
});

test('240.4(D), small conductors', () => {
  const rows = nec.smallConductors.rows.map((row) => ({
    size: row.size,
    material: METAL[row.metal],
    max_ocpd_a: row.maxAmps,
  }));
  expect(rows).toEqual(ampacity.small_conductors_240_4_D);
});

test('Table 240.6(A), standard ratings', () => {
  expect(nec.standardRatings.rows).toEqual(ampacity.standard_ratings_240_6_A.map(({ amps }) => amps));
  expect(nec.standardRatings.fuses).toEqual(ampacity.standard_ratings_240_6_A_fuses.map(({ amps }) => amps));
});

test('Table 250.122, grounding conductors', () => {
  const rows = nec.grounding.rows.map((row) => ({ ocpd_max_a: row.breakerAmps, cu: row.copper, al: row.aluminum }));
  expect(rows).toEqual(ampacity.table_250_122);
});

test('Chapter 9 Table 8, conductor properties', () => {
  const rows = nec.conductors.rows.map((row) => ({
    size: row.size,
    area_cmil: row.circularMils,
    strands: row.strands,
    strand_dia_in: row.strandDiameter,
    overall_dia_in: row.diameter,
    overall_area_in2: row.area,
    r_cu: row.copper,
    r_cu_coated: row.coatedCopper,
    r_al: row.aluminum,
  }));
  expect(rows).toEqual(conductors.chapter9_table8);
});

test('Chapter 9 Table 9, resistance and reactance', () => {
  const rows = nec.impedances.rows.map((row) => {
    expect(row.x.aluminum).toBe(row.x.PVC);
    return {
      size: row.size,
      xl_pvc_al: row.x.PVC,
      xl_steel: row.x.steel,
      ...byRaceway('r_cu', row.copper),
      ...byRaceway('r_al', row.aluminum),
      ...byRaceway('z85_cu', row.z85.copper),
      ...byRaceway('z85_al', row.z85.aluminum),
    };
  });
  expect(rows).toEqual(conductors.chapter9_table9);
});

test('Chapter 9 Table 1, fill', () => {
  const percents = [...nec.fill.rows.map(({ percent }) => percent), nec.fill.nipplePercent];
  expect(percents).toEqual(raceways.chapter9_table1.map(({ fill_percent }) => fill_percent));
});

test('Chapter 9 Table 2, bends', () => {
  const rows = nec.bends.rows.map((row) => ({ trade: row.tradeSize, r_shoe_in: row.shoe, r_other_in: row.other }));
  expect(rows).toEqual(raceways.chapter9_table2);
});

test('Chapter 9 Table 4, raceways', () => {
  const rows = nec.raceways.rows.map((row) => ({
    raceway: row.method,
    trade: row.tradeSize,
    id_in: row.insideDiameter,
    area_in2: row.area,
    fill60_in2: row.fill60,
    fill53_1wire_in2: row.fill53,
    fill31_2wire_in2: row.fill31,
    fill40_over2_in2: row.fill40,
  }));
  expect(rows).toEqual(raceways.chapter9_table4);
});

test('Chapter 9 Table 5, insulated conductors', () => {
  // TW/THW and RHW are from memory and in no digest: their own arithmetic checks them (consistency.test.ts).
  const rows = nec.insulated.rows
    .filter(({ group }) => group !== 'TW/THW' && !group.startsWith('RHW'))
    .map((row) => ({ insulation: row.group, size: row.size, dia_in: row.diameter, area_in2: row.area }));
  expect(rows).toEqual(raceways.chapter9_table5);
});

const supportsOf = (method: SupportRow['method'], run: SupportRow['run']) =>
  nec.supports.rows
    .filter((row) => row.method === method && row.run === run)
    .map((row) => ({
      trade: row.toSize ?? (row.fromSize === null ? 'any' : `${row.fromSize} and larger`),
      max_spacing_ft: row.spacingFt,
      first_support_within_ft: row.firstFt,
    }));

test.each([
  ['EMT', 'EMT', 'general'],
  ['RMC', 'RMC', 'general'],
  ['RMC straight runs, threaded couplings', 'RMC', 'straight threaded'],
  ['IMC', 'IMC', 'general'],
  ['RMC exposed vertical risers, threaded, industrial', 'RMC', 'riser'],
  ['PVC', 'PVC40', 'general'],
  ['PVC', 'PVC80', 'general'],
  ['LFMC', 'LFMC', 'general'],
] as const)('supports of %s as %s, %s', (named, method, run) => {
  const rows = raceways.support_spacing
    .filter(({ raceway }) => raceway === named)
    .map(({ trade, max_spacing_ft, first_support_within_ft }) => ({
      trade: trade === 'all' || trade === 'general' ? 'any' : trade,
      max_spacing_ft,
      first_support_within_ft,
    }));
  expect(supportsOf(method, run)).toEqual(rows);
});

test('Table 352.44, expansion of PVC', () => {
  const rows = nec.expansion.rows.map((row) => ({ delta_f: row.rangeF, inches_per_100ft: row.inchesPer100Ft }));
  expect(rows).toEqual(raceways.pvc_expansion_352_44);
});

test('Table 300.5(A), cover', () => {
  const rows = nec.cover.rows.map((row) => ({
    c1_in: row.cable,
    c2_in: row.metalRaceway,
    c3_in: row.plasticRaceway,
    c4_in: row.dwellingBranch,
    c5_in: row.lowVoltage,
  }));
  expect(rows).toEqual(raceways.cover_300_5);
});

test('Table 300.19(A), vertical supports', () => {
  const rows = nec.verticalSupports.rows.map((row) => ({ cu_ft: row.copper, al_ft: row.aluminum }));
  expect(rows).toEqual(raceways.vertical_support_300_19.map(({ cu_ft, al_ft }) => ({ cu_ft, al_ft })));
  // The printed rows end at the size named; the next row starts at the size after it.
  const ends = raceways.vertical_support_300_19.map(({ size_to }) => (size_to === '' ? null : size_to));
  expect(nec.verticalSupports.rows.map(({ toSize }) => toSize)).toEqual(ends);
});

test('Table 314.16, box volumes', () => {
  expect(nec.boxAllowances.rows.map(({ size, volume }) => ({ size, in3: volume }))).toEqual(raceways.box_fill_314_16_B);
  expect(nec.metalBoxes.rows.map(({ box, volume }) => ({ box, in3: volume }))).toEqual(
    raceways.box_fill_314_16_B_metal_boxes,
  );
});
