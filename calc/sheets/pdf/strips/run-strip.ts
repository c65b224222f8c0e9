import { bendsOf } from '../../../../routing/network/bends.ts';
import type { Run } from '../../../../routing/network/run.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import type { Point3, Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Conduit } from '../../../plan-file/branches.ts';
import { circuitFor } from '../schedules/circuit-words.ts';

/** A place of a run unrolled: plan distance from the entry, and elevation. Feet. */
export interface StripPoint {
  readonly along: number;
  readonly z: number;
}

/** A run unrolled: what is drawn of it on a strip. Feet. */
export interface RunStrip {
  readonly charger: string;
  /** Its path; leg i goes from point i to point i + 1. */
  readonly points: readonly StripPoint[];
  readonly legs: readonly ('tap' | 'overhead' | 'surface' | 'underground')[];
  readonly bends: readonly { readonly at: StripPoint; readonly degrees: number }[];
  /** Where it can be opened on the way: pull points and junction boxes, handholes where these lie in the ground. */
  readonly openings: readonly {
    readonly id: string;
    readonly kind: 'pull-point' | 'junction' | 'box' | 'handhole';
    readonly at: StripPoint;
  }[];
  /** Its conduits, each with its part of the path. */
  readonly conduits: readonly { readonly conduit: Conduit; readonly points: readonly StripPoint[] }[];
  /** Where its cord hangs from, where that is not the box. */
  readonly retractor: StripPoint | null;
}

/** A run of a plan unrolled, or null where there is none. */
export function runStrip(site: Site, plan: Plan, run: Run): RunStrip | null {
  if (run.length === null) return null;
  const { path, legs } = run;
  const points: StripPoint[] = [];
  const developed: number[] = [];
  path.forEach((point, i) => {
    const before = path[i - 1];
    const along = before === undefined ? 0 : points[i - 1]!.along + planDistance(before, point);
    points.push({ along, z: point[2] });
    developed.push(
      before === undefined ? 0 : developed[i - 1]! + Math.hypot(planDistance(before, point), point[2] - before[2]),
    );
  });
  const places = byId(site.raceways);
  const conduitsById = byId(plan.conduits);
  const circuit = circuitFor(plan.circuits, run.charger);
  const conduits = (circuit?.conduits ?? []).flatMap((id) => conduitsById.get(id) ?? []);
  const boxes = byId(plan.boxes);
  const openings: RunStrip['openings'][number][] = [];
  const laid: RunStrip['conduits'][number][] = [];
  let from = 0;
  conduits.forEach((conduit, i) => {
    const to = from + conduit.length;
    laid.push({ conduit, points: between(points, developed, from, to) });
    from = to;
    if (i === conduits.length - 1) return;
    const box = boxes.get(conduit.to);
    // No box: conduits that are only coupled in the ground.
    if (box === undefined) return;
    const { kind, under } = box;
    openings.push({
      id: conduit.to,
      kind: under !== null ? 'handhole' : kind === 'pullpoint' ? 'pull-point' : kind === 'drop' ? 'box' : 'junction',
      at: placeAt(points, developed, to),
    });
  });
  return {
    charger: run.charger,
    points,
    legs: legs.map((id) => (id === null ? 'tap' : (places.get(id)?.place ?? 'overhead'))),
    bends: bendsOf(path).map(({ at, degrees }) => ({ at: points[at]!, degrees })),
    openings,
    conduits: laid,
    retractor: retractorOf(site, run, points.at(-1)!),
  };
}

const planDistance = (a: Point3, b: Point3): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

function retractorOf(site: Site, run: Run, end: StripPoint): StripPoint | null {
  const drop = byId(site.drops).get(run.drop);
  if (drop?.retractor === undefined) return null;
  return { along: end.along + planDistance(drop.box, drop.retractor), z: drop.retractor[2] };
}

/** The place at a developed length along the points. */
function placeAt(points: readonly StripPoint[], developed: readonly number[], length: number): StripPoint {
  let i = 1;
  while (i < developed.length - 1 && developed[i]! < length) i++;
  const [a, b] = [points[i - 1]!, points[i]!];
  const [from, to] = [developed[i - 1]!, developed[i]!];
  const share = to > from ? Math.min(1, Math.max(0, (length - from) / (to - from))) : 1;
  return { along: a.along + share * (b.along - a.along), z: a.z + share * (b.z - a.z) };
}

function between(
  points: readonly StripPoint[],
  developed: readonly number[],
  from: number,
  to: number,
): readonly StripPoint[] {
  const inner = points.filter((_, i) => developed[i]! > from + 1e-6 && developed[i]! < to - 1e-6);
  return [placeAt(points, developed, from), ...inner, placeAt(points, developed, to)];
}
