import { describe, expect, test } from 'vitest';
import { branchChoices } from '../../../calc/circuits/branch-choices.ts';
import type { CodeTables } from '../../../calc/tables/code-tables.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';

/** Sizes that a 16 A load may grow through. Rules of their own: the choices are remembered by them. */
const sizes = (tables: CodeTables): readonly string[] =>
  branchChoices(tables, { ...DEFAULT_RULES }, 16, { ambientC: 30, currentCarrying: 2 }).map(
    ({ conductor }) => conductor.size,
  );

describe('a branch grows only through sizes that the tables know in full', () => {
  // 16 A continuous take a 20 A breaker and 12 AWG.
  test('all of them', () => expect(sizes(NEC_2023).slice(0, 6)).toEqual(['12', '10', '8', '6', '4', '3']));

  test('not one without an area over its insulation', () => {
    const rows = NEC_2023.insulated.rows.filter(({ size }) => size !== '8');
    const lacking = { ...NEC_2023, insulated: { ...NEC_2023.insulated, rows } };
    expect(sizes(lacking).slice(0, 4)).toEqual(['12', '10', '6', '4']);
  });

  test('not one without an ampacity', () => {
    const rows = NEC_2023.ampacity.rows.filter(({ size }) => size !== '10');
    const lacking = { ...NEC_2023, ampacity: { ...NEC_2023.ampacity, rows } };
    expect(sizes(lacking).slice(0, 3)).toEqual(['12', '8', '6']);
  });

  test.each(['PVC', 'aluminum', 'steel'] as const)('not one without an impedance in %s', (kind) => {
    const rows = NEC_2023.impedances.rows.map((row) => {
      if (row.size !== '6' || row.copper === undefined) return row;
      return { ...row, copper: { ...row.copper, [kind]: undefined } };
    });
    const lacking = { ...NEC_2023, impedances: { ...NEC_2023.impedances, rows } } as unknown as CodeTables;
    expect(sizes(lacking).slice(0, 4)).toEqual(['12', '10', '8', '4']);
  });
});
