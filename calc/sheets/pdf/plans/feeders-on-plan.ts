import { kept } from '../../../../routing/kept/kept.ts';
import { feederRoutesOf } from '../../../../routing/network/feeder-routes.ts';
import { inPlan } from '../../../../routing/plane/space.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Feeder, Point2, Site } from '../../../../routing/site/site.ts';
import { feederLayer } from '../../drawing/layers.ts';
import { BLACK, GREY, type Ink } from '../kit/ink.ts';
import type { LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAlong, placesAround } from '../kit/labels/label-places.ts';
import type { Pen } from '../kit/pen.ts';
import { partIn, type View } from '../kit/view/view.ts';

/** Dashes of a feeder whose length is given and whose way is not: it is not where it lies that is drawn. */
const DIAGRAM = [1, 1.6];

/** The ink of a feeder that is drawn straight between what it joins. */
export const feederInk = ({ existing }: Pick<Feeder, 'existing'>): Ink => ({
  weight: existing === true ? 0.18 : 0.35,
  colour: existing === true ? GREY : BLACK,
  dash: DIAGRAM,
});

interface FeederLine {
  readonly feeder: Feeder;
  /** Along the raceways, or straight from equipment to equipment where the way is not known. Feet. */
  readonly points: readonly Point2[];
  readonly isRouted: boolean;
}

/** The feeders of a site as they lie in a plan. */
export const feedersInPlan = kept((site: Site): readonly FeederLine[] => {
  const equipment = byId(site.equipment);
  const routes = new Map(feederRoutesOf(site).routes.map(({ feeder, way }) => [feeder, way]));
  return site.feeders.flatMap((feeder): FeederLine[] => {
    const way = routes.get(feeder.id);
    if (way) return [{ feeder, points: way.path.map(inPlan), isRouted: true }];
    const [from, to] = [equipment.get(feeder.from), equipment.get(feeder.to)];
    if (from === undefined || to === undefined) return [];
    const ends = [from.entry, to.entry].map(inPlan);
    return [{ feeder, points: ends, isRouted: false }];
  });
});

/** Draws the feeders whose way the site does not give, straight and dotted. */
export function drawFeeders(pen: Pen, view: View, site: Site): void {
  if (pen.standing?.plan) return;
  pen.clipped(view.area, () => {
    for (const { feeder, points, isRouted } of feedersInPlan(site))
      if (!isRouted) pen.onLayer(feederLayer(feeder), () => pen.line(points.map(view.at), feederInk(feeder)));
  });
}

/** Names of the feeders, each along the longest straight of its way; with the length where the file gives it. */
export function feederWishes(view: View, site: Site): LabelWish[] {
  return feedersInPlan(site).map(({ feeder, points, isRouted }) => {
    const length = isRouted || feeder.length === undefined ? '' : `, ${printLength(feeder.length, site.units)}`;
    return {
      layer: 'conduitSizes',
      lines: [{ text: `${feeder.id}${feeder.existing === true ? ' (E)' : ''}${length}` }],
      size: 'small',
      colour: feeder.existing === true ? GREY : BLACK,
      *places(size) {
        const legs = points.slice(1).flatMap((to, i) => {
          const part = partIn(view.window, points[i]!, to);
          return part === null ? [] : [[view.at(part[0]), view.at(part[1])] as const];
        });
        legs.sort((a, b) => reach(b) - reach(a));
        for (const [from, to] of legs) yield* placesAlong(from, to, 3, size);
        // One that is shorter than its name is named beside it.
        const [longest] = legs;
        if (longest === undefined) return;
        const [[ax, ay], [bx, by]] = longest;
        for (const place of placesAround([(ax + bx) / 2, (ay + by) / 2], 6, size, true))
          yield { ...place, cost: (place.cost ?? 0) + 1, own: 1 };
      },
    };
  });
}

const reach = ([[ax, ay], [bx, by]]: readonly [Point2, Point2]): number => Math.hypot(bx - ax, by - ay);
