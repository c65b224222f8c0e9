import { workingSpaceFindings } from '../../checks/equipment/equipment-findings.ts';
import type { WorkingNeeds } from '../../checks/equipment/working-needs.ts';
import { footprintFinding } from '../../checks/keepout-findings.ts';
import { setbackFindings } from '../../checks/setback-findings.ts';
import { kept } from '../../kept/kept.ts';
import { areaOf } from '../../plane/area.ts';
import { type Box, boxesMeet, boxOf } from '../../plane/box.ts';
import { indexing, positionsIn } from '../../plane/box-index.ts';
import { clippedToBox } from '../../plane/clip.ts';
import { type Rectangle, rectangleAt } from '../../plane/rectangle.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import { type WorkingSpace, workingSpaceOf } from '../../site/place/working-space.ts';
import type { Aisle, Column, Equipment, Point2, Site } from '../../site/site.ts';
import { footprintOf, seenFrom, TOUCHING_AREA } from '../../standing/footprint.ts';
import { outlineOf, stallsIn } from '../../standing/outlines.ts';

const NONE: ReadonlyMap<string, WorkingNeeds> = new Map();

/** What is there before any equipment is. */
type Ground = Pick<Site, 'stalls' | 'aisles' | 'columns' | 'keepouts' | 'boundaries' | 'units'>;

interface Boxed {
  readonly outline: Rectangle;
  readonly box: Box;
}

const boxed = (outline: Rectangle): Boxed => ({ outline, box: boxOf(outline) });

const columnOf = kept(({ at, size, rotation = 0 }: Column): Boxed => boxed(rectangleAt(at, size, rotation)));
const plan = kept((equipment: Equipment): Boxed => boxed(footprintOf(equipment)));
const space = kept((equipment: Equipment, width: number, depth: number, height: number): Boxed | null => {
  const outline = workingSpaceOf(equipment, { width, depth, height });
  return outline && boxed(outline);
});

const columnIndex = indexing<Column>((column) => columnOf(column).box);
const aisleIndex = indexing<Aisle>((aisle) => outlineOf(aisle));

/** Whether an outline covers any of a piece of equipment. */
function covering(equipment: Equipment): (outline: readonly Point2[]) => boolean {
  const [width, depth] = equipment.size;
  const half = { minX: -width / 2, maxX: width / 2, minY: -depth / 2, maxY: depth / 2 };
  return (outline) => areaOf(clippedToBox(seenFrom(equipment, outline), half)) > TOUCHING_AREA;
}

/**
 * Whether equipment may stand where it is put, as far as the ground goes: on no stall, aisle or column, in no keep-out that
 * blocks equipment, no nearer to a boundary than its setback, with its working space clear of them.
 * @param least of a working space, whatever the equipment
 */
export function standsFreeOfGround(ground: Ground, equipment: Equipment, least: WorkingSpace): boolean {
  const { stalls, aisles, columns, keepouts } = ground;
  const own = boxOf(footprintOf(equipment));
  const isOn = covering(equipment);
  if (stallsIn(stalls, own).some((stall) => isOn(stallRectangle(stall)))) return false;
  if (positionsIn(aisleIndex(aisles), own).some((i) => isOn(aisles[i]!.outline))) return false;
  if (positionsIn(columnIndex(columns), own).some((i) => isOn(columnOf(columns[i]!).outline))) return false;
  const blocks = keepouts.filter((keepout) => keepout.blocks.includes('equipment'));
  if (blocks.some((keepout) => footprintFinding(equipment, keepout) !== null)) return false;
  if (setbackFindings({ boundaries: ground.boundaries, equipment: [equipment], units: ground.units }).length > 0)
    return false;
  return workingSpaceFindings(equipment, { ...ground, equipment: NOTHING }, { least, by: NONE }).length === 0;
}

/** Whether it may stand there, as far as other equipment goes: on none, in no working space, with its own clear. */
export function standsFreeOfOthers(
  others: readonly Equipment[],
  equipment: Equipment,
  least: WorkingSpace,
  units: Site['units'],
): boolean {
  const own = boxOf(footprintOf(equipment));
  const isOn = covering(equipment);
  const meets = (one: Boxed | null): boolean => one !== null && boxesMeet(one.box, own) && isOn(one.outline);
  if (others.some((other) => meets(plan(other)))) return false;
  if (others.some((other) => meets(space(other, least.width, least.depth, least.height)))) return false;
  return workingSpaceFindings(equipment, { ...BARE, equipment: others, units }, { least, by: NONE }).length === 0;
}

const NOTHING: readonly never[] = [];
const BARE = { stalls: NOTHING, columns: NOTHING, keepouts: NOTHING };
