import { levelOver } from '../../../routing/network/support/held-parts.ts';
import { nearestMember, type Steel } from '../../../routing/network/support/steel-near.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import { finderBy } from '../../../routing/plane/box-index.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { outsideOf, tiersOf, widthFor } from '../../steel/trapeze.ts';
import { type CutView, crossing, seenPast } from './cut.ts';
import type { SectionLine, SectionRound, SectionShape } from './shape.ts';

/** One raceway where it goes through the cut. */
export interface ConduitInCut {
  readonly id: string;
  readonly method: Method;
  readonly tradeSize: string | null;
  readonly across: number;
  readonly z: number;
  /** Share of the way of the cut. */
  readonly at: Point3;
}

/** What crosses at one place, feet apart at most. */
const TOGETHER = 0.3;
/** Clear between conduits side by side, feet. */
const BETWEEN = 1 / 12;
/** From one trapeze to the one above it, feet. Common practice, no source. */
const TIER = 0.75;

const pathBox = ({ path }: { readonly path: readonly Point3[] }) => boxOf(path);
const conduitsIn = finderBy<UncountedPlan['conduits'][number]>(pathBox);
const racewaysIn = finderBy<Site['raceways'][number]>(pathBox);

/** Conduits of the plan, and raceways that hold none of it (those of feeders), where they go through a cut. */
export function throughCut(site: Site, plan: UncountedPlan, view: CutView): readonly ConduitInCut[] {
  const found: ConduitInCut[] = [];
  const [ux, uy] = [view.right[0] - view.left[0], view.right[1] - view.left[1]].map((d) => d / view.length) as [
    number,
    number,
  ];
  const look = (
    path: readonly (readonly [number, number, number])[],
    what: Omit<ConduitInCut, 'across' | 'z' | 'at'>,
  ): void => {
    for (let i = 1; i < path.length; i++) {
      const met = crossing(path[i - 1]!, path[i]!, view);
      if (!met) continue;
      const at: Point3 = [view.left[0] + met.across * ux, view.left[1] + met.across * uy, met.z];
      found.push({ ...what, ...met, at });
    }
  };
  const near = widened(boxOf([view.left, view.right]), TOGETHER);
  for (const { id, method, tradeSize, path } of conduitsIn(plan.conduits, near)) look(path, { id, method, tradeSize });
  const own = found.length;
  for (const { id, method, path } of racewaysIn(site.raceways, near)) look(path, { id, method, tradeSize: null });
  const held = found.slice(0, own);
  return [
    ...held,
    ...found
      .slice(own)
      .filter(({ across, z }) => !held.some((one) => Math.hypot(one.across - across, one.z - z) < TOGETHER)),
  ];
}

/** A raceway without a size of the plan is drawn so wide, inches. */
const UNKNOWN = 2;
const wide = (one: ConduitInCut): number =>
  (one.tradeSize === null && one.method !== 'tray' ? UNKNOWN : outsideOf(one)) / 12;

/** Those that cross at one place, from left to right; overhead and under the ground apart. */
export function bundlesOf(through: readonly ConduitInCut[]): readonly (readonly ConduitInCut[])[] {
  const bundles: ConduitInCut[][] = [];
  for (const one of [...through].sort((a, b) => a.across - b.across)) {
    const own = bundles.find(
      ([first]) =>
        Math.abs(first!.across - one.across) < TOGETHER &&
        Math.abs(first!.z - one.z) < TOGETHER &&
        first!.z < 0 === one.z < 0,
    );
    if (own) own.push(one);
    else bundles.push([one]);
  }
  return bundles;
}

/**
 * A bundle as it hangs: side by side on its trapezes, each with its rods to the member that is nearest above; one alone by
 * one rod. In the ground side by side, their tops at the drawn line.
 */
export function bundleShapes(
  bundle: readonly ConduitInCut[],
  steel: Steel,
  hangReach: number,
): readonly SectionShape[] {
  const [first] = bundle;
  const middle = bundle.reduce((sum, { across }) => sum + across, 0) / bundle.length;
  const rounds: SectionRound[] = [];
  const lay = (row: readonly ConduitInCut[], drop: number): readonly [number, number, number] => {
    const width = row.reduce((sum, one) => sum + wide(one), 0) + (row.length - 1) * BETWEEN;
    let at = middle - width / 2;
    let low = Number.POSITIVE_INFINITY;
    for (const one of row) {
      const radius = wide(one) / 2;
      const z = one.z < 0 ? one.z - radius : one.z - drop;
      low = Math.min(low, z - radius);
      const part = one.tradeSize === null && one.method !== 'tray' ? 'raceway' : 'conduit';
      rounds.push({
        kind: 'round',
        part,
        id: one.id,
        isCut: true,
        away: 0,
        at: [at + radius, z],
        radius,
        elevation: one.z,
      });
      at += 2 * radius + BETWEEN;
    }
    return [middle - width / 2, middle + width / 2, low];
  };
  if (first!.z < 0) {
    lay(bundle, 0);
    return rounds;
  }
  const near = nearestMember(steel, first!.at);
  const holds = near !== null && near.feet <= hangReach ? levelOver(near.member, first!.at) : null;
  const hangers: SectionLine[] = [];
  const line = (part: 'trapeze' | 'rod', points: SectionLine['points']): void => {
    hangers.push({ kind: 'line', part, id: near?.member.id ?? first!.id, isCut: false, away: 0, points });
  };
  tiersOf(bundle).forEach((row, tier) => {
    const [, , low] = lay(row, tier * TIER);
    if (bundle.length === 1) {
      const z = rounds[0]!.at[1] + rounds[0]!.radius;
      if (holds !== null && holds > z)
        line('rod', [
          [middle, z],
          [middle, holds],
        ]);
      return;
    }
    const half = widthFor(row) / 24;
    line('trapeze', [
      [middle - half, low],
      [middle + half, low],
    ]);
    if (holds !== null && holds > low)
      for (const side of [-half, half])
        line('rod', [
          [middle + side * 0.95, low],
          [middle + side * 0.95, holds],
        ]);
  });
  return [...hangers, ...rounds];
}

/** Raceways and taps that are seen past the cut, each once. */
export function racewaysPast(site: Site, plan: UncountedPlan, view: CutView): readonly SectionShape[] {
  const shapes = new Map<string, SectionShape>();
  const look = (id: string, a: Point3, b: Point3): void => {
    const seen = seenPast(a, b, view);
    if (!seen || Math.hypot(seen[1][0] - seen[0][0], seen[1][1] - seen[0][1]) < 0.1) return;
    const away = Math.max(0, Math.min(view.away(a), view.away(b)));
    shapes.set(JSON.stringify(seen), { kind: 'line', part: 'raceway', id, isCut: false, away, points: seen });
  };
  for (const { id, path } of site.raceways) for (let i = 1; i < path.length; i++) look(id, path[i - 1]!, path[i]!);
  for (const { charger, path, legs } of plan.runs)
    legs.forEach((leg, i) => {
      if (leg === null && path[i + 1]) look(charger, path[i]!, path[i + 1]!);
    });
  return [...shapes.values()];
}
