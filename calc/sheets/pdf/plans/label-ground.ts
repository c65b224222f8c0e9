import { kept } from '../../../../routing/kept/kept.ts';
import { boxOf } from '../../../../routing/plane/box.ts';
import { finderBy } from '../../../../routing/plane/box-index.ts';
import { inPlan } from '../../../../routing/plane/space.ts';
import { cutEnds, lookHeads } from '../../../../routing/site/kinds/sections.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import { workingSpaceOf } from '../../../../routing/site/place/working-space.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../tables/equipment-of.ts';
import type { LabelGround } from '../kit/labels/best-label-place.ts';
import { around, type FreeSpace, freeSpace, takeAlong } from '../kit/labels/free-space.ts';
import type { View } from '../kit/view/view.ts';
import { symbolScale } from './base-plan.ts';
import { feedersInPlan } from './feeders-on-plan.ts';

/** Boxes where circuits part on the way: the site has no element for them. */
export const junctionsOf = kept(({ boxes }: Plan) => boxes.filter(({ kind }) => kind === 'junction'));

/** Half of what a drop's symbol takes, feet at the scale of symbols. */
export const DROP_HALF = 0.8;
export const SMALL_HALF = 0.55;

/** A symbol about a point, of which the half is given in feet at the scale of symbols. */
interface Mark {
  readonly at: Point2;
  readonly half: number;
}

type Line = readonly Point2[];

/** What stands in the way of words on any plan of a site, feet. */
interface Standing {
  readonly marks: readonly Mark[];
  readonly equipment: readonly Line[];
  readonly columns: Site['columns'];
  readonly heavy: readonly Line[];
  readonly thin: readonly Line[];
}

const standingIn = kept((site: Site, plan: Plan): Standing => {
  const least = leastWorkingSpace(tablesOf(site.rules));
  const closed = (outline: Line): Line => [...outline, outline[0]!];
  return {
    marks: [
      ...site.drops.map(({ box }) => ({ at: inPlan(box), half: SMALL_HALF })),
      ...site.drops.flatMap(({ retractor }) => (retractor ? [{ at: inPlan(retractor), half: DROP_HALF }] : [])),
      ...[...site.pullpoints, ...junctionsOf(plan)].map(({ at }) => ({ at: inPlan(at), half: SMALL_HALF })),
    ],
    equipment: site.equipment.map(footprintOf),
    columns: site.columns,
    heavy: [
      ...site.raceways.map(({ path }) => path.map(inPlan)),
      ...plan.runs.flatMap(({ path }) => (path.length > 1 ? [path.slice(-2).map(inPlan)] : [])),
    ],
    thin: [
      ...site.stalls.map((stall) => closed(stallRectangle(stall))),
      ...site.boundaries.map(({ path }) => path),
      ...[...site.aisles, ...site.keepouts].map(({ outline }) => closed(outline)),
      ...site.members.map(({ from, to }) => [inPlan(from), inPlan(to)]),
      ...site.equipment.flatMap((one) => {
        const space = workingSpaceOf(one, least);
        return space ? [closed(space)] : [];
      }),
      ...feedersInPlan(site).flatMap(({ points, isRouted }) => (isRouted ? [] : [points])),
    ],
  };
});

const pointBox = ({ at }: { readonly at: Point2 }) => boxOf([at]);
const marksIn = finderBy<Mark>(pointBox);
const columnsIn = finderBy<Site['columns'][number]>(pointBox);
const equipmentIn = finderBy<Line>(boxOf);
const heavyIn = finderBy<Line>(boxOf);
const thinIn = finderBy<Line>(boxOf);

/** What of a view is taken before anything is written on it. */
export function labelGround(view: View, site: Site, plan: Plan): LabelGround {
  const ground: LabelGround = { hard: freeSpace(), heavy: freeSpace(), thin: freeSpace() };
  const { window } = view;
  const perSymbol = symbolScale(view.perFoot);
  const { marks, equipment, columns, heavy, thin } = standingIn(site, plan);
  for (const { at, half } of marksIn(marks, window)) {
    const [x, y] = view.at(at);
    const r = half * perSymbol;
    ground.hard.take({ x: x - r, y: y - r, width: 2 * r, height: 2 * r });
  }
  for (const footprint of equipmentIn(equipment, window)) ground.hard.take(around(footprint.map(view.at)));
  for (const { at, size } of columnsIn(columns, window)) {
    const half = Math.max(...size) / 2;
    ground.hard.take(around([view.at([at[0] - half, at[1] - half]), view.at([at[0] + half, at[1] + half])]));
  }
  const take = (space: FreeSpace, lines: readonly Line[], off = 0.8): void => {
    for (const points of lines) takeAlong(space, points.map(view.at), off);
  };
  take(ground.heavy, heavyIn(heavy, window));
  take(ground.thin, thinIn(thin, window));
  for (const section of site.sections) take(ground.hard, [...lookHeads(section), ...cutEnds(section)]);
  const { minX, minY, maxX, maxY } = window;
  const isAcross = (at: number): boolean => at >= minX && at <= maxX;
  const isAlong = (at: number): boolean => at >= minY && at <= maxY;
  const upright = site.gridlines.x.flatMap(({ at }): Line[] =>
    isAcross(at)
      ? [
          [
            [at, minY],
            [at, maxY],
          ],
        ]
      : [],
  );
  const level = site.gridlines.y.flatMap(({ at }): Line[] =>
    isAlong(at)
      ? [
          [
            [minX, at],
            [maxX, at],
          ],
        ]
      : [],
  );
  take(ground.thin, [...upright, ...level]);
  return ground;
}
