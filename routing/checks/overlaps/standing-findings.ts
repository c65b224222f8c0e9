import { keptEach } from '../../kept/kept-list.ts';
import { boxOf } from '../../plane/box.ts';
import { indexing, positionsIn } from '../../plane/box-index.ts';
import { overlapDepth } from '../../plane/overlap-depth.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Column, Equipment, Point2, Site } from '../../site/site.ts';
import { footprintOf } from '../../standing/footprint.ts';
import { stallsIn } from '../../standing/outlines.ts';
import { columnOutline, TOUCHING } from './lies-in.ts';
import { fewNamed } from './told-overlaps.ts';

/**
 * Finding `overlap` for each piece of equipment that stands in a stall, on a column, or in the place of equipment that
 * stands before it in the list. Value: how far it lies into the worst of them, feet. In the order of the equipment.
 */
export const standingFindings = (site: Site): readonly Finding[] =>
  each([site.equipment], [site.stalls, site.columns, site.equipment, site.units]).flatMap((finding) => finding ?? []);

type Standing = Pick<Site, 'stalls' | 'columns' | 'equipment' | 'units'>;

const each = keptEach(
  (
    [one]: readonly [Equipment],
    [stalls, columns, equipment, units]: readonly [Site['stalls'], Site['columns'], Site['equipment'], Site['units']],
  ) => standingFinding(one, { stalls, columns, equipment, units }),
);

interface Under {
  readonly id: string;
  readonly outline: readonly Point2[];
}

function standingFinding(equipment: Equipment, site: Standing): Finding | null {
  const outline = footprintOf(equipment);
  const box = boxOf(outline);
  const own = site.equipment.indexOf(equipment);
  const stalls = stallsIn(site.stalls, box).map((stall) => ({ id: stall.id, outline: stallRectangle(stall) }));
  const under = positionsIn(columnsIn(site.columns), box).map((i) => site.columns[i]!);
  const before = positionsIn(equipmentIn(site.equipment), box).flatMap((i) => (i < own ? site.equipment[i]! : []));
  let worst = 0;
  const hit = (each: readonly Under[]): string[] =>
    each.flatMap((one) => {
      const depth = overlapDepth(outline, one.outline);
      if (depth <= TOUCHING) return [];
      worst = Math.max(worst, depth);
      return one.id;
    });
  const inStalls = hit(stalls);
  const onColumns = hit(under.map((column) => ({ id: column.id, outline: columnOutline(column) })));
  const inPlaceOf = hit(before.map((other) => ({ id: other.id, outline: footprintOf(other) })));
  const says = [
    inStalls.length === 0 ? '' : `in ${inStalls.length === 1 ? 'stall' : 'stalls'} ${fewNamed(inStalls)}`,
    onColumns.length === 0 ? '' : `on ${onColumns.length === 1 ? 'column' : 'columns'} ${fewNamed(onColumns)}`,
    inPlaceOf.length === 0 ? '' : `in the place of ${fewNamed(inPlaceOf)}`,
  ].filter(Boolean);
  if (says.length === 0) return null;
  return {
    severity: 'fail',
    rule: 'overlap',
    about: [equipment.id, ...inStalls, ...onColumns, ...inPlaceOf],
    says: `${equipment.id} stands ${says.join(' and ')}, ${printLength(worst, site.units)} into it. Move it, or delete the copy.`,
    value: worst,
    limit: TOUCHING,
    unit: 'ft',
    source: 'common practice, no source',
  };
}

const columnsIn = indexing<Column>((column) => boxOf(columnOutline(column)));
const equipmentIn = indexing<Equipment>((equipment) => boxOf(footprintOf(equipment)));
