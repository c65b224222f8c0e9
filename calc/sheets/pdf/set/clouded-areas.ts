import { byId } from '../../../../routing/site/look-up.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import type { Revision } from '../../../plan/compared/revision.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Conduit } from '../../../plan-file/branches.ts';
import { changedAreas, linesIn } from '../../drawing/changed-areas.ts';
import { type ConduitStretch, conduitStretches } from '../../drawing/conduit-stretches.ts';
import type { CloudedArea } from '../kit/draft.ts';
import { feedersInPlan } from '../plans/feeders-on-plan.ts';
import { circuitTags, conduitSize } from '../schedules/circuit-words.ts';

/** Feet between an element and its cloud: symbols are drawn larger than what they stand for. */
const MARGIN = 2;

interface Version {
  readonly site: Site;
  readonly plan: Plan;
}

/**
 * Where the plans of a revised set are clouded, both versions lying along the gridlines of the later: round what was added,
 * moved or changed, round the place of what is gone, and where the words beside a drop, a conduit or a feeder are others.
 */
export const cloudedAreas = (before: Version, after: Version, changes: Revision): readonly CloudedArea[] => {
  const [earlier, later] = [before.site, after.site];
  const spots = [
    ...otherCircuits(earlier, later),
    ...otherConduits(before.plan, after.plan),
    ...otherFeeders(earlier, later),
  ];
  return changedAreas(earlier, later, changes.elements, MARGIN, spots).map((area) => ({
    ...area,
    lines: linesIn(area, earlier, later, changes.elements),
  }));
};

/** Drops whose circuits have other spaces than they had, or are others. */
function otherCircuits(before: Site, after: Site): readonly Point2[] {
  const [was, is] = [tagsByDrop(before), tagsByDrop(after)];
  return after.drops.flatMap(({ id, box: [x, y] }): readonly Point2[] => (was.get(id) === is.get(id) ? [] : [[x, y]]));
}

function tagsByDrop(site: Site): ReadonlyMap<string, string> {
  const tags = circuitTags(site);
  const of = new Map<string, string>();
  for (const { id, drop } of site.chargers) of.set(drop, `${of.get(drop) ?? ''} ${tags.get(id)}`);
  return of;
}

/** The middle of a straight of each conduit that is named or sized otherwise, and of each that is gone. */
function otherConduits(before: Plan, after: Plan): readonly Point2[] {
  const [was, is] = [byId(before.conduits), byId(after.conduits)];
  return [
    ...straightsOf(after, ({ id, ...one }) => {
      const other = was.get(id);
      return other === undefined || conduitSize(other) !== conduitSize(one);
    }),
    ...straightsOf(before, ({ id }) => !is.has(id)),
  ];
}

/** The middle of the straight on which each such conduit lies with the fewest others. */
function straightsOf({ conduits }: Plan, wanted: (conduit: Conduit) => boolean): readonly Point2[] {
  const ids = new Set(conduits.filter(wanted).map(({ id }) => id));
  if (ids.size === 0) return [];
  const idsOf = (stretch: ConduitStretch): readonly string[] => stretch.conduits.flatMap((alike) => alike.ids);
  const lengthOf = ({ from, to }: ConduitStretch): number => Math.hypot(to[0] - from[0], to[1] - from[1]);
  const found: Point2[] = [];
  const lone = [...conduitStretches(conduits, 'conduit')].sort(
    (a, b) => idsOf(a).length - idsOf(b).length || lengthOf(b) - lengthOf(a),
  );
  for (const stretch of lone) {
    const mine = idsOf(stretch).filter((id) => ids.delete(id));
    if (mine.length > 0) found.push([(stretch.from[0] + stretch.to[0]) / 2, (stretch.from[1] + stretch.to[1]) / 2]);
  }
  return found;
}

/** The middle of the longest straight of each feeder that changed, where its name stands. */
function otherFeeders(before: Site, after: Site): readonly Point2[] {
  const was = byId(before.feeders);
  const stay = byId(after.feeders);
  const middles = (site: Site, wanted: (id: string) => boolean): readonly Point2[] =>
    feedersInPlan(site).flatMap(({ feeder, points }): readonly Point2[] => {
      if (!wanted(feeder.id)) return [];
      const legs = points.slice(1).map((to, i) => [points[i]!, to] as const);
      const reach = ([[ax, ay], [bx, by]]: readonly [Point2, Point2]): number => Math.hypot(bx - ax, by - ay);
      const [longest] = legs.sort((a, b) => reach(b) - reach(a));
      return longest === undefined ? [] : [[(longest[0][0] + longest[1][0]) / 2, (longest[0][1] + longest[1][1]) / 2]];
    });
  return [
    ...middles(after, (id) => JSON.stringify(was.get(id)) !== JSON.stringify(stay.get(id))),
    ...middles(before, (id) => !stay.has(id)),
  ];
}
