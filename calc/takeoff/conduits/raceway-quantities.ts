import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../../routing/site/site.ts';
import { expansion, fittingLength } from '../../branches/expansion.ts';
import type { Piece } from '../../branches/home-runs/piece.ts';
import type { NamedHomeRun } from '../../branches/named.ts';
import { aboveGround, straightsOf } from '../../branches/pulls/straights.ts';
import { type ConduitWay, legAt, NO_LENGTH, pointAt } from '../../branches/way.ts';
import { byWords, type TakeoffKind, takeoffKind } from '../../prices/kind.ts';
import { racewaySpec } from '../../prices/spec.ts';
import { hungFeet, tapFeet } from '../../steel/lays.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { supportSpacing } from '../../tables/raceway-of.ts';
import { aloftAt, aloftOn, ON_GROUND, plusAloft, shareAloft, type WorkHeight } from '../high.ts';
import type { Add } from '../tally.ts';
import { isBent } from './bends.ts';
import { addBushings } from './bushings.ts';
import { addFittings, fittingKinds, type Straight } from './fittings.ts';
import { CORE_DRILL } from './ground-quantities.ts';

/** Conduit this short between boxes needs no strap of its own, ft. Common practice. */
const UNSTRAPPED = 2;

/** Conduits of a home run with their fittings and supports. */
export function addRaceways(
  tables: CodeTables,
  { temperatureRangeC, bentTradeSize, workHeight }: Rules,
  { homeRun, conduits }: NamedHomeRun,
  add: Add,
): void {
  homeRun.pieces.forEach((piece, i) => {
    const conduit = conduits[i]!.id;
    const { method } = piece;
    const { tradeSize } = homeRun.packings[i]!;
    const kinds = racewayKinds(method, tradeSize ?? '');
    const way = homeRun.ways[piece.along]!;
    const aloft = aloftOn(way, piece.from, piece.to, workHeight);
    const straights = straightsWith(piece, way, workHeight);
    const cut = method === 'LFMC' ? undefined : addFittings(method, tradeSize, straights, conduit, add, bentTradeSize);
    add(kinds.raceway, conduit, piece.to - piece.from, aloft, cut);
    const joint = piece.end.kind === 'coupling' ? straights.at(-1)! : null;
    if (joint !== null && (joint.turn === 0 || isBent(method, tradeSize, bentTradeSize)))
      add(fittingKinds(method, tradeSize ?? '').coupling, conduit, 1);
    const ends = [
      [piece.start, piece.from],
      [piece.end, piece.to],
    ] as const;
    const boxed = ends.filter(([{ kind }]) => kind !== 'coupling');
    const endsAloft = boxed.reduce(
      (sum, [, at]) => plusAloft(sum, aloftAt(pointAt(way, at)[2], workHeight)),
      ON_GROUND,
    );
    if (method !== 'tray') {
      add(kinds.connector, conduit, boxed.length, endsAloft);
      const { conductors } = homeRun.packings[i]!;
      addBushings(tables, method, tradeSize, conductors, conduit, boxed.length, endsAloft, add);
    }
    const exposed = aboveGround(way, piece.from, piece.to);
    const along = (count: number) => shareAloft(aloft, exposed, count);
    // What hangs along raceways is counted with its hangers and trapezes.
    const hung = hungFeet(way, piece.from, piece.to);
    const straps =
      hung === 0 ? supports(tables, method, tradeSize, exposed) : besides(tables, method, tradeSize, exposed - hung);
    add(kinds.support, conduit, straps, along(straps));
    const taps = besides(tables, method, tradeSize, tapFeet(way, piece.from, piece.to));
    add(kinds.hanger, conduit, taps, along(taps));
    if (isPlastic(method)) {
      const above = straightsOf(piece, way).map(([from, to]) => aboveGround(way, from, to));
      const fittings = expansionFittingsFor(tables, above, temperatureRangeC);
      add(kinds.expansion, conduit, fittings, along(fittings));
    }
    add(CORE_DRILL, conduit, drills(way, piece.from, piece.to));
  });
}

