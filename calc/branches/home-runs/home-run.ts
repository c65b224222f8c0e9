import { keptByKey } from '../../../routing/kept/kept.ts';
import { numbering } from '../../../routing/kept/numbered.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { Design } from '../design.ts';
import { type ConduitWay, pointAt } from '../way.ts';
import { memberOf, type Occupant, polesOf } from './member.ts';
import { type Packing, packing } from './packing.ts';
import { type ConduitCut, cutsOf, type Piece, piecesOf } from './piece.ts';

/** Circuits that leave the equipment in one conduit, each to its own box. */
export interface HomeRun {
  readonly ways: readonly ConduitWay[];
  /** In the order of `ways`. */
  readonly members: readonly Occupant[];
  readonly pieces: readonly Piece[];
  /** Of each piece. */
  readonly packings: readonly Packing[];
  /** Dollars in place, for choosing between groupings. */
  readonly cost: number;
  /** The same number for home runs that are alike in all but where they lie and what they are called. */
  readonly gauge: number;
}

const numberOf = numbering();

/** The number of a home run along some ways, by their own and by how far each goes with the next, ft. */
export function bundleGauge(ways: readonly ConduitWay[], shared: readonly number[]): number {
  const row = new Array<number>(ways.length + shared.length);
  for (let i = 0; i < ways.length; i++) row[i] = ways[i]!.gauge;
  for (let i = 0; i < shared.length; i++) row[ways.length + i] = shared[i]!;
  return numberOf(row);
}

/** Keeps a conduit that nothing fits out of every grouping that has another choice, dollars. */
const UNFIT = 1e9;

/** Conduit no longer than this between openings is a nipple: no bundling factor, 60% fill (Chapter 9 Note 4). */
export const isNipple = (tables: CodeTables, feet: number): boolean => feet <= tables.fill.nippleInches / 12;

/** What home runs alike have in common. */
interface Pattern extends Pick<HomeRun, 'members' | 'packings' | 'cost'> {
  readonly cuts: readonly ConduitCut[];
}

/**
 * Designs the conduits and branches of circuits that share one conduit from the equipment on. `ways` in travel order,
 * `shared` how far each goes with the next, ft. Null where a circuit cannot be sized so.
 */
export function homeRun(design: Design, ways: readonly ConduitWay[], shared: readonly number[]): HomeRun | null {
  const gauge = bundleGauge(ways, shared);
  const pattern = patternOf(design, gauge, ways, shared);
  if (pattern === null) return null;
  const { cuts, members, packings, cost } = pattern;
  return { ways, members, pieces: piecesOf(cuts, ways), packings, cost, gauge };
}

/** Dollars in place of the same; Infinity where a circuit cannot be sized so. */
export const homeRunCost = (design: Design, ways: readonly ConduitWay[], shared: readonly number[]): number =>
  designed(design, ways, shared)?.cost ?? Infinity;

/** Of home runs alike one is designed. */
const patternOf = keptByKey(
  (gauge: number, _ways: readonly ConduitWay[], _shared: readonly number[]) => gauge,
  (design: Design, _, ways: readonly ConduitWay[], shared: readonly number[]): Pattern | null =>
    designed(design, ways, shared),
  4096,
);

function designed(design: Design, ways: readonly ConduitWay[], shared: readonly number[]): Pattern | null {
  const { tables, rules, cost: prices } = design;
  const cuts = cutsOf({ ways, shared }, rules.joinTolerance);
  const members = sizedMembers(design, ways, cuts);
  if (members === null) return null;
  let cost = 0;
  for (const { dollars } of members) cost += dollars;
  const packings = new Array<Packing>(cuts.length);
  for (let i = 0; i < cuts.length; i++) {
    const { along, method, from, to, end, bends, underground, members: inside } = cuts[i]!;
    const own = packing(
      design,
      method,
      inside.map((member) => members[member]!),
      isNipple(tables, to - from),
      underground,
    );
    packings[i] = own;
    cost += (to - from) * own.foot + own.ends + bends * own.bend + (own.fits ? 0 : UNFIT);
    if (end.kind === 'junction') cost += pointAt(ways[along]!, to)[2] < 0 ? prices.handhole : prices.junction;
  }
  return { members, packings, cost, cuts };
}

function sizedMembers(
  design: Design,
  ways: readonly ConduitWay[],
  pieces: readonly ConduitCut[],
): readonly Occupant[] | null {
  const carrying = ways.map(({ charger }) => polesOf(charger.phases));
  const poles = [...carrying];
  for (const piece of pieces) {
    // In a tray each circuit is a cable of its own; a nipple is exempt (310.15(C)(1)(b)).
    if (piece.method === 'tray' || isNipple(design.tables, piece.to - piece.from)) continue;
    let inside = 0;
    for (const i of piece.members) inside += poles[i]!;
    for (const i of piece.members) if (inside > carrying[i]!) carrying[i] = inside;
  }
  const members = new Array<Occupant>(ways.length);
  for (let i = 0; i < ways.length; i++) {
    const member = memberOf(design, ways[i]!, carrying[i]!);
    if (member === null) return null;
    members[i] = member;
  }
  return members;
}
