import { hypot3 } from '../../../routing/plane/hypot.ts';
import type { Method, Surface } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { byWords } from '../../prices/kind.ts';
import { racewaySpec } from '../../prices/spec.ts';
import type { HomeRun } from '../home-runs/home-run.ts';
import { PILOT_SIZE } from '../home-runs/packing.ts';
import type { ConduitOpening } from '../home-runs/piece.ts';
import { legAt, pathBetween, pointAt } from '../way.ts';
import type { Counted } from './box-volume.ts';

/** What one home run brings into a box: conductors, and the raceways by how they are pulled. */
export interface OpeningLoad {
  readonly kind: 'drop' | 'junction' | 'pullpoint';
  /** Drop or pull point; of a junction its name in the plan. */
  readonly id: string;
  readonly at: Point3;
  readonly conduits: readonly string[];
  /** Method and trade size of each of them. */
  readonly raceways: readonly string[];
  /** Conductors that pass through, once; those that end here, and the cord's that take over from them. */
  readonly conductors: readonly Counted[];
  readonly groundings: readonly Counted[];
  /** Trade sizes of raceways that go straight on, and of each that turns, comes back or ends. */
  readonly straight: readonly string[];
  readonly turning: readonly string[];
  /** What lies over an opening in the ground; null for one above grade, and for a drop. */
  readonly under: Surface | null;
}

/** One string for raceways alike. */
const racewayOf = byWords((method, tradeSize) => racewaySpec(method as Method, tradeSize === '' ? null : tradeSize));

/** Turns of no more than this in a box are straight pulls, by the cosine: 10 degrees. */
const STRAIGHT = Math.cos((10 * Math.PI) / 180);

/**
 * Loads of the boxes of one home run. `name` gives the plan's name of a junction, `conduits` those of the pieces. The
 * conductors of a cord are taken as large as those of its branch.
 */
export function openingLoads(
  homeRun: HomeRun,
  conduits: readonly string[],
  name: (opening: ConduitOpening) => string,
): readonly OpeningLoad[] {
  const around = new Map<ConduitOpening, { into: number[]; outOf: number[] }>();
  const endsAt = (opening: ConduitOpening) => {
    let ends = around.get(opening);
    if (ends === undefined) {
      ends = { into: [], outOf: [] };
      around.set(opening, ends);
    }
    return ends;
  };
  homeRun.pieces.forEach(({ start, end }, i) => {
    if (start.kind !== 'equipment') endsAt(start).outOf.push(i);
    endsAt(end).into.push(i);
  });
  for (const opening of around.keys()) if (opening.kind === 'coupling') around.delete(opening);
  return [...around].map(([opening, { into, outOf }]) => {
    const pieces = [...into, ...outOf];
    const first = homeRun.pieces[into[0] ?? outOf[0]!]!;
    const place = into.length > 0 ? first.to : first.from;
    const way = homeRun.ways[first.along]!;
    const at = opening.place ?? pointAt(way, place);
    const isBuried = opening.kind !== 'drop' && at[2] < 0;
    return {
      kind: opening.kind as OpeningLoad['kind'],
      id: name(opening),
      at,
      under: isBuried ? (way.like[legAt(way, place)]?.surface ?? 'asphalt') : null,
      conduits: pieces.map((i) => conduits[i]!),
      raceways: pieces.map((i) => racewayOf(homeRun.pieces[i]!.method, homeRun.packings[i]!.tradeSize ?? '')),
      ...conductorsAt(homeRun, pieces, place),
      ...pullsAt(homeRun, into, outOf),
    };
  });
}

function conductorsAt(
  { ways, members, pieces, packings }: HomeRun,
  here: readonly number[],
  at: number,
): Pick<OpeningLoad, 'conductors' | 'groundings'> {
  const conductors: Counted[] = [];
  const groundings: Counted[] = [];
  const present = new Set(here.flatMap((i) => pieces[i]!.members));
  for (const i of present) {
    const { choice, poles, pilot } = members[i]!;
    const { conductor, grounding } = choice;
    const ends = Math.abs(ways[i]!.length - at) < 1e-6;
    const times = ends ? 2 : 1;
    conductors.push({ size: conductor.size, count: times * poles });
    if (pilot) conductors.push({ size: PILOT_SIZE, count: times });
    if (ends) groundings.push({ size: grounding.size, count: 1 });
  }
  for (const i of here) {
    const grounding = packings[i]!.conductors.find(({ use }) => use === 'grounding')!;
    groundings.push({ size: grounding.size, count: 1 });
  }
  return { conductors, groundings };
}

function pullsAt(
  homeRun: HomeRun,
  into: readonly number[],
  outOf: readonly number[],
): Pick<OpeningLoad, 'straight' | 'turning'> {
  const straight: string[] = [];
  const turning: string[] = [];
  const sizeOf = (i: number): readonly string[] => {
    const { tradeSize } = homeRun.packings[i]!;
    return tradeSize === null ? [] : [tradeSize];
  };
  const arriving = into[0] === undefined ? null : direction(homeRun, into[0], 'end');
  let onlyStraight = outOf.length > 0;
  for (const i of outOf) {
    const leaving = direction(homeRun, i, 'start');
    const goesOn = arriving !== null && dot(arriving, leaving) >= STRAIGHT;
    (goesOn ? straight : turning).push(...sizeOf(i));
    if (!goesOn) onlyStraight = false;
  }
  for (const i of into) (onlyStraight ? straight : turning).push(...sizeOf(i));
  return { straight, turning };
}

const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Direction of travel at an end of a piece, of length 1. */
function direction({ ways, pieces }: HomeRun, i: number, end: 'start' | 'end'): Point3 {
  const { along, from, to } = pieces[i]!;
  const path = pathBetween(ways[along]!, from, to);
  const [a, b] = end === 'start' ? [path[0]!, path[1]!] : [path.at(-2)!, path.at(-1)!];
  const length = hypot3(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length];
}
