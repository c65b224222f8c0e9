import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { largestMoment, reactionsOf, resultant, type Span, type SpanLoad } from './simple-span.ts';

export interface ChainStatics {
  /** Pounds at each rest, in their order. */
  readonly reactions: readonly number[];
  /** Pound-feet, without its sign. */
  readonly moment: number;
  /** Feet along the member. */
  readonly at: number;
}

const SOURCE = 'statics: simple spans from rest to rest, what stands out past the outermost is carried by it';
/** Rests and loads nearer than this are in one place, feet. */
const SAME = 1e-9;

/**
 * Reactions and largest bending moment of a member that rests at several places, `rests` in feet along it in rising
 * order, under loads that hang straight down. Between two rests it is taken as a simple span; ends that stand out hang
 * on the outermost rests, and on a single rest both do. Statics only: a member that runs on over its rests without a
 * hinge shares its loads otherwise, and capacity is checked by others. RangeError where there is no rest, or one or a
 * load lies past an end.
 * @example
 * // Hand-worked: 10 ft rest at 0 and 8 ft, 100 lb at the free end: 100 x 10 / 8 = 125 lb, -25 lb at the first; 200 lb ft
 * spanChain({ length: 10, inPlan: 10 }, [0, 8], [{ at: 10, pounds: 100 }]) // { reactions: [-25, 125], moment: 200, at: 8 }
 */
export function spanChain(
  { length, inPlan }: Span,
  rests: readonly number[],
  loads: readonly SpanLoad[],
  tell: Tell = SILENT,
): ChainStatics {
  const ends = loads.flatMap((load) => ('at' in load ? [load.at] : [load.from, load.to]));
  if (rests.length === 0) throw new RangeError('a member rests on something');
  if ([...rests, ...ends].some((at) => !(at >= 0 && at <= length + SAME)))
    throw new RangeError('a rest or a load lies past the end of the member');
  const [first, last] = [rests[0]!, rests.at(-1)!];
  const reactions = rests.map(() => 0);
  const moments = rests.map(() => 0);
  const before = part(loads, 0, first, true);
  const after = part(loads, last, length, rests.length === 1, true).map((load) => shifted(load, -last));
  const left = before.reduce((sum, load) => sum + resultant(load)[0] * (first - resultant(load)[1]), 0);
  const right = after.reduce((sum, load) => sum + resultant(load)[0] * resultant(load)[1], 0);
  reactions[0]! += weightOf(before);
  reactions[rests.length - 1]! += weightOf(after);
  moments[0]! -= left;
  if (rests.length > 1) moments[rests.length - 1]! -= right;
  let best = left >= right ? { moment: left, at: first } : { moment: right, at: last };
  for (let i = 0; i + 1 < rests.length; i++) {
    const [from, to] = [rests[i]!, rests[i + 1]!];
    const span = to - from;
    const own = part(loads, from, to, i === 0, true).map((load) => shifted(load, -from));
    const [a, b] = reactionsOf(span, own);
    const turned = (moments[i + 1]! - moments[i]!) / span;
    reactions[i]! += a + turned;
    reactions[i + 1]! += b - turned;
    const sag = largestMoment(span, a + turned, own, moments[i]!);
    if (sag.moment > best.moment * (1 + 1e-12) + 1e-12) best = { moment: sag.moment, at: from + sag.at };
  }
  const lean = Math.min(1, inPlan / length);
  const moment = best.moment * lean;
  const at = moment === 0 ? 0 : best.at;
  rests.forEach((place, i) => {
    tell(() => ({
      find: `reaction ${measured(place, 'ft')} along`,
      formula:
        'sum of each load of the spans beside it x its distance from their far end / span, and all that stands out',
      values: { loads: loads.length, 'all loads': measured(weightOf(loads), 'lb'), rests: rests.length },
      result: reactions[i]!,
      unit: 'lb',
      source: SOURCE,
    }));
  });
  tell(() => ({
    find: 'largest moment',
    formula:
      lean < 1
        ? 'where the shear passes through 0, or over a rest: forces to one side x their distances in plan'
        : 'where the shear passes through 0, or over a rest: forces to one side x their distances',
    values: {
      place: measured(at, 'ft'),
      ...(lean < 1 ? { 'plan length / length': Number(lean.toPrecision(6)) } : {}),
    },
    result: moment,
    unit: 'lb ft',
    source: `${SOURCE}; capacity is checked by others`,
  }));
  return { reactions, moment, at };
}

const weightOf = (loads: readonly SpanLoad[]): number => loads.reduce((sum, load) => sum + resultant(load)[0], 0);

/** What of the loads lies between two places; a point in one of them counts where `low` or `high` says so. */
function part(loads: readonly SpanLoad[], from: number, to: number, low = false, high = false): readonly SpanLoad[] {
  return loads.flatMap((load): readonly SpanLoad[] => {
    if ('at' in load) {
      const { at } = load;
      const isIn = (at > from + SAME || (low && at >= from - SAME)) && (at < to - SAME || (high && at <= to + SAME));
      return isIn ? [{ ...load, at: Math.min(to, Math.max(from, at)) }] : [];
    }
    const [a, b] = [Math.max(from, load.from), Math.min(to, load.to)];
    return b > a ? [{ ...load, from: a, to: b }] : [];
  });
}

const shifted = (load: SpanLoad, by: number): SpanLoad =>
  'at' in load ? { ...load, at: load.at + by } : { ...load, from: load.from + by, to: load.to + by };
