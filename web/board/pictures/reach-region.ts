import { reachRegion } from '../../../routing/reach/region.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';
import { findDrop } from '../../document/find-in-site.ts';
import type { Frame, Pen } from './frame.ts';
import { traceOutline } from './outline.ts';

type Standing = readonly [...(Site[keyof Site] | undefined)[], number];
let last: { readonly of: Standing; readonly polygons: readonly (readonly Point2[])[] } | null = null;

/** The region of a drop, worked again only where something that bears on it has changed. */
function regionOf(site: Site, id: string, height: number): readonly (readonly Point2[])[] {
  const drop = findDrop(site.drops, id);
  if (!drop) return [];
  const of = [drop, site.stalls, site.columns, site.vehicles, site.rules, height] as unknown as Standing;
  if (!last || last.of.some((part, i) => part !== of[i])) last = { of, polygons: reachRegion(site, id, height) };
  return last.polygons;
}

/** Where an inlet at a height is within reach of the selected drop, round the parked cars; softly, under its cord. */
export function drawReachRegion(pen: Pen, frame: Frame, site: Site, selection: readonly Ref[], height: number): void {
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
