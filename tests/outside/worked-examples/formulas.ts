import { designAmps } from '../../../calc/circuits/design-amps.ts';
import { phasorDrop } from '../../../calc/circuits/line-drop.ts';
import { magnitude, type Phasor, plus } from '../../../calc/supply/load-flow/phasor.ts';
import { circularMils } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { groundingSize } from '../../../calc/tables/protection-of.ts';
import { lagging, times } from './by-hand.ts';
import { calcKind } from './calc-kind.ts';

/** Inputs as printed: the keys are the collection's. */
// biome-ignore lint/suspicious/noExplicitAny: each example has fields of its own.
export type Printed = any;
export type Answer = Readonly<Record<string, unknown>>;

export const celsius = (f: number) => (f - 32) / 1.8;

export interface Drop {
  readonly dropVolts: number;
  readonly dropPercent: number;
  readonly voltsAtLoad: number;
}
interface Filled {
  readonly conductorArea: number;
  readonly tradeSize: string;
  readonly ok: boolean;
}

/** Two-wire drop by Table 9 resistance: unity power factor leaves no reactance. */
export const twoWire = ({ volts = 120, amps, size, material, length_one_way_ft: length }: Printed): Answer => {
  const conductor = { size, metal: material };
  const input = { phases: 1, volts, amps, length, conductor, method: 'impedance', raceway: 'PVC', powerFactor: 1 };
  return { vd_v: calcKind<Drop>('voltage-drop', input).dropVolts };
};

export const byResistance = (
  { phases, volts, amps, length_one_way_ft: length, material }: Printed,
  size: string,
): Drop =>
  calcKind('voltage-drop', { phases, volts, amps, length, conductor: { size, metal: material }, method: 'resistance' });

/** Volts at each tap of a two-wire line, section by section. */
export const alongLine = ({ v_source, section_loop_ohm: ohms, load_amps: loads }: Printed): Answer => {
  let volts = v_source;
  const nodes = ohms.map((loop: number, at: number) => {
    const amps = loads.slice(at).reduce((sum: number, load: number) => sum + load, 0);
    volts = phasorDrop({ phases: 1, volts, amps, r: loop / 2, x: 0, powerFactor: 1 }).voltsAtLoad;
    return volts;
  });
  return { v_nodes: nodes };
};

/** Volts at the head of a line of two sections from those at its end. */
export const fromFarEnd = ({ z_ohm_per_km: [r, x], load_C, load_B, v_B }: Printed): Answer => {
  const z: Phasor = { re: r, im: x };
  const end: Phasor = { re: v_B, im: 0 };
  const atB = lagging(end, load_B[0], load_B[1]);
  const middle = plus(end, times(atB, z));
  const head = plus(middle, times(plus(atB, lagging(end, load_C[0], load_C[1])), z));
  return { v_A: magnitude(head), angle_deg: (Math.atan2(head.im, head.re) * 180) / Math.PI };
};

export const ampacityOf = (
  size: string,
  insulation: string,
  { ambient_f, ambient_c, current_carrying = 3 }: Printed,
): Answer => {
  const ambientC = ambient_c ?? (ambient_f === undefined ? 30 : celsius(ambient_f));
  const conductor = { size, metal: 'Cu', insulation };
  const { ampacity } = calcKind<{ ampacity: number }>('ampacity', {
    conductor,
    ambientC,
    currentCarrying: current_carrying,
  });
  return { amps: ampacity };
};

export const chargerBranch = ({ evse_a: amps }: Printed): Answer => {
  const input = {
    amps,
    continuous: true,
    metal: 'Cu',
    insulation: 'THWN-2',
    ambientC: 30,
    currentCarrying: 2,
    terminalC: 75,
  };
  return {
    design_a: designAmps(nec, { continuous: amps, other: 0 }),
    ocpd: calcKind<{ breakerAmps: number }>('branch', input).breakerAmps,
  };
};

export const filled = ({ raceway: method, conductors, insulation }: Printed): Answer => {
  const list = conductors.map(({ n, size }: Printed) => ({ size, insulation, count: n }));
  const { conductorArea, tradeSize } = calcKind<Filled>('fill', { method, conductors: list });
  return { area_in2: conductorArea, trade: tradeSize };
};

/** How many more go in: the last count that still fits, and the room left over the area of one. */
export const added = ({ raceway: method, trade: tradeSize, existing: [first], add }: Printed): Answer => {
  const with_ = (count: number): Filled & { fillPercent: number; limitPercent: number } => {
    const conductors = [{ size: first.size, insulation: 'RHW without covering', count: first.n }];
    if (count > 0) conductors.push({ size: add.size, insulation: 'THW', count });
    return calcKind('fill', { method, tradeSize, conductors });
  };
  let count = 0;
  while (with_(count + 1).ok) count += 1;
  const one = with_(1).fillPercent - with_(0).fillPercent;
  return { count, ratio: (with_(0).limitPercent - with_(0).fillPercent) / one };
};

export const grown = (breakerAmps: number, { installed_size, min_size, material }: Printed): Answer => {
  const { grounding } = calcKind<{ grounding: { size: string } }>('grounding', {
    breakerAmps,
    metal: material,
    conductor: installed_size,
    conductorNeeded: min_size,
  });
  const ratio = circularMils(nec, installed_size) / circularMils(nec, min_size);
  const cmil = circularMils(nec, groundingSize(nec, breakerAmps, 'copper')) * ratio;
  return { cmil, egc: grounding.size };
};

export const pullBoxOf = (input: object): number => calcKind<{ length: number }>('pull-box', input).length;

export const straightPull = ({ raceways_in }: Printed): Answer => ({
  length_in: pullBoxOf({ straight: true, rows: [{ entries: raceways_in }] }),
});

export const growth = (length: number, rangeF: number): Answer => {
  const input = { material: 'PVC', length, temperatureRangeC: rangeF / 1.8 };
  return { delta_in: calcKind<{ change: number }>('expansion', input).change };
};

export interface Pulled {
  readonly tension: readonly number[];
  readonly sidewall: readonly number[];
}

/** Tensions of a bend by the capstan rule, the pull that holds back given. */
export const round = (tensionIn: number, friction: number, angle: number, radius = 1): number =>
  calcKind<Pulled>('pulling', { segments: [{ kind: 'bend', angle, radius }], weightPerFoot: 0, friction, tensionIn })
    .tension[0] ?? Number.NaN;

export const pulledRoute = ({ w_lb_per_ft, f, bend_radius_ft: radius, segments }: Printed): Answer => {
  const { tension, sidewall } = calcKind<Pulled>('pulling', {
    segments: segments.map((part: Printed) =>
      part.type === 'straight'
        ? { kind: 'straight', length: part.length_ft }
        : { kind: 'bend', angle: part.deg, radius },
    ),
    weightPerFoot: w_lb_per_ft,
    friction: f,
  });
  return { tension_lb: tension, sidewall_lb_per_ft: sidewall.filter((pressure) => pressure > 0) };
};
