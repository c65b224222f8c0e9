import { type Box, boxOf, joinedBox, NO_BOX, widened } from '../plane/box.ts';
import { direction } from '../plane/direction.ts';
import { inPlan } from '../plane/space.ts';
import type { Drop, Point2, Point3, Rules, Stall, Vehicle } from '../site/site.ts';
import { cordStart } from './cords/cord-start.ts';
import { type CordField, vehicleUnder, windowOn } from './field.ts';
import { covers, inletCases, MARGIN_TIE } from './stall-reach.ts';

/** What a coverage must be no less than to meet a rule, rounding of the shares allowed for. */
export const meets = (coverage: number, rules: Pick<Rules, 'coverage'>): boolean =>
  coverage >= rules.coverage - MARGIN_TIE;

/**
 * The usable cord, feet, with which as large a share of the cases would be covered as the rule asks. Null where no
 * length does, because too many of them have no way.
 */
export function cordNeeded(
  cases: readonly { readonly needed: number | null; readonly available: number; readonly share: number }[],
  cord: number,
  rules: Pick<Rules, 'coverage'>,
): number | null {
  let covered = 0;
  const byLength = cases.filter(({ share }) => share > 0).sort((a, b) => orLast(a.needed) - orLast(b.needed));
  for (const { needed, available, share } of byLength) {
    if (needed === null) return null;
    covered += share;
    if (meets(covered, rules)) return Math.max(cord, cord + needed - available);
  }
  return null;
}

const orLast = (needed: number | null): number => needed ?? Number.POSITIVE_INFINITY;

/** A straight move that cures a short reach. */
export interface Move {
  /** Feet. */
  readonly distance: number;
  readonly toward:
    | 'toward the aisle'
    | 'toward the head'
    | 'to the left, facing the head'
    | 'to the right, facing the head';
  /** `drop`: the box and, where there is one, the retractor with it. */
  readonly what: 'retractor' | 'drop';
}

/** What a cure is looked for among. */
export interface CureSought {
  readonly drop: Drop;
  /** The stall that is short, first, then the others that the charger serves. */
  readonly served: readonly { readonly stall: Stall; readonly vehicle: Vehicle }[];
  readonly field: CordField;
  readonly rules: Rules;
  /** Moves are whole multiples of this, feet: an inch, or five centimetres. */
  readonly grain: number;
  /** Whether a retractor or box may hang at a place. */
  readonly allowed: (at: Point3) => boolean;
}

// Moves are tried at about every half foot before the least one is narrowed down.
const STRIDE_FEET = 0.5;

/**
 * The least straight move along or across the short stall, up to its depth, after which the charger reaches every stall
 * it serves: of the retractor alone, its box staying, or else of the whole drop. A move that would come to hang over a
 * vehicle is none, unless the drop hangs over one already. Found by trying about every half foot and halving the last
 * step; every move given has been worked through in full. Null where there is no such move. `seen` is the box that had a
 * say in the result.
 */
export function leastMove(cure: CureSought): { readonly move: Move | null; readonly seen: Box } {
  const { drop, served, grain } = cure;
  const stall = served[0]!.stall;
  const [ux, uy] = direction(stall.heading);
  const ways: readonly [Move['toward'], Point2][] = [
    ['toward the aisle', [-ux, -uy]],
    ['toward the head', [ux, uy]],
    ['to the left, facing the head', [-uy, ux]],
    ['to the right, facing the head', [uy, -ux]],
  ];
  const stride = Math.max(1, Math.round(STRIDE_FEET / grain));
  const trial = trialOf(cure);
  for (const what of drop.retractor ? (['retractor', 'drop'] as const) : (['drop'] as const)) {
    let most = Math.floor(stall.depth / grain);
    let move: Move | null = null;
    for (const [toward, way] of ways) {
      const steps = leastSteps(most, stride, (k) => trial.passes(moved(drop, what, way, k * grain)));
      if (steps === null) continue;
      move = { distance: steps * grain, toward, what };
      most = steps - 1;
    }
    if (move) return { move, seen: trial.seen() };
  }
  return { move: null, seen: trial.seen() };
}

function leastSteps(most: number, stride: number, passes: (k: number) => boolean): number | null {
  for (let k = stride; k - stride < most; k += stride) {
    let high = Math.min(k, most);
    if (!passes(high)) continue;
    let low = k - stride;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (passes(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return null;
}

function moved(drop: Drop, what: Move['what'], way: Point2, by: number): Drop {
  const shift = (p: Point3): Point3 => [p[0] + by * way[0], p[1] + by * way[1], p[2]];
  const retractor = drop.retractor && { retractor: shift(drop.retractor) };
  return { ...drop, ...retractor, box: what === 'drop' ? shift(drop.box) : drop.box };
}

/** Works one moved drop through, cheapest refusals first, and remembers where it looked. */
function trialOf({ drop, served, field, rules, allowed }: CureSought) {
  const inlets = served.map(({ stall, vehicle }) => inletCases(stall, vehicle, rules.headClearance));
  const over = ([x, y]: Point3): boolean => vehicleUnder(field, [x, y]) !== null;
  const { from } = cordStart(drop, rules);
  const mayBeOver = over(from);
  const depth = served[0]!.stall.depth;
  const ends = boxOf([from, ...inlets.flat().map((one) => one.at)].map(inPlan));
  const at = windowOn(field, widened(ends, depth));
  let seen = NO_BOX;
  const passes = (candidate: Drop): boolean => {
    const start = cordStart(candidate, rules);
    const [x, y] = start.from;
    const near = at([x, y]);
    const enough = inlets.every((cases) => {
      const answer = covers(start, cases, near, rules.coverage);
      seen = joinedBox(seen, answer.seen);
      return answer.enough;
    });
    if (!enough || !allowed(start.from) || !allowed(candidate.box)) return false;
    return mayBeOver || !over(start.from);
  };
  return { passes, seen: () => seen };
}
