import { kept } from '../../../routing/kept/kept.ts';
import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Drawing, DrawnItem, Extent } from './drawing.ts';
import { extentOf, extentOnGrid } from './extent.ts';
import { LARGE, lineItem, textItem } from './items.ts';
import { DRAWN_KINDS } from './kinds.ts';

/** Gridlines run this far past what they are lines of, feet. */
const OVERHANG = 8;
const BUBBLE = 2;

/** The site plan with what is installed on it: existing work below, raceways, equipment and drops above. */
export const planDrawing = kept((site: Site, plan: Plan): Drawing => {
  const drawn = (wanted: boolean): readonly DrawnItem[] =>
    Object.values(DRAWN_KINDS).flatMap((kind) =>
      kind !== null && (kind.below ?? false) === wanted ? kind.draw(site, plan) : [],
    );
  const below = drawn(true);
  const above = drawn(false);
  const inner = extentOf([...below, ...above]);
  const items = [
    ...below,
    ...(inner ? gridlines(site, extentOnGrid(site, [...below, ...above], inner)) : []),
    ...above,
  ];
  return { title: site.name, items, extent: extentOf(items) };
});

function gridlines(site: Site, { minX, minY, maxX, maxY }: Extent): DrawnItem[] {
  const at = (x: number, y: number): Point2 => offGrid(site.gridlines, [x, y]);
  const bubble = (label: string, place: Point2): DrawnItem[] => [
    { kind: 'circle', layer: 'gridLabels', at: place, radius: BUBBLE },
    textItem('gridLabels', [place[0], place[1] - LARGE / 2], label, { height: LARGE }),
  ];
  return [
    ...site.gridlines.x.flatMap(({ label, at: x }) => [
      lineItem('gridlines', [at(x, minY - OVERHANG / 2), at(x, maxY + OVERHANG)]),
      ...bubble(label, at(x, maxY + OVERHANG + BUBBLE)),
    ]),
    ...site.gridlines.y.flatMap(({ label, at: y }) => [
      lineItem('gridlines', [at(minX - OVERHANG, y), at(maxX + OVERHANG / 2, y)]),
      ...bubble(label, at(minX - OVERHANG - BUBBLE, y)),
    ]),
  ];
}
