import { fittingLength } from '../../../calc/branches/expansion.ts';
import { jamRatio } from '../../../calc/branches/pulls/jam-ratio.ts';
import { designAmps } from '../../../calc/circuits/design-amps.ts';
import { lineAmps } from '../../../calc/circuits/line-amps.ts';
import { estimatedDrop } from '../../../calc/circuits/line-drop.ts';
import { regulation } from '../../../calc/supply/transformers/transformer.ts';
import { ambientFactor, bundlingFactor } from '../../../calc/tables/ampacity-of.ts';
import { transformerProtection } from '../../../calc/tables/equipment-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { groundingSize, standardRatingAtMost } from '../../../calc/tables/protection-of.ts';
import { sizesUpFrom } from '../../../calc/tables/sizes.ts';
import { smallestCarrying, standardKvaAtLeast } from './by-hand.ts';
import { calcKind } from './calc-kind.ts';
import {
  type Answer,
  added,
  alongLine,
  ampacityOf,
  byResistance,
  celsius,
  chargerBranch,
  type Drop,
  filled,
  fromFarEnd,
  grown,
  growth,
  type Printed,
  type Pulled,
  pullBoxOf,
  pulledRoute,
  round,
  straightPull,
  twoWire,
} from './formulas.ts';

/** Each example through the calculation that it concerns, with an answer for every printed quantity. */
export const RUNS: Readonly<Record<string, (printed: Printed) => Answer>> = {
  'vd-01': twoWire,
  'vd-02': twoWire,
  'vd-04': ({ volts, max_total_drop_percent: limitPercent }) => {
    const line = { phases: 1, volts, amps: 32, conductor: { size: '8', metal: 'Cu' }, method: 'resistance' };
    const { length } = calcKind<{ length: number }>('longest-run', { ...line, limitPercent });
    const drop = calcKind<Drop>('voltage-drop', { ...line, length });
    return { max_drop_v: drop.dropVolts, v_min: drop.voltsAtLoad };
  },
  'vd-07': (printed) => ({ vd_v: byResistance(printed, printed.size).dropVolts }),
  'vd-08': (printed) => ({
    size: sizesUpFrom('14').find((size) => byResistance(printed, size).dropPercent <= printed.max_drop_percent),
  }),
  'vd-09': ({ volts, amps, total_conductor_length_ft, r_ohm_per_kft }) => {
    const r = (r_ohm_per_kft * total_conductor_length_ft) / 2 / 1000;
    const drop = estimatedDrop({ phases: 1, volts, amps, r, x: 0, powerFactor: 1 });
    return { vd_v: drop.dropVolts, v_load: drop.voltsAtLoad };
  },
  'vd-10': ({ phases, kw, volts, pf }) => ({ amps: lineAmps((1000 * kw) / pf, volts, phases) }),
  'vd-14': fromFarEnd,
  'vd-18': ({ phases, volts_ll: volts, amps, size, material, conduit, length_ft: length, pf }) => {
    const drop = calcKind<Drop>('voltage-drop', {
      phases,
      volts,
      amps,
      length,
      conductor: { size, metal: material },
      method: 'impedance',
      raceway: conduit,
      powerFactor: pf,
    });
    return {
      ze_ohm_per_kft: (1000 * drop.dropVolts) / (Math.sqrt(3) * amps * length),
      vd_ln: drop.dropVolts / Math.sqrt(3),
      vd_ll: drop.dropVolts,
      vd_percent: drop.dropPercent,
    };
  },
  'dc-02': alongLine,
  'dc-03': alongLine,
  'am-02': (printed) => ampacityOf(printed.size, 'THHN', printed),
  'am-03': (printed) => ampacityOf(printed.size, 'THWN', printed),
  'am-04': (printed) => ampacityOf(printed.size, 'THWN', printed),
  // The example reads the 90 °C column, so the conductor is THWN-2 whatever it is called.
  'am-06': (printed) => ampacityOf(printed.size, 'THWN-2', printed),
  'am-08': (printed) => ampacityOf(printed.size, 'THW', printed),
  'am-10': ({ continuous_a: amps, ambient_f, terminals_c }) => {
    const ambientC = celsius(ambient_f);
    const design = designAmps(nec, { continuous: amps, other: 0 });
    const duty = { amps, continuous: true, metal: 'Cu', insulation: 'THW', ambientC, currentCarrying: 3 };
    return {
      step1_a: design,
      step1_size: smallestCarrying(design, 'copper', terminals_c),
      step2_a: amps / ambientFactor(nec, 75, ambientC),
      size: calcKind<{ conductor: { size: string } }>('branch', { ...duty, terminalC: terminals_c }).conductor.size,
    };
  },
  'am-11': ({ required_a, terminals_c }) => {
    const size = smallestCarrying(required_a, 'copper', terminals_c) ?? '';
    const conductor = { size, metal: 'Cu', insulation: 'THWN' };
    const input = { conductor, ambientC: 30, currentCarrying: 3, terminalC: terminals_c };
    return { size, ampacity: calcKind<{ ampacity: number }>('ampacity', input).ampacity };
  },
  'am-12': ({ va, volts_ll, phases }) => {
    // Its factors are those of seven to nine conductors and of 31 to 35 °C in the 90 °C column.
    const equivalent = va / (bundlingFactor(nec, 8) * ambientFactor(nec, 90, 35));
    return { va_equivalent: equivalent, amps: lineAmps(equivalent, volts_ll, phases) };
  },
  'fe-03': ({ noncontinuous_a, continuous_a }) => ({
    design_a: designAmps(nec, { continuous: continuous_a, other: noncontinuous_a }),
  }),
  'fe-04': ({ service_a, factor, terminals_c }) => {
    const amps = factor * service_a;
    return { amps, size: smallestCarrying(amps, 'aluminum', terminals_c) };
  },
  'fe-06': chargerBranch,
  'fe-07': chargerBranch,
  'fi-01': filled,
  'fi-02': filled,
  'fi-04': added,
  'eg-01': (printed) => grown(printed.ocpd_a, printed),
  // A 60 A device has the 10 AWG that the example starts from.
  'eg-04': (printed) => grown(60, printed),
  'eg-05': ({ ocpd_a }) => ({ cu: groundingSize(nec, ocpd_a, 'copper'), al: groundingSize(nec, ocpd_a, 'aluminum') }),
  'bx-03': ({ conductors_12awg, egc_12awg, internal_clamps, device_yokes }) => ({
    in3: calcKind<{ volume: number }>('box', {
      conductors: [{ size: '12', count: conductors_12awg }],
      devices: device_yokes,
      clamps: internal_clamps,
      groundings: egc_12awg,
    }).volume,
  }),
  'pl-01': straightPull,
  'pl-02': straightPull,
  'pl-03': straightPull,
  'pl-06': ({ raceways_one_wall_in: entries }) => ({ wall_in: pullBoxOf({ rows: [{ entries }] }) }),
  'pl-07': ({ straight_in, angle_in }) => ({
    straight_length_in: pullBoxOf({ straight: [straight_in] }),
    angle_length_in: pullBoxOf({ rows: [{ entries: [angle_in] }] }),
  }),
  'px-01': ({ length_ft, t_min_f, t_max_f }) => growth(length_ft, t_max_f - t_min_f),
  'px-04': ({ length_ft, delta_t_f }) => growth(length_ft, delta_t_f),
  'px-05': ({ delta_t_f }) => ({ length_ft: fittingLength(nec, 'PVC', delta_t_f / 1.8) }),
  'pu-01': ({ max_tension_lb, w_lb_per_ft: weightPerFoot, f: friction, length_ft }) => {
    const after = (length: number): number =>
      calcKind<Pulled>('pulling', { segments: [{ kind: 'straight', length }], weightPerFoot, friction }).tension[0] ??
      Number.NaN;
    // Tension grows with length from nothing, so one foot tells the longest pull.
    return { max_length_ft: max_tension_lb / after(1), tension_lb: after(length_ft) };
  },
  'pu-03': pulledRoute,
  'pu-06': ({ t1_n, t2_n, turns, turns_b }) => {
    const mu = Math.log(t2_n / t1_n) / (2 * Math.PI * turns);
    return { mu, t_3turns_n: round(t1_n, mu, 360 * turns_b) };
  },
  'pu-07': ({ t2_lb, mu, wrap_deg, radius_in }) => ({
    torque_lb_in: radius_in * (t2_lb - t2_lb / round(1, mu, wrap_deg)),
  }),
  'pu-08': ({ w1_n, mu, wrap_deg }) => ({ w2_n: w1_n / round(1, mu, wrap_deg) }),
  'pu-09': ({ w_n, lever_bc_m, lever_ab_m, mu, wrap_deg, radius_m }) => {
    const tight = (w_n * lever_bc_m) / lever_ab_m;
    return { moment_nm: radius_m * (tight - tight / round(1, mu, wrap_deg)) };
  },
  'jm-01': () => {
    const { ratio, likely } = jamRatio(nec, { method: 'RMC', tradeSize: '1' }, { size: '2', insulation: 'THHN' });
    return { ratio, in_jam_band: likely };
  },
  'tr-02': ({ kva, volts, phases }) => {
    const amps = lineAmps(1000 * kva, volts, phases);
    const { primary } = transformerProtection(nec, 'primary and secondary', { primary: amps, secondary: 12.5 });
    const limit = (amps * primary) / 100;
    return { amps, limit_a: limit, fuse_a: standardRatingAtMost(nec, limit, 'fuse') };
  },
  'tr-11': ({ r_pu, x_pu, pf, v_rated }) => {
    const rise = regulation({ r: r_pu, x: x_pu }, 1, pf, true);
    return { regulation_pct: 100 * rise, v_no_load: v_rated * (1 + rise) };
  },
  'tr-12': ({ kva, v_high, sc_test: { volts, amps, watts }, pf }) => {
    const base = v_high ** 2 / (1000 * kva);
    const [z, r] = [volts / amps / base, watts / amps ** 2 / base];
    const x = Math.sqrt(z * z - r * r);
    const { regulationPercent } = calcKind<{ regulationPercent: number }>('transformer', {
      kva,
      primaryVolts: v_high,
      secondaryVolts: 230,
      phases: 1,
      impedancePercent: 100 * z,
      xr: x / r,
      powerFactor: pf,
    });
    return { r_pu: r, x_pu: x, z_pu: z, regulation_pct: regulationPercent };
  },
  'tr-16': ({ v_primary, v_secondary, phases, load_a_per_phase }) => {
    const required = (Math.sqrt(3) * v_secondary * load_a_per_phase) / 1000;
    const kva = standardKvaAtLeast(required, phases);
    const { primaryAmps } = calcKind<{ primaryAmps: number }>('transformer', {
      kva,
      primaryVolts: v_primary,
      secondaryVolts: v_secondary,
      phases,
    });
    return { required_kva: required, kva, primary_a: primaryAmps };
  },
};
