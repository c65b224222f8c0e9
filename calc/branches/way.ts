import { kept } from '../../routing/kept/kept.ts';
import { numbering } from '../../routing/kept/numbered.ts';
import { bendsOf } from '../../routing/network/bends.ts';
import type { Run } from '../../routing/network/run.ts';
import { between, COINCIDENT, distance } from '../../routing/plane/space.ts';
import { METHODS, type Method, PLACES, type Place } from '../../routing/site/schema/vocabulary.ts';
import type { Charger, Point3, Pullpoint, Raceway } from '../../routing/site/site.ts';
import type { ConduitGround } from './ground.ts';
import type { ConduitOpening } from './home-runs/piece.ts';

/** A pull point on the way, by its distance from the equipment's entry, ft, and where it is drawn. */
export interface PullAt {
  readonly at: number;
  readonly id: string;
  readonly place: Point3;
}

/**
 * The run of one charger, measured off for conduit: every place on it is a distance from the entry of the equipment.
 * Legs of no length are gone. Lengths in feet.
 */
export interface ConduitWay {
  readonly charger: Charger;
  readonly run: Run;
  readonly length: number;
  readonly points: readonly Point3[];
  /** Distance of each point; `at[0]` is 0 and the last is `length`. */
  readonly at: readonly number[];
  /** Raceway of each leg; empty for a tap or a joint's gap. */
  readonly legs: readonly string[];
  /** Method of each leg; that of a tap is the method of the raceway it taps. */
  readonly methods: readonly Method[];
  readonly places: readonly Place[];
  /** Raceway that each leg is made like; undefined where there is none to be like. */
  readonly like: readonly (Raceway | undefined)[];
  readonly pulls: readonly PullAt[];
  /** Change of direction at each point, degrees; 0 at both ends and where the way goes straight on. */
  readonly turns: readonly number[];
  /** Distances at which the method changes. */
  readonly changes: readonly number[];
  readonly fedFrom: ConduitOpening;
  readonly endsAt: ConduitOpening;
  /** The same number for ways that are alike in all that conduits and conductors are chosen by, wherever they lie. */
  readonly gauge: number;
}

/** Places nearer than this, ft, are one; legs shorter are not there. */
export const NO_LENGTH = COINCIDENT;

const NO_PULLS: readonly Pullpoint[] = [];
const NO_PULLS_AT: readonly PullAt[] = [];
const NO_CHANGES: readonly number[] = [];

/** The way of a charger's run; null where there is no run. The same one as long as what it lies on stays. */
export function wayOf(charger: Charger, run: Run, ground: ConduitGround): ConduitWay | null {
  if (run.length === null || run.path.length === 0) return null;
  const raceways: Raceway[] = [];
  const pulls: (readonly Pullpoint[])[] = [];
  for (const id of run.raceways) {
    const raceway = ground.raceways.get(id);
    if (raceway === undefined) throw new RangeError(`run of ${run.charger} lies on ${id}, which is no raceway`);
    raceways.push(raceway);
    pulls.push(ground.pulls.get(id) ?? NO_PULLS);
  }
  return measured(run, charger, raceways, pulls, ground.tolerance);
}

const measured = kept(
  (
    run: Run,
    charger: Charger,
    raceways: readonly Raceway[],
    pulls: readonly (readonly Pullpoint[])[],
    tolerance: number,
  ): ConduitWay => {
    const { length, points, at, legs } = measuredOff(run);
    const along = racewaysOfLegs(legs, raceways);
    const methods = along.map((raceway) => raceway?.method ?? 'EMT');
    const places = along.map((raceway) => raceway?.place ?? 'overhead');
    const pullsAt = pulls.every(({ length: count }) => count === 0)
      ? NO_PULLS_AT
      : pullsOn({ points, at, legs }, raceways, pulls, tolerance);
    const turns = turnsOf(points);
    return {
      charger,
      run,
      length,
      points,
      at,
      legs,
      methods,
      places,
      like: along,
      pulls: pullsAt,
      turns,
      changes: methods.every((method) => method === methods[0])
        ? NO_CHANGES
        : at.filter((_, i) => i > 0 && i < methods.length && methods[i] !== methods[i - 1]),
      fedFrom: { kind: 'equipment', id: charger.from },
      endsAt: { kind: 'drop', id: charger.drop },
      gauge: gaugeOf({ charger, run, points, at, methods, places, like: along, pulls: pullsAt, turns }),
    };
  },
);

/** A run by the legs that have a length. */
function measuredOff({ path, legs }: Run): Pick<ConduitWay, 'length' | 'points' | 'at' | 'legs'> {
  const lengths = new Array<number>(path.length - 1);
  let count = 0;
  for (let i = 0; i + 1 < path.length; i++) {
    lengths[i] = distance(path[i]!, path[i + 1]!);
    if (lengths[i]! > NO_LENGTH) count++;
  }
  const at = new Array<number>(count + 1);
  const points = new Array<Point3>(count + 1);
  const own = new Array<string>(count);
  let [length, next] = [0, 0];
  at[0] = 0;
  points[0] = path[0]!;
  for (let i = 0; i < lengths.length; i++) {
    if (lengths[i]! <= NO_LENGTH) continue;
    length += lengths[i]!;
    own[next++] = legs[i] ?? '';
    at[next] = length;
    points[next] = path[i + 1]!;
  }
  return { length, points: count === lengths.length ? path : points, at, legs: own };
}

