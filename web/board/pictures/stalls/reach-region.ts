import { kept } from '../../../../routing/kept/kept.ts';
import { reachRegion } from '../../../../routing/reach/region.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import type { Ref } from '../../../document/change/element-lists.ts';
import { findDrop } from '../../../document/find/finders.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { traceOutline } from '../outline.ts';

/** The region of a drop. */
function regionOf(site: Site, id: string, height: number): readonly (readonly Point2[])[] {
  const drop = findDrop(site.drops, id);
  return drop ? regionBy(drop, site.stalls, site.columns, site.vehicles, site.rules, height) : [];
}

const regionBy = kept(
  (
    drop: Site['drops'][number],
    stalls: Site['stalls'],
    columns: Site['columns'],
    vehicles: Site['vehicles'],
    rules: Site['rules'],
    height: number,
  ) => reachRegion({ drops: [drop], stalls, columns, vehicles, rules }, drop.id, height),
);

/** Where an inlet at a height is within reach of the selected drop, round the parked cars; softly, under its cord. */
export function drawReachRegion(
  pen: BoardPen,
  frame: Frame,
  site: Site,
  selection: readonly Ref[],
  height: number,
): void {
  const [first] = selection;
  if (first?.list !== 'drops' || selection.some(({ list, id }) => list !== 'drops' || id !== first.id)) return;
  const polygons = regionOf(site, first.id, height);
  if (polygons.length === 0) return;
  pen.save();
  pen.beginPath();
  for (const polygon of polygons) traceOutline(pen, frame, polygon);
  // One path by the non-zero rule: the polygons overlap.
  pen.fillStyle = frame.ink.ink;
  pen.globalAlpha = 0.13;
  pen.fill('nonzero');
  pen.restore();
}
