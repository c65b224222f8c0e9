import { describe, expect, test } from 'vitest';
import type { CodeTables } from '../../../calc/tables/code-tables.ts';
import { tablesFor, tablesOf } from '../../../calc/tables/editions.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES, compareSizes } from '../../../calc/tables/sizes.ts';
import { type PerColumn, TEMPERATURE_COLUMNS } from '../../../calc/tables/table.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';
import { circle, rising, strictlyRising } from './consistency-parts.ts';

test('every table says where it comes from and how far it was checked', () => {
  const tables = Object.entries(nec).filter(([name]) => !['edition', 'code', 'sections', 'ruleBases'].includes(name));
  expect(tables.length).toBeGreaterThan(30);
  for (const [name, table] of tables as [string, CodeTables['ampacity']][]) {
    expect(table.source, name).toMatch(/\S/);
    expect(table.verified, name).toMatch(/\S/);
    expect(Array.isArray(table.doubts), name).toBe(true);
  }
});

test('an edition is found by the name that rules give it, and no other', () => {
  expect(tablesFor('NEC 2023')).toBe(nec);
  expect(tablesFor('NEC 2020')).toBeUndefined();
  expect(tablesOf({ code: 'NEC 2020' })).toBe(nec);
  expect(tablesOf(DEFAULT_RULES).edition).toBe(DEFAULT_RULES.code);
});

describe('ampacity', () => {
  const { rows } = nec.ampacity;
  test('has every size once, in order', () => expect(rows.map(({ size }) => size)).toEqual(CONDUCTOR_SIZES));
  test('rises with size in every column', () => {
    for (const metal of ['copper', 'aluminum'] as const)
      for (const at of TEMPERATURE_COLUMNS.keys()) rising(rows.map((row) => row[metal][at] ?? null));
  });
  test('rises across the columns', () => {
    for (const row of rows) for (const metal of ['copper', 'aluminum'] as const) rising(row[metal]);
  });
  test('of aluminum is 0.72 to 0.88 of copper', () => {
    for (const row of rows)
      for (const at of TEMPERATURE_COLUMNS.keys()) {
        const [copper, aluminum] = [row.copper[at], row.aluminum[at]];
        if (copper && aluminum) {
          expect(aluminum / copper).toBeGreaterThan(0.72);
          expect(aluminum / copper).toBeLessThan(0.88);
        }
      }
  });
});

test('every ambient factor is sqrt((Tc - Ta) / (Tc - 30)) at the top of its band, to two places', () => {
  for (const { upToC, factors } of nec.ambient.rows)
    TEMPERATURE_COLUMNS.forEach((column, at) => {
      const printed: PerColumn[number] | undefined = factors[at];
      if (upToC >= column) expect(printed).toBeNull();
      else if (printed !== null) expect(printed).toBeCloseTo(Math.sqrt((column - upToC) / (column - 30)), 2);
    });
});

test('bundling bands follow one another and fall', () => {
  const { rows } = nec.bundling;
  rows.slice(1).forEach((row, at) => {
    expect(row.from).toBe((rows[at]?.to ?? Number.NaN) + 1);
    expect(row.percent).toBeLessThan(rows[at]?.percent ?? 0);
  });
  expect(rows.at(-1)?.to).toBeNull();
});

test('standard ratings rise', () => strictlyRising(nec.standardRatings.rows));

test('limits of small conductors are at most their ampacity at 60 °C', () => {
  for (const { size, metal, maxAmps } of nec.smallConductors.rows) {
    const row = nec.ampacity.rows.find((other) => other.size === size);
    const at60 = metal === 'copper-clad aluminum' ? null : row?.[metal][0];
    if (at60) expect(maxAmps).toBeLessThanOrEqual(at60);
  }
});