interface RacewayKinds {
  readonly raceway: TakeoffKind;
  readonly connector: TakeoffKind;
  readonly support: TakeoffKind;
  readonly hanger: TakeoffKind;
  readonly expansion: TakeoffKind;
}

/** Straps on what leads on from where a conduit hangs, whose supports there do for the code distance too. */
function besides(tables: CodeTables, method: Method, tradeSize: string | null, feet: number): number {
  return feet <= supportSpacing(tables, method, tradeSize).firstFt ? 0 : supports(tables, method, tradeSize, feet);
}

export const racewayKinds = byWords((method, tradeSize): RacewayKinds => {
  const spec = racewaySpec(method as Method, tradeSize === '' ? null : tradeSize);
  const each = (item: string, basis: string): TakeoffKind => takeoffKind({ item, spec, unit: 'each', basis });
  const wet = method === 'EMT' ? '; raintight outdoors' : '';
  return {
    raceway: takeoffKind({
      item: 'raceway',
      spec,
      unit: 'ft',
      basis: 'length of the conduits, taken square at corners',
    }),
    connector: each('connector', `one at each end of a conduit in a box or equipment${wet}`),
    support: each(
      method === 'tray' ? 'tray support' : 'strap',
      'code spacing along each conduit above ground, the first within the code distance of each end; overhead one at each hanger and trapeze',
    ),
    hanger: each('hanger', 'one where a conduit overhead hangs alone, at the code spacing and where the steel is'),
    expansion: each(
      'expansion fitting',
      'for each straight above ground that changes 1/4 in or more over the temperature range, one for every 4 in',
    ),
  };
});

/** How often a conduit in the ground comes through paving between two distances of its way. */
function drills(way: ConduitWay, from: number, to: number): number {
  let count = 0;
  way.places.forEach((place, leg) => {
    const [start, end] = [way.at[leg]!, way.at[leg + 1]!];
    if (place !== 'underground' || start >= to - NO_LENGTH || end <= from + NO_LENGTH) return;
    const [a, b] = [Math.max(from, start), Math.min(to, end)].map((at) => pointAt(way, at)[2]);
    if (a! < 0 !== b! < 0 && (way.like[leg]?.surface ?? 'asphalt') !== 'soil') count++;
  });
  return count;
}

/** Straights of a conduit with their corners; where it is only coupled on, the corner there is its own. */
function straightsWith(piece: Piece, way: ConduitWay, heights: WorkHeight): readonly Straight[] {
  return straightsOf(piece, way).map(([from, to, inside]): Straight => {
    const isCoupled = piece.end.kind === 'coupling' && to === piece.to;
    return {
      feet: to - from,
      aloft: aloftOn(way, from, to, heights),
      turn: isCoupled ? way.turns[legAt(way, to)]! : inside,
      turnAloft: aloftAt(pointAt(way, to)[2], heights),
    };
  });
}

export const isPlastic = (method: Method): boolean => method === 'PVC40' || method === 'PVC80';

/** Inches that one expansion fitting takes up. Common practice, no source. */
const TRAVEL = 4;

/** Expansion fittings of a plastic conduit whose straights between ends and corners are so many feet above ground (352.44). */
export function expansionFittingsFor(
  tables: CodeTables,
  exposed: readonly number[],
  temperatureRangeC: number,
): number {
  const least = fittingLength(tables, 'PVC', temperatureRangeC);
  let fittings = 0;
  for (const length of exposed) {
    if (length < least) continue;
    fittings += Math.ceil(expansion(tables, { material: 'PVC', length, temperatureRangeC }).change / TRAVEL - FULL);
  }
  return fittings;
}

/** A rounding of sums must not start another stick. */
const FULL = 1e-9;

/** Straps on a straight of so many feet: one within the code distance of each end, the rest at the code spacing. */
export function supports(tables: CodeTables, method: Method, tradeSize: string | null, feet: number): number {
  if (feet <= UNSTRAPPED) return 0;
  const { spacingFt, firstFt } = supportSpacing(tables, method, tradeSize);
  return Math.max(0, Math.ceil((feet - 2 * firstFt) / spacingFt - FULL)) + 1;
}
