import type { DayCar, DayCharger, DayInput } from '../day-input.ts';
import { type Course, simulate } from '../simulated/simulate.ts';
import { type World, withMost, worldOf } from '../simulated/world.ts';
import type { Strategy } from './rules.ts';

/** A car that lacks less than this of a target, kilowatt-hours, has met it. */
export const MET = 1e-4;

/** What each car is to get: a share of what its cord could give it without any limit, never more than it asks. */
export const targetsOf = (unmanaged: Course, share: number): Float64Array => unmanaged.got.map((most) => share * most);

export const areMet = (got: ArrayLike<number>, targets: Float64Array): boolean =>
  targets.every((target, car) => got[car]! >= target - MET);

/**
 * The least whole figure of a limit with which a rule gives each car its target, found by halving from the least that any
 * schedule needs to the most that unmanaged charging asks; one less does not do. Null where even that most does not: more
 * room can hurt a rule, and other limits stand.
 */
export function ceilingOfRule(
  world: World,
  limit: number,
  strategy: Strategy,
  targets: Float64Array,
  { unmanaged, leastOfAny }: { readonly unmanaged: Course; readonly leastOfAny: number },
): number | null {
  const isMet = (most: number): boolean => areMet(simulate(withMost(world, limit, most), strategy).got, targets);
  return leastThatMeets(Math.ceil(leastOfAny - 1e-3) - 1, Math.ceil(mostAsked(world, limit, unmanaged) - 1e-6), isMet);
}

function leastThatMeets(below: number, most: number, isMet: (figure: number) => boolean): number | null {
  let [lo, hi] = [below, most];
  if (!isMet(hi)) return null;
  while (hi - lo > 1) {
    const middle = Math.floor((lo + hi) / 2);
    if (isMet(middle)) hi = middle;
    else lo = middle;
  }
  return hi;
}

/** The most that unmanaged charging and what else there is ask of a limit. */
function mostAsked({ rows }: World, limit: number, unmanaged: Course): number {
  let most = 0;
  rows.forEach((row, r) => {
    if (row.limit !== limit) return;
    unmanaged.rows[r]!.forEach((amps, step) => {
      const other = row.other[step]!;
      most = Math.max(most, other, amps > 0 ? amps + other : 0);
    });
  });
  return most;
}

/**
 * The same lot with copies of its chargers, one after another, and of the cars that stood at each: every car is bound to
 * where it stood, and cars that were turned away are left out.
 */
export function withCopies({ input, charger }: World, copies: number): DayInput {
  const { chargers, cars, limits } = input;
  const stood = chargers.map((_, c) => cars.filter((_car, i) => charger[i] === c));
  const bound: DayCar[] = cars.flatMap((car, i) =>
    charger[i]! < 0 ? [] : [{ ...car, charger: chargers[charger[i]!]!.id }],
  );
  const added: DayCharger[] = [];
  for (let t = 0; t < copies; t++) {
    const of = chargers[t % chargers.length]!;
    const id = `${of.id}+${1 + Math.floor(t / chargers.length)}`;
    added.push({ ...of, id });
    bound.push(...stood[t % chargers.length]!.map((car) => ({ ...car, charger: id })));
  }
  return {
    ...input,
    cars: bound,
    chargers: [...chargers, ...added],
    limits: limits.map((limit) =>
      limit.chargers === 'all'
        ? limit
        : {
            ...limit,
            chargers: [
              ...limit.chargers,
              ...added
                .filter((_, t) => (limit.chargers as readonly string[]).includes(chargers[t % chargers.length]!.id))
                .map(({ id }) => id),
            ],
          },
    ),
  };
}

/**
 * The most chargers that can be added, in order and up to three times those there are, so that all cars still get their
 * targets; null where they do not as it stands. By halving, as `isMet` may be no more steady than a rule is.
 */
export function mostCopies(world: World, isMet: (world: World) => boolean): number | null {
  const most = 3 * world.input.chargers.length;
  const does = (copies: number): boolean => isMet(worldOf(withCopies(world, copies)));
  if (!does(0)) return null;
  if (does(most)) return most;
  let [lo, hi] = [0, most];
  while (hi - lo > 1) {
    const middle = Math.floor((lo + hi) / 2);
    if (does(middle)) lo = middle;
    else hi = middle;
  }
  return lo;
}

/** How many chargers a rule could bear besides. */
export const moreUnderRule = (world: World, strategy: Strategy, share: number): number | null =>
  mostCopies(world, (copied) =>
    areMet(simulate(copied, strategy).got, targetsOf(simulate(copied, 'unmanaged'), share)),
  );
