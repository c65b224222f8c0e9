import { steelOf } from '../../../routing/network/support/steel-near.ts';
import type { Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { type Cut, type CutView, crossing, cutView, seenPast } from './cut.ts';
import { cutBlocks } from './cut-blocks.ts';
import { bundleShapes, bundlesOf, type ConduitInCut, racewaysPast, throughCut } from './cut-conduits.ts';
import { cutDrops, dropsSeen } from './cut-drops.ts';
import { groundSpans, trenchesAt } from './cut-ground.ts';
import type { Section, SectionHeight, SectionShape } from './shape.ts';

/** A member that a cut goes through is a dot so large, feet: the file gives it no size. */
const MEMBER = 0.18;

/**
 * What a cut shows, to scale: all that it goes through, and what is seen past it as far as one looks. Conduits of the plan
 * that it goes through stand once each, at their elevation, side by side on their trapezes; raceways of feeders likewise.
 * Feet, from the left end of the cut and from grade. Null where the ends of the cut are one place.
 */
export function sectionOf(site: Site, plan: UncountedPlan, cut: Cut): Section | null {
  const view = cutView(cut);
  if (!view) return null;
  const bundles = bundlesOf(throughCut(site, plan, view));
  const steel = steelOf(site.members);
  const past = racewaysPast(site, plan, view);
  const shapes = [
    ...members(site, view),
    ...cutBlocks(site, view),
    ...past,
    ...bundles.flatMap((bundle) => bundleShapes(bundle, steel, site.rules.hangReach)),
    ...cutDrops(site, plan, view),
  ].sort((a, b) => b.away - a.away || Number(a.isCut) - Number(b.isCut));
  const zs = shapes.flatMap(heightsOf);
  const trenches = trenchesAt(site, bundles, shapes);
  return {
    length: view.length,
    shapes,
    ground: groundSpans(site, view, shapes),
    heights: heights(site, view, shapes, bundles),
    trenches,
    low: Math.min(0, ...zs, ...trenches.map(({ bottom }) => bottom)),
    high: Math.max(0, ...zs),
  };
}

const heightsOf = (shape: SectionShape): readonly number[] =>
  shape.kind === 'round' ? [shape.at[1] - shape.radius, shape.at[1] + shape.radius] : shape.points.map(([, z]) => z);

function members(site: Site, view: CutView): readonly SectionShape[] {
  return site.members.flatMap(({ id, from, to }): SectionShape[] => {
    const past = seenPast(from, to, view);
    const met = crossing(from, to, view);
    const long = past && Math.hypot(past[1][0] - past[0][0], past[1][1] - past[0][1]) > 0.1;
    const away = Math.max(0, Math.min(view.away(from), view.away(to)));
    return [
      ...(long ? [{ kind: 'line', part: 'member', id, isCut: false, away, points: past } as const] : []),
      ...(met
        ? [
            {
              kind: 'round',
              part: 'member',
              id,
              isCut: true,
              away: 0,
              at: [met.across, met.z],
              radius: MEMBER,
              elevation: met.z,
            } as const,
          ]
        : []),
    ];
  });
}

/** The heights that are told: of the lowest and highest steel, each bundle, one drop at the cut, and a car. */
function heights(
  site: Site,
  view: CutView,
  shapes: readonly SectionShape[],
  bundles: readonly (readonly ConduitInCut[])[],
): readonly SectionHeight[] {
  const steel = shapes
    .flatMap((shape) => (shape.part === 'member' && shape.kind === 'round' ? [shape] : []))
    .sort((a, b) => a.elevation - b.elevation);
  const told: SectionHeight[] = [];
  const add = (across: number, elevation: number, says: string): void => {
    if (!told.some((one) => one.says === says && Math.abs(one.elevation - elevation) < 0.02))
      told.push({ across, elevation, says });
  };
  const [low, high] = [steel[0], steel.at(-1)];
  if (low) add(low.at[0], low.elevation, 'steel');
  if (high) add(high.at[0], high.elevation, 'steel');
  for (const bundle of bundles) {
    const first = bundle[0]!;
    const says = bundle.length === 1 ? sizeOf(first) : `${counted(bundle.length, 'conduit')}`;
    add(first.across, first.z, first.z < 0 ? `top of ${says}` : says);
  }
  for (const drop of dropsSeen(site, view).toReversed()) {
    add(view.across(drop.box), drop.box[2], 'box');
    if (drop.retractor) add(view.across(drop.retractor), drop.retractor[2], 'retractor');
    if (drop.restHeight !== undefined && (drop.mount ?? 'overhead') === 'overhead')
      add(view.across(drop.retractor ?? drop.box), drop.restHeight, 'connector at rest');
  }
  for (const shape of shapes)
    if (shape.isCut && shape.kind === 'outline' && (shape.part === 'vehicle' || shape.part === 'equipment')) {
      const [from, to, top] = [shape.points[0]![0], shape.points[1]![0], shape.points[2]![1]];
      add((from + to) / 2, top, shape.part === 'vehicle' ? 'vehicle' : shape.id);
    }
  for (const shape of shapes)
    if (shape.part === 'inlet zone' && shape.kind === 'outline')
      add(shape.points[0]![0], shape.points[0]![1], 'inlets from');
  return told.sort((a, b) => a.elevation - b.elevation);
}

const sizeOf = ({ id, method, tradeSize }: ConduitInCut): string =>
  tradeSize === null ? `raceway ${id}` : `${tradeSize}" ${method}`;