test('grounding conductors grow with the device, aluminum above copper', () => {
  const { rows } = nec.grounding;
  strictlyRising(rows.map(({ breakerAmps }) => breakerAmps));
  rows.forEach((row, at) => {
    expect(compareSizes(row.aluminum, row.copper)).toBeGreaterThan(0);
    const before = rows[at - 1];
    if (before) {
      expect(compareSizes(row.copper, before.copper)).toBeGreaterThan(0);
      expect(compareSizes(row.aluminum, before.aluminum)).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('conductors', () => {
  const { rows } = nec.conductors;
  test('grow in circular mils', () => {
    for (const solid of [true, false])
      strictlyRising(rows.filter(({ strands }) => (strands === 1) === solid).map((row) => row.circularMils));
  });
  test('kcmil sizes are a thousand circular mils each', () => {
    for (const row of rows) if (Number(row.size) >= 250) expect(row.circularMils).toBe(1000 * Number(row.size));
  });
  test('have the area of their diameter', () => {
    // Half a digit of the printed diameter and area, either way.
    for (const row of rows)
      expect(Math.abs(circle(row.diameter) - row.area)).toBeLessThan(0.0006 + row.diameter * 0.0008);
  });
  test('are as thick as their circular mils say where solid', () => {
    for (const row of rows.filter(({ strands }) => strands === 1))
      expect(Math.sqrt(row.circularMils) / 1000).toBeCloseTo(row.diameter, 3);
  });
  test('have the resistance of their metal at 75 °C within 1.2%', () => {
    // Handbook resistivities at 20 °C, ohm circular mil per ft, and their rise to 75 °C.
    const metals = { copper: 10.371 * 1.2162, aluminum: 17.002 * 1.2222 };
    for (const row of rows)
      for (const [metal, ohms] of Object.entries(metals)) {
        const expected = (1000 * ohms * (row.strands === 1 ? 1 : 1.02)) / row.circularMils;
        expect(Math.abs(row[metal as 'copper'] / expected - 1), `${row.size} ${metal}`).toBeLessThan(0.012);
      }
  });
  test('coated copper resists more than uncoated', () => {
    for (const row of rows) expect(row.coatedCopper).toBeGreaterThan(row.copper);
  });
});

describe('impedances', () => {
  const { rows } = nec.impedances;
  test('fall with size', () => {
    for (const raceway of ['PVC', 'aluminum', 'steel'] as const) {
      rising(rows.map((row) => row.copper[raceway]).reverse());
      rising(rows.map((row) => row.aluminum?.[raceway] ?? null).reverse());
    }
  });
  test('react more in steel', () => {
    for (const row of rows) expect(row.x.steel / row.x.PVC).toBeCloseTo(1.25, 1);
  });
  test('are R cos + X sin at 0.85 within the rounding of all three', () => {
    const [cos, sin] = [0.85, Math.sqrt(1 - 0.85 ** 2)];
    const half = (printed: number) => 0.5 * 10 ** -Number(printed.toString().split('.')[1]?.length ?? 0);
    // Two figures are printed, so 1.1 may be 1.10 and 0.2 may be 0.20.
    const slack = (printed: number) => Math.min(half(printed), 0.05 * printed);
    for (const row of rows)
      for (const metal of ['copper', 'aluminum'] as const)
        for (const raceway of ['PVC', 'aluminum', 'steel'] as const) {
          const [r, x, z] = [row[metal]?.[raceway], row.x[raceway], row.z85[metal]?.[raceway]];
          if (r === undefined || z === undefined) continue;
          const error = Math.abs(r * cos + x * sin - z);
          expect(error, `${row.size} ${metal} in ${raceway}`).toBeLessThanOrEqual(
            slack(z) + slack(r) * cos + slack(x) * sin + 1e-9,
          );
        }
  });
  test('resist at least as much as to direct current, within rounding', () => {
    for (const row of rows) {
      const dc = nec.conductors.rows.findLast((other) => other.size === row.size);
      expect(row.copper.PVC).toBeGreaterThan(0.94 * (dc?.copper ?? Number.NaN));
    }
  });
});

describe('insulated conductors', () => {
  test('have the area of their diameter', () => {
    for (const row of nec.insulated.rows)
      expect(Math.abs(circle(row.diameter) - row.area), `${row.group} ${row.size}`).toBeLessThan(
        0.00006 + row.diameter * 0.0008,
      );
  });
  test('grow with size within a group', () => {
    for (const group of new Set(nec.insulated.rows.map((row) => row.group))) {
      const rows = nec.insulated.rows.filter((row) => row.group === group);
      strictlyRising(rows.toSorted((a, b) => compareSizes(a.size, b.size)).map(({ area }) => area));
    }
  });
  test('are thicker than the bare conductor', () => {
    for (const row of nec.insulated.rows) {
      const bare = nec.conductors.rows.findLast((other) => other.size === row.size);
      expect(row.diameter).toBeGreaterThan(bare?.diameter ?? Number.NaN);
    }
  });
  test('every insulation with an area group has rows in it', () => {
    const groups = new Set(nec.insulated.rows.map(({ group }) => group));
    for (const { name, group } of nec.insulations.rows) if (group !== null) expect(groups, name).toContain(group);
  });
});

test('box allowances grow with size', () => strictlyRising(nec.boxAllowances.rows.map(({ volume }) => volume)));

describe('transformers', () => {
  test('of three phases draw 1000 kVA / (sqrt 3 V), of one 1000 kVA / V, to a tenth of an ampere', () => {
    for (const [table, k] of [
      [nec.threePhaseTransformers, Math.sqrt(3)],
      [nec.singlePhaseTransformers, 1],
    ] as const)
      for (const row of table.rows)
        for (const [volts, amps] of Object.entries(row.amps))
          expect(Math.abs((1000 * row.kva) / (k * Number(volts)) - amps)).toBeLessThanOrEqual(0.0501);
  });
  test('grow in efficiency with rating, and the loss at 35% follows from it', () => {
    for (const table of [nec.threePhaseTransformers, nec.singlePhaseTransformers])
      rising(table.rows.map(({ efficiency }) => efficiency));
    for (const { kva, efficiency, lossAt35 } of nec.threePhaseTransformers.rows)
      expect(350 * kva * (100 / efficiency - 1)).toBeCloseTo(lossAt35 ?? Number.NaN, -1);
  });
  test('of one phase have Z = sqrt(R² + X²) within 0.1', () => {
    for (const { z, r, x } of nec.singlePhaseImpedances.rows) expect(Math.abs(Math.hypot(r, x) - z)).toBeLessThan(0.1);
  });
  test('of three phases have the resistance that the middle of their band gives', () => {
    for (const { z, xr, middleR } of nec.threePhaseImpedances.rows)
      expect((z[0] + z[1]) / 2 / Math.hypot(1, (xr[0] + xr[1]) / 2)).toBeCloseTo(middleR, 2);
  });
});

test('working space grows with volts and with what is opposite', () => {
  const { rows } = nec.workingSpace;
  rising(rows.map(({ grounded }) => grounded));
  rising(rows.map(({ live }) => live));
  for (const row of rows) rising([row.clear, row.grounded, row.live]);
});
