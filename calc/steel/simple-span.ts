import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/** What hangs from a member, by its place along it from its first end, feet. */
export type SpanLoad =
  | { readonly at: number; readonly pounds: number }
  | { readonly from: number; readonly to: number; readonly poundsPerFoot: number };

export interface Span {
  /** Feet along the member. */
  readonly length: number;
  /** Feet of it in the plan: loads hang straight down, so only these turn it. */
  readonly inPlan: number;
}

export interface SpanStatics {
  /** Pounds at the first end and at the last. */
  readonly reactions: readonly [number, number];
  /** The largest bending moment, pound-feet; 0 where nothing hangs. */
  readonly moment: number;
  /** Where it is, feet along the member: the first such place. */
  readonly at: number;
}

const SOURCE = 'statics of a simple span: the sum of the moments about one end is 0, and so is the sum of the forces';

/** Pounds of one load, and how far along they weigh as one, feet. */
export function resultant(load: SpanLoad): readonly [pounds: number, at: number] {
  if ('at' in load) return [load.pounds, load.at];
  return [load.poundsPerFoot * (load.to - load.from), (load.from + load.to) / 2];
}

/** Sums reactions by `R2 = sum(P a) / L`, `R1 = sum(P) - R2`, each worked from its own side so that both are exact. */
export function reactionsOf(length: number, loads: readonly SpanLoad[]): [number, number] {
  let [first, last] = [0, 0];
  for (const load of loads) {
    const [pounds, at] = resultant(load);
    first += (pounds * (length - at)) / length;
    last += (pounds * at) / length;
  }
  return [first, last];
}

/** Places where the load per foot changes or a load hangs, in order: what it is from there on, and what hangs there. */
function changesAlong(loads: readonly SpanLoad[]): readonly { at: number; pounds: number; perFoot: number }[] {
  const changes = new Map<number, { at: number; pounds: number; perFoot: number }>();
  const change = (at: number, pounds: number, perFoot: number): void => {
    const known = changes.get(at);
    if (known === undefined) changes.set(at, { at, pounds, perFoot });
    else {
      known.pounds += pounds;
      known.perFoot += perFoot;
    }
  };
  for (const load of loads) {
    if ('at' in load) change(load.at, load.pounds, 0);
    else {
      change(load.from, 0, load.poundsPerFoot);
      change(load.to, 0, -load.poundsPerFoot);
    }
  }
  return [...changes.values()].sort((a, b) => a.at - b.at);
}

/**
 * The largest moment as if the member lay level: at a load, or where between two of them the shear passes through 0.
 * `first` is the shear at the first end, `start` the moment there.
 */
export function largestMoment(
  length: number,
  first: number,
  loads: readonly SpanLoad[],
  start = 0,
): { moment: number; at: number } {
  let best = { moment: 0, at: 0 };
  const better = (moment: number, at: number): void => {
    if (moment > best.moment * (1 + 1e-12) + 1e-12) best = { moment, at };
  };
  let [at, moment, shear, perFoot] = [0, start, first, 0];
  for (const next of [...changesAlong(loads), { at: length, pounds: 0, perFoot: 0 }]) {
    const feet = next.at - at;
    const peak = perFoot > 0 ? shear / perFoot : Number.POSITIVE_INFINITY;
    if (peak > 0 && peak < feet) better(moment + (shear * peak) / 2, at + peak);
    moment += shear * feet - (perFoot * feet * feet) / 2;
    shear -= perFoot * feet + next.pounds;
    perFoot += next.perFoot;
    at = next.at;
    if (at > 0 && at < length) better(moment, at);
  }
  return best;
}

/**
 * Reactions and largest bending moment of a member that rests on its two ends alone, under loads that hang straight down:
 * points in pounds, lines in pounds per foot of the member. Statics only: what the member can bear is checked by others,
 * and one that runs on over its supports shares its loads otherwise. Superposition of exact formulas; no weight of the
 * member itself. RangeError where a load lies past an end, or the member has no length in plan.
 * @example
 * // Hand-worked: 100 lb 4 ft along 10 ft: 100 x 6 / 10 = 60 and 40 lb, and 60 x 4 = 240 lb ft under it
 * simpleSpan({ length: 10, inPlan: 10 }, [{ at: 4, pounds: 100 }]) // { reactions: [60, 40], moment: 240, at: 4 }
 */
export function simpleSpan({ length, inPlan }: Span, loads: readonly SpanLoad[], tell: Tell = SILENT): SpanStatics {
  if (!(inPlan > 0) || !(length > 0)) throw new RangeError('a simple span has a length in plan');
  for (const load of loads) {
    const [from, to] = 'at' in load ? [load.at, load.at] : [load.from, load.to];
    if (!(from >= 0 && from <= to && to <= length)) throw new RangeError('a load lies past the end of the member');
  }
  const reactions = reactionsOf(length, loads);
  const level = largestMoment(length, reactions[0], loads);
  const lean = Math.min(1, inPlan / length);
  const moment = level.moment * lean;
  const total = loads.reduce((sum, load) => sum + resultant(load)[0], 0);
  const values = { loads: loads.length, 'all loads': measured(total, 'lb'), length: measured(length, 'ft') };
  tell(() => ({
    find: 'reaction at the first end',
    formula: 'sum of each load x its distance from the last end / length',
    values,
    result: reactions[0],
    unit: 'lb',
    source: SOURCE,
  }));
  tell(() => ({
    find: 'reaction at the last end',
    formula: 'sum of each load x its distance from the first end / length',
    values,
    result: reactions[1],
    unit: 'lb',
    source: SOURCE,
  }));
  tell(() => ({
    find: 'largest moment',
    formula:
      lean < 1
        ? 'where the shear passes through 0: reaction and loads to one side x their distances in plan'
        : 'where the shear passes through 0: reaction and loads to one side x their distances',
    values: {
      'first reaction': measured(reactions[0], 'lb'),
      place: measured(level.at, 'ft'),
      ...(lean < 1 ? { 'plan length / length': Number(lean.toPrecision(6)) } : {}),
    },
    result: moment,
    unit: 'lb ft',
    source: `${SOURCE}; capacity is checked by others`,
  }));
  return { reactions, moment, at: level.at };
}
