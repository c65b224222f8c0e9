import { hypot2 } from '../../routing/plane/hypot.ts';
import { LENGTH_SLACK } from '../../routing/plane/space.ts';
import type { Member, Point3 } from '../../routing/site/site.ts';
import type { Hung } from '../plan-file/hung.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { alongMember } from './loads.ts';
import { memberLength, type Rest } from './rests.ts';
import type { SpanLoad } from './simple-span.ts';
import { spanChain } from './span-chain.ts';

/** Pounds at one place where a member rests. */
export interface Reaction {
  /** Along the member from its first end, feet. */
  readonly at: number;
  readonly pounds: number;
  /** Column or member under it; null where none is drawn and its end is taken to rest. */
  readonly on: string | null;
}

export interface MemberStatics {
  readonly rests: readonly Reaction[];
  /** The largest bending moment, sagging or over a rest, pound-feet; 0 where nothing hangs. */
  readonly moment: number;
  /** Where it is, feet along the member. */
  readonly at: number;
}

/** A single column nearer to an end than this share of the length carries that end alone. */
const AT_END = 0.1;

/**
 * Reactions and largest moment of a member under what hangs on it: simple spans from rest to rest, with what stands out
 * past the first and the last. Where nothing is drawn under it, it rests on its ends; on one column in mid-length it
 * stands out to both sides. One that stands upright spans nothing: all of it rests on its foot.
 */
export function memberStatics(
  member: Member,
  { pounds, points, runs }: Hung,
  rests: readonly Rest[],
  tell: Tell = SILENT,
): MemberStatics {
  const { from, to } = member;
  const length = memberLength(member);
  const inPlan = hypot2(to[0] - from[0], to[1] - from[1]);
  if (inPlan <= LENGTH_SLACK)
    return { rests: [{ at: from[2] <= to[2] ? 0 : length, pounds, on: null }], moment: 0, at: 0 };
  const places = placesOf(rests, length);
  const within = (at: Point3): number => Math.min(length, alongMember(member, at));
  const loads: readonly SpanLoad[] = [
    ...points.map(({ at, pounds: own }) => ({ at: within(at), pounds: own })),
    ...runs.map((run) => ({ from: within(run.from), to: within(run.to), poundsPerFoot: run.poundsPerFoot })),
  ];
  const { reactions, moment, at } = spanChain(
    { length, inPlan },
    places.map((place) => place.at),
    loads,
    tell,
  );
  return { rests: places.map((place, i) => ({ ...place, pounds: reactions[i]! })), moment, at };
}

/** Where a member is taken to rest. */
function placesOf(rests: readonly Rest[], length: number): readonly Omit<Reaction, 'pounds'>[] {
  const known = rests.map(({ at, on }) => ({ at, on }));
  const ends = [
    { at: 0, on: null },
    { at: length, on: null },
  ];
  const [only] = rests;
  if (only === undefined) return ends;
  if (rests.length > 1) return known;
  const share = only.at / length;
  if (share < AT_END) return [...known, ends[1]!];
  if (share > 1 - AT_END) return [ends[0]!, ...known];
  return only.kind === 'column' ? known : [ends[0]!, ...known, ends[1]!];
}