type Measures = Pick<
  ConduitWay,
  'charger' | 'run' | 'points' | 'at' | 'methods' | 'places' | 'like' | 'pulls' | 'turns'
>;

const numberOf = numbering();

/**
 * Load, lengths, turns and what each leg is made like. Places count by their elevation alone, for what lies below grade is
 * built otherwise; ids and what is around the way do not.
 */
function gaugeOf({ charger, run, points, at, methods, places, like, pulls, turns }: Measures): number {
  const row = new Array<number>(7 + 3 * at.length + 4 * methods.length + pulls.length);
  row[0] = at.length;
  row[1] = charger.amps;
  row[2] = charger.volts;
  row[3] = charger.phases;
  row[4] = charger.pilot === true ? 1 : 0;
  row[5] = run.conductorLength ?? -1;
  row[6] = charger.branchDrop ?? -1;
  let next = 7;
  for (let i = 0; i < at.length; i++) {
    row[next++] = at[i]!;
    row[next++] = points[i]![2];
    row[next++] = turns[i]!;
  }
  for (let leg = 0; leg < methods.length; leg++) {
    const raceway = like[leg];
    row[next++] = METHODS.indexOf(methods[leg]!);
    row[next++] = raceway === undefined ? -1 : PLACES.indexOf(places[leg]!);
    row[next++] = raceway?.ambientC ?? -1e9;
    row[next++] = raceway?.aboveRoof ?? -1;
  }
  for (const pull of pulls) row[next++] = pull.at;
  return numberOf(row);
}

/** A tap, or a gap at a joint, is made like the raceway before it; the tap at the equipment like the first raceway. */
function racewaysOfLegs(legs: readonly string[], raceways: readonly Raceway[]): (Raceway | undefined)[] {
  let last = raceways[0];
  return legs.map((leg) => {
    if (leg !== last?.id) last = raceways.find(({ id }) => id === leg) ?? last;
    return last;
  });
}

/** Pull points on the legs, each once, where it is nearest; one at an end of the way opens nothing. */
function pullsOn(
  { points, at, legs }: Pick<ConduitWay, 'points' | 'at' | 'legs'>,
  raceways: readonly Raceway[],
  pulls: readonly (readonly Pullpoint[])[],
  tolerance: number,
): readonly PullAt[] {
  const pullsOf = new Map(raceways.map(({ id }, i) => [id, pulls[i]!]));
  const nearest = new Map<string, PullAt & { readonly off: number }>();
  legs.forEach((leg, i) => {
    for (const pull of pullsOf.get(leg) ?? NO_PULLS) {
      const start = points[i]!;
      const end = points[i + 1]!;
      const length = at[i + 1]! - at[i]!;
      const along =
        ((pull.at[0] - start[0]) * (end[0] - start[0]) +
          (pull.at[1] - start[1]) * (end[1] - start[1]) +
          (pull.at[2] - start[2]) * (end[2] - start[2])) /
        length;
      const s = Math.min(length, Math.max(0, along));
      const off = distance(pull.at, between(start, end, s / length));
      const known = nearest.get(pull.id);
      if (off > tolerance || (known !== undefined && known.off <= off)) continue;
      nearest.set(pull.id, { id: pull.id, at: at[i]! + s, place: pull.at, off });
    }
  });
  const length = at.at(-1) ?? 0;
  return [...nearest.values()]
    .filter((pull) => pull.at > tolerance && pull.at < length - tolerance)
    .map(({ id, at, place }) => ({ id, at, place }))
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

function turnsOf(points: readonly Point3[]): readonly number[] {
  const turns = points.map(() => 0);
  for (const { at, degrees } of bendsOf(points)) turns[at] = degrees;
  return turns;
}

/** Index of the leg that a distance lies on; at a corner, of the leg that leaves it. */
export function legAt(way: Pick<ConduitWay, 'legs' | 'at'>, distance: number): number {
  let leg = 0;
  while (leg + 1 < way.legs.length && way.at[leg + 1]! <= distance + NO_LENGTH) leg++;
  return leg;
}

/** The point at a distance along the way. */
export function pointAt(way: ConduitWay, distance: number): Point3 {
  if (way.legs.length === 0) return way.points[0]!;
  const leg = legAt(way, distance);
  const from = way.at[leg]!;
  const to = way.at[leg + 1]!;
  if (distance >= to - NO_LENGTH) return way.points[leg + 1]!;
  if (distance <= from + NO_LENGTH) return way.points[leg]!;
  return between(way.points[leg]!, way.points[leg + 1]!, (distance - from) / (to - from));
}

/** The path between two distances, corners included. */
export function pathBetween(way: ConduitWay, from: number, to: number): readonly Point3[] {
  const corners = way.points.filter((_, i) => way.at[i]! > from + NO_LENGTH && way.at[i]! < to - NO_LENGTH);
  return [pointAt(way, from), ...corners, pointAt(way, to)];
}
