import type { Rules } from '../../routing/site/site.ts';
import { type BranchSize, branchSize, type LengthByKind } from '../circuits/branch-size.ts';
import { remembered } from '../memo.ts';
import type { ConduitConductor } from '../plan-shape.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { compareSizes, methodRaceway } from '../tables/lookup.ts';
import { NEC_2023, tablesFor } from '../tables/nec-2023.ts';
import { fill } from './fill.ts';
import { INVENTED_COST, type InstalledCost } from './installed-cost.ts';
import { type Piece, piecesOf } from './piece.ts';
import type { Way } from './way.ts';

/** What conduits and their circuits are designed by. */
export interface Design {
  readonly tables: CodeTables;
  readonly rules: Rules;
  readonly cost: InstalledCost;
}

/** The design rules of a site: by the tables of its code, or where they are not held of the newest that are. */
export const designOf = remembered((rules: Rules): Design => {
  return { rules, tables: tablesFor(rules.code) ?? NEC_2023, cost: INVENTED_COST };
});

/** A conduit with what is in it. */
export interface PackedPiece extends Piece {
  readonly conductors: readonly ConduitConductor[];
  /** Null for a tray. */
  readonly tradeSize: string | null;
  readonly fillPercent: number;
  readonly fillLimit: number;
  readonly fits: boolean;
}

export interface MemberBranch extends BranchSize {
  /** Current-carrying conductors in the fullest conduit on the way. */
  readonly currentCarrying: number;
  readonly ambientC: number;
}

/** Circuits that leave the equipment in one conduit, each to its own box. */
export interface HomeRun {
  readonly ways: readonly Way[];
  /** In the order of `ways`. */
  readonly branches: readonly MemberBranch[];
  readonly pieces: readonly PackedPiece[];
  /** Dollars in place, for choosing between groupings. */
  readonly cost: number;
}

/** Conduit no longer than this between openings is a nipple: no bundling factor, 60% fill (Chapter 9 Note 4). */
const nippleFeet = (tables: CodeTables): number => tables.fill.nippleInches / 12;

/** Conductors of a circuit that carry current: two lines of a line-to-line charger, three of a three-phase one. */
export const polesOf = (phases: 1 | 3): number => (phases === 3 ? 3 : 2);

/** Size of the pilot conductor: the smallest that the wet inside of an outdoor raceway allows with the branch's insulation. */
export const PILOT_SIZE = '14';

/**
 * Designs the conduits and branches of circuits that share one conduit from the equipment on. `ways` in travel order,
 * `shared` how far each goes with the next. Null where a circuit cannot be sized so.
 */
export function homeRun(design: Design, ways: readonly Way[], shared: readonly number[]): HomeRun | null {
  const { tables, rules } = design;
  const cuts = piecesOf(ways, shared, rules.joinTolerance);
  const carrying = ways.map((way) => polesOf(way.charger.phases));
  for (const piece of cuts) {
    // In a tray each circuit is a cable of its own; a nipple is exempt (310.15(C)(1)(b)).
    if (piece.method === 'tray' || piece.to - piece.from <= nippleFeet(tables)) continue;
    const inside = piece.members.reduce((sum, i) => sum + polesOf(ways[i]!.charger.phases), 0);
    for (const i of piece.members) carrying[i] = Math.max(carrying[i]!, inside);
  }
  const branches: MemberBranch[] = [];
  for (const [i, way] of ways.entries()) {
    const surroundings = { ambientC: rules.ambientC, currentCarrying: carrying[i]! };
    const size = branchSize(tables, rules, way.charger, surroundings, lengthByKind(way, rules.allowance));
    if (size === null) return null;
    branches.push({ ...size, ...surroundings });
  }
  const pieces = cuts.map((piece) => packed(design, piece, ways, branches));
  return { ways, branches, pieces, cost: costOf(design, ways, branches, pieces) };
}

