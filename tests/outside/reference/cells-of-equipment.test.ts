import { expect, test } from 'vitest';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { VOLTAGE_RANGE } from '../../../calc/tables/voltage-range.ts';
import service from './service.json';
import supply from './supply.json';

test('Table 450.3(B), transformer protection', () => {
  const rows = nec.transformerProtection.rows.map(({ protection, primary, secondary }) => ({
    method: protection,
    primary_9A_or_more: primary.from9,
    primary_under_9A: primary.under9,
    primary_under_2A: primary.under2,
    secondary_9A_or_more: secondary?.from9 ?? null,
    secondary_under_9A: secondary?.under9 ?? null,
  }));
  expect(rows).toEqual(supply.transformer_protection_450_3_B);
});

test('standard transformers', () => {
  const three = nec.threePhaseTransformers.rows.map((row) => ({
    kva: row.kva,
    fla_208: row.amps[208],
    fla_240: row.amps[240],
    fla_480: row.amps[480],
    doe_min_efficiency_pct_35pct_load: row.efficiency,
    loss_at_35pct_w: row.lossAt35,
    r_pct_if_half_of_loss_is_load_loss: row.resistanceHalf,
    r_pct_upper_bound: row.resistanceBound,
  }));
  expect(three).toEqual(supply.three_phase_standard_ratings);
  const single = nec.singlePhaseTransformers.rows.map((row) => ({
    kva: row.kva,
    doe_min_efficiency_pct_35pct_load: row.efficiency,
    fla_240: row.amps[240],
    fla_480: row.amps[480],
  }));
  expect(single).toEqual(supply.single_phase_standard_ratings);
});

test('typical transformer impedances', () => {
  const single = nec.singlePhaseImpedances.rows.map((row) => ({
    rise: row.rise,
    kva: row.kva,
    z_pct: row.z,
    x_pct: row.x,
    r_pct: row.r,
    x_over_r: row.xr,
  }));
  expect(single).toEqual(supply.single_phase_dry_type_typical_impedance.map(({ z_check: _, ...printed }) => printed));
  const three = nec.threePhaseImpedances.rows.map((row) => ({
    kva: row.kva,
    z_pct_low: row.z[0],
    z_pct_high: row.z[1],
    x_over_r_low: row.xr[0],
    x_over_r_high: row.xr[1],
    implied_r_pct_mid: row.middleR,
  }));
  expect(three).toEqual(supply.three_phase_dry_type_typical_impedance);
});

test('Table 110.26(A)(1), working space', () => {
  const rows = nec.workingSpace.rows.map((row) => ({
    top: row.toVolts,
    condition1_ft: row.clear,
    condition2_ft: row.grounded,
    condition3_ft: row.live,
  }));
  const printed = supply.working_space_110_26_A_1.map(({ volts_to_ground, ...depths }) => ({
    top: Number(volts_to_ground.split('-')[1]),
    ...depths,
  }));
  expect(rows).toEqual(printed);
});

test('210.19 and 215.2 informational notes, voltage drop', () => {
  expect(nec.dropAdvice.rows.map(({ percent }) => percent)).toEqual(
    supply.voltage_drop_notes.map(({ percent }) => percent),
  );
});

test('Table 250.66, conductors to the electrode', () => {
  const rows = nec.electrodeConductors.rows.map(({ upToMils, copper, aluminum }) => ({
    ungrounded_cu_max_cmil: upToMils.copper,
    ungrounded_al_max_cmil: upToMils.aluminum,
    gec_cu: copper,
    gec_al: aluminum,
  }));
  expect(rows).toEqual(service.table_250_66.map(({ ungrounded_cu: _, ungrounded_al: __, ...row }) => row));
});

test('250.66(A), (B), (C), what need be no larger, and the least ring', () => {
  const [rods, encased, ring, least] = service.gec_exceptions_250_66_A_B_C;
  const { most } = nec.electrodeConductors;
  expect(most.rods).toEqual({ copper: rods!.not_required_larger_than_cu, aluminum: rods!.not_required_larger_than_al });
  expect(most['concrete-encased']).toEqual({ copper: encased!.not_required_larger_than_cu, aluminum: null });
  expect(ring!.not_required_larger_than_cu).toBe('size of the ring');
  expect(most.ring).toEqual({ copper: least!.smallest_cu, aluminum: null });
});

test('Table 250.102(C)(1), bonding jumpers', () => {
  const rows = nec.bondingJumpers.rows.map(({ upToMils, copper, aluminum }) => ({
    ungrounded_cu_max_cmil: upToMils.copper,
    ungrounded_al_max_cmil: upToMils.aluminum,
    jumper_cu: copper,
    jumper_al: aluminum,
  }));
  const printed = service.table_250_102_C_1.map(({ ungrounded_cu: _, ungrounded_al: __, ...row }) => row);
  expect(rows).toEqual(printed.slice(0, -1));
  expect(`${100 * nec.bondingJumpers.shareBeyond} percent of area`).toBe(printed.at(-1)!.jumper_cu);
});

test('Tables 400.5(A)(1) and (A)(2), cords and power cables of several conductors', () => {
  const printed = (
    rows: readonly { readonly size: string; readonly two: number | null; readonly three: number | null }[],
  ) => rows.filter(({ two, three }) => two !== null || three !== null);
  expect(nec.cords.rows).toEqual(
    service.cord_ampacity_400_5_A_1.map(({ size, two_conductors_a: two, three_conductors_a: three }) => ({
      size,
      two,
      three,
    })),
  );
  expect(nec.cords.power).toEqual(
    printed(service.cord_ampacity_400_5_A_2.map(({ size, two_60: two, three_60: three }) => ({ size, two, three }))),
  );
});

test('ANSI C84.1, range A', () => {
  expect(VOLTAGE_RANGE.rows).toEqual(
    service.ansi_c84_1.map(({ nominal, A_max: most, A_util_min: least }) => ({ nominal, most, least })),
  );
});
