import { kept } from '../../routing/kept/kept.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { Conduit, PlanFile, TakeoffRow } from '../plan-file.ts';
import { racewaySpec, STICK } from '../prices/spec.ts';
import { cut } from './cut.ts';

/** Reels that conductors are bought on, feet. Common practice, no source. */
export const PUT_UPS = [500, 1000, 2500] as const;

/** Lost at each saw cut of a raceway, feet: 1/8 in. Common practice, no source. */
const KERF = 0.125 / 12;

export interface CutPiece {
  /** Id of the conduit or circuit that it is for. */
  readonly of: string;
  /** Feet. */
  readonly length: number;
}

export interface CutStock {
  /** Pieces in the order in which they are cut, longest first. */
  readonly pieces: readonly CutPiece[];
  /** Feet left over. */
  readonly offcut: number;
}

/** How one kind of stock is cut. */
export interface CutGroup {
  readonly item: 'raceway' | 'conductor';
  readonly spec: string;
  /** Length of one stick or reel, feet; 0 where all is ordered to length. */
  readonly stock: number;
  readonly stocks: readonly CutStock[];
  /** Proved: no cutting takes fewer of this stock. */
  readonly bound: number;
  /** Pieces longer than any stock: to be ordered to length. */
  readonly toLength: readonly CutPiece[];
}

type Cuttable = Pick<PlanFile, 'circuits' | 'conduits' | 'takeoff'>;

/**
 * What comes from which stick and which reel: raceways in sticks, straight by straight, whole sticks first; conductors
 * by size, insulation and colour in whole lengths (nothing is spliced inside a pull), from the put-up that buys the
 * fewest feet; feeder conductors are ordered to length. Lengths are before waste: the offcuts are the waste that this plan makes.
 */
export const cutPlan = kept((plan: Cuttable): readonly CutGroup[] => [
  ...stickGroups(plan.conduits),
  ...reelGroups(plan.takeoff),
  ...toLengthGroups(plan.takeoff),
]);

function stickGroups(conduits: readonly Conduit[]): CutGroup[] {
  const bySpec = new Map<string, CutPiece[]>();
  for (const { id, method, tradeSize, path } of conduits) {
    if (tradeSize === null || method === 'LFMC') continue;
    const spec = racewaySpec(method, tradeSize);
    const pieces = bySpec.get(spec) ?? [];
    bySpec.set(spec, pieces);
    for (const length of straights(path)) pieces.push(...inSticks(id, length));
  }
  return [...bySpec].sort(byName).map(([spec, pieces]) => group('raceway', spec, STICK, pieces, KERF));
}

/** Lengths of the straights of a path: legs that go on in one direction are one. */
function straights(path: readonly Point3[]): number[] {
  const lengths: number[] = [];
  let last: Point3 | undefined;
  path.slice(1).forEach((to, i) => {
    const from = path[i] as Point3;
    const leg: Point3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    const length = Math.hypot(...leg);
    if (length < 1e-9) return;
    const way: Point3 = [leg[0] / length, leg[1] / length, leg[2] / length];
    if (last && last[0] * way[0] + last[1] * way[1] + last[2] * way[2] > 1 - 1e-9)
      lengths[lengths.length - 1] = (lengths.at(-1) as number) + length;
    else lengths.push(length);
    last = way;
  });
  return lengths;
}

/** A straight as whole sticks and the piece that is left. */
function inSticks(of: string, length: number): CutPiece[] {
  const whole = Math.floor(length / STICK + 1e-9);
  const rest = length - whole * STICK;
  return [
    ...Array.from({ length: whole }, () => ({ of, length: STICK })),
    ...(rest > 1e-9 ? [{ of, length: rest }] : []),
  ];
}

const ON_REELS: ReadonlySet<string> = new Set(['conductor', 'grounding conductor', 'pilot conductor']);

function reelGroups(takeoff: readonly TakeoffRow[]): CutGroup[] {
  const bySpec = new Map<string, CutPiece[]>();
  for (const { item, spec, parts } of takeoff) {
    if (!ON_REELS.has(item)) continue;
    const pieces = bySpec.get(spec) ?? [];
    bySpec.set(spec, pieces);
    for (const { of, quantity } of parts) pieces.push({ of, length: quantity });
  }
  return [...bySpec].sort(byName).map(([spec, pieces]) => {
    const longest = pieces.reduce((most, { length }) => Math.max(most, length), 0);
    const fitting = PUT_UPS.filter((putUp) => putUp >= longest);
    const tried = (fitting.length > 0 ? fitting : [PUT_UPS[PUT_UPS.length - 1] as number]).map((putUp) =>
      group('conductor', spec, putUp, pieces, 0),
    );
    return tried.reduce((best, one) => (bought(one) < bought(best) ? one : best));
  });
}

const TO_LENGTH: ReadonlySet<string> = new Set([
  'feeder conductor',
  'feeder grounding conductor',
  'feeder bonding conductor',
  'electrode conductor',
]);

const toLengthGroups = (takeoff: readonly TakeoffRow[]): CutGroup[] =>
  takeoff
    .filter(({ item }) => TO_LENGTH.has(item))
    .map(({ spec, parts }) => ({
      item: 'conductor',
      spec,
      stock: 0,
      stocks: [],
      bound: 0,
      toLength: parts.flatMap(({ of, quantity, cut: lengths = [quantity] }) =>
        lengths.map((length) => ({ of, length })),
      ),
    }));

const byName = ([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number => (a < b ? -1 : 1);

/** Feet that a cutting plan buys. */
export const bought = ({ stock, stocks }: CutGroup): number => stock * stocks.length;

function group(
  item: CutGroup['item'],
  spec: string,
  stock: number,
  pieces: readonly CutPiece[],
  kerf: number,
): CutGroup {
  const toLength = pieces.filter(({ length }) => length > stock);
  const cuttable = pieces.filter(({ length }) => length <= stock);
  const { plan, bound } = cut({ stock, pieces: cuttable.map(({ length }) => length), kerf });
  const piles = new Map<number, CutPiece[]>();
  for (const piece of cuttable) piles.set(piece.length, [...(piles.get(piece.length) ?? []), piece]);
  const stocks = plan.map((lengths): CutStock => {
    const chosen = lengths.map((length) => (piles.get(length) as CutPiece[]).shift() as CutPiece);
    const used = lengths.reduce((sum, length) => sum + length, 0) + kerf * Math.max(0, lengths.length - 1);
    return { pieces: chosen, offcut: Math.max(0, stock - used) };
  });
  return { item, spec, stock, stocks, bound, toLength };
}