/** Conductor length by raceway kind; the allowances belong to the kinds at the ends. */
const lengthByKind = remembered((way: Way, allowance: Rules['allowance']): LengthByKind => {
  const lengths: Partial<Record<'PVC' | 'aluminum' | 'steel', number>> = {};
  const add = (leg: number, feet: number): void => {
    const kind = methodRaceway(way.methods[leg] ?? 'EMT');
    lengths[kind] = (lengths[kind] ?? 0) + feet;
  };
  way.legs.forEach((_, leg) => {
    add(leg, way.at[leg + 1]! - way.at[leg]!);
  });
  add(0, allowance.equipment);
  add(way.legs.length - 1, allowance.box);
  return lengths;
});

function packed(
  { tables, rules }: Design,
  piece: Piece,
  ways: readonly Way[],
  branches: readonly MemberBranch[],
): PackedPiece {
  const conductors = conductorsIn(piece, ways, branches, rules);
  if (piece.method === 'tray')
    return { ...piece, conductors, tradeSize: null, fillPercent: 0, fillLimit: 0, fits: true };
  const { fillPercent, limitPercent, tradeSize, ok } = filled(tables, {
    method: piece.method,
    conductors,
    nipple: piece.to - piece.from <= nippleFeet(tables),
  });
  return { ...piece, conductors, tradeSize, fillPercent, fillLimit: limitPercent, fits: ok };
}

const fills = new WeakMap<CodeTables, Map<string, ReturnType<typeof fill>>>();

/** `fill`, which a lot asks for the same few conduits thousands of times. */
function filled(tables: CodeTables, input: Parameters<typeof fill>[1]): ReturnType<typeof fill> {
  let known = fills.get(tables);
  if (known === undefined) {
    known = new Map();
    fills.set(tables, known);
  }
  let key = `${input.method} ${input.nipple}`;
  for (const { size, insulation, count } of input.conductors) key += ` ${count}x${size} ${insulation}`;
  let answer = known.get(key);
  if (answer === undefined) {
    answer = fill(tables, input);
    known.set(key, answer);
  }
  return answer;
}

/** Lines largest first, then one grounding conductor for all, the largest asked for (250.122(C)), then the pilots. */
function conductorsIn(
  piece: Piece,
  ways: readonly Way[],
  branches: readonly MemberBranch[],
  rules: Rules,
): readonly ConduitConductor[] {
  const lines = new Map<string, number>();
  let grounding: string | null = null;
  let pilots = 0;
  for (const i of piece.members) {
    const { charger } = ways[i]!;
    const branch = branches[i]!;
    const { size } = branch.conductor;
    lines.set(size, (lines.get(size) ?? 0) + polesOf(charger.phases));
    if (grounding === null || compareSizes(branch.grounding.size, grounding) > 0) grounding = branch.grounding.size;
    if (charger.pilot === true) pilots++;
  }
  const { insulation } = rules;
  const conductors: ConduitConductor[] = [...lines]
    .sort(([a], [b]) => compareSizes(b, a))
    .map(([size, count]) => ({ use: 'line', size, insulation, count }));
  if (grounding !== null) conductors.push({ use: 'grounding', size: grounding, insulation, count: 1 });
  if (pilots > 0) conductors.push({ use: 'pilot', size: PILOT_SIZE, insulation, count: pilots });
  return conductors;
}

function costOf(
  { rules, cost }: Design,
  ways: readonly Way[],
  branches: readonly MemberBranch[],
  pieces: readonly PackedPiece[],
): number {
  const { metal, insulation, allowance } = rules;
  let dollars = 0;
  ways.forEach((way, i) => {
    const foot = cost.conductorFoot(branches[i]!.conductor.size, metal, insulation);
    dollars += polesOf(way.charger.phases) * (way.length + allowance.equipment + allowance.box) * foot;
  });
  for (const piece of pieces) {
    const length = piece.to - piece.from;
    dollars += length * cost.racewayFoot(piece.method, piece.tradeSize);
    dollars += cost.racewayEnds(piece.method, piece.tradeSize) + piece.bends * cost.bend(piece.method, piece.tradeSize);
    for (const { use, size, count } of piece.conductors) {
      if (use === 'grounding') dollars += length * count * cost.conductorFoot(size, metal, insulation);
    }
    if (piece.end.kind === 'junction') dollars += cost.junction;
    if (!piece.fits) dollars += UNFIT;
  }
  return dollars;
}

/** Keeps a conduit that nothing fits out of every grouping that has another choice. */
const UNFIT = 1e9;
