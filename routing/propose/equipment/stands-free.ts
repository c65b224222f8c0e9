import { workingSpaceFindings } from '../../checks/equipment/equipment-findings.ts';
import type { WorkingNeeds } from '../../checks/equipment/working-needs.ts';
import { footprintFinding } from '../../checks/keepout-findings.ts';
import { areaOf } from '../../plane/area.ts';
import { boxesMeet, boxOf } from '../../plane/box.ts';
import { clippedToBox } from '../../plane/clip.ts';
import { rectangleAt } from '../../plane/rectangle.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import { type WorkingSpace, workingSpaceOf } from '../../site/place/working-space.ts';
import type { Equipment, Point2, Site } from '../../site/site.ts';
import { footprintOf, seenFrom, TOUCHING_AREA } from '../../standing/footprint.ts';
import { stallsIn } from '../../standing/outlines.ts';

const NONE: ReadonlyMap<string, WorkingNeeds> = new Map();

/**
 * Whether equipment may stand where it is put: on no stall, aisle, column or other equipment, in no keep-out that blocks
 * equipment, with its working space clear and in nobody else's.
 * @param least of a working space, whatever the equipment
 */
export function standsFree(site: Site, equipment: Equipment, least: WorkingSpace): boolean {
  const own = boxOf(footprintOf(equipment));
  const [width, depth] = equipment.size;
  const half = { minX: -width / 2, maxX: width / 2, minY: -depth / 2, maxY: depth / 2 };
  const isOn = (outline: readonly Point2[]): boolean =>
    outline.length > 0 &&
    boxesMeet(boxOf(outline), own) &&
    areaOf(clippedToBox(seenFrom(equipment, outline), half)) > TOUCHING_AREA;
  if (stallsIn(site.stalls, own).some((stall) => isOn(stallRectangle(stall)))) return false;
  if (site.aisles.some(({ outline }) => isOn(outline))) return false;
  if (site.columns.some(({ at, size, rotation = 0 }) => isOn(rectangleAt(at, size, rotation)))) return false;
  if (site.equipment.some((other) => isOn(footprintOf(other)))) return false;
  const blocks = site.keepouts.filter((keepout) => keepout.blocks.includes('equipment'));
  if (blocks.some((keepout) => footprintFinding(equipment, keepout) !== null)) return false;
  if (site.equipment.some((other) => isOn(workingSpaceOf(other, least) ?? []))) return false;
  return workingSpaceFindings(equipment, site, { least, by: NONE }).length === 0;
}
