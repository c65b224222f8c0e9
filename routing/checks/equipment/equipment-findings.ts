import { kept } from '../../kept/kept.ts';
import { keptEach } from '../../kept/kept-list.ts';
import { areaOf } from '../../plane/area.ts';
import { type Box, boxOf } from '../../plane/box.ts';
import { indexing, positionsIn } from '../../plane/box-index.ts';
import { clippedToBox } from '../../plane/clip.ts';
import { rectangleAt } from '../../plane/rectangle.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import { spaceBefore, type WorkingSpace, workingSpaceSize } from '../../site/place/working-space.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Column, Equipment, Point2, Site } from '../../site/site.ts';
import { footprintOf, seenFrom, standsUnder, TOUCHING_AREA } from '../../standing/footprint.ts';
import { stallsIn } from '../../standing/outlines.ts';
import { entrances } from './entrances.ts';
import { type Condition, conditionBefore, leastNeeds, type NeedsOf, type WorkingNeeds } from './working-needs.ts';

/** Half a millimetre, in feet: a metric site gives 3 ft as 0.914 m. */
const ROUNDING = 0.5 / 304.8;

/** Something that stands on the ground, and where. */
interface Standing {
  readonly id: string;
  readonly what: string;
  readonly outline: readonly Point2[];
  /** Of the code's table, where it stands opposite. */
  readonly condition: Condition;
}

/**
 * Findings `working-space` of each piece of equipment: one in whose working space a parked car (anywhere in a stall), a
 * column, other equipment or a keep-out that blocks equipment stands, deeper than what stands there asks for; a depth given
 * that is less than the table's; a large one that is not entered from both ends. Value: the depth that is clear, or that
 * is given, feet. In the order of the equipment.
 */
export function equipmentFindings(site: Site, needs: NeedsOf): readonly Finding[] {
  const { stalls, columns, equipment, keepouts, units } = site;
  return each([equipment], [stalls, columns, equipment, keepouts, units, needs]).flat();
}

/** What stands about equipment. */
type Around = Pick<Site, 'stalls' | 'columns' | 'equipment' | 'keepouts' | 'units'>;

const each = keptEach(
  (
    [one]: readonly [Equipment],
    [stalls, columns, equipment, keepouts, units, needs]: readonly [
      Site['stalls'],
      Site['columns'],
      Site['equipment'],
      Site['keepouts'],
      Site['units'],
      NeedsOf,
    ],
  ) => workingSpaceFindings(one, { stalls, columns, equipment, keepouts, units }, needs),
);

/** The findings on one piece of equipment, be it on the site or only thought of there; none where its space is right. */
export function workingSpaceFindings(equipment: Equipment, site: Around, { least, by }: NeedsOf): readonly Finding[] {
  const space = workingSpaceSize(equipment, least);
  if (!space) return [];
  const needs = by.get(equipment.id) ?? leastNeeds(least);
  const { depths } = needs;
  const given = equipment.workingSpace;
  const wanted = (condition: Condition): number =>
    Math.max(depths?.[(equipment.condition ?? condition) - 1] ?? space.depth, given ?? 0);
  const looked = { ...space, depth: Math.max(...([1, 2, 3] as const).map(wanted)) };
  const obstructing: Standing[] = [];
  let [clear, asked, opposite]: [number, number, Condition] = [Infinity, wanted(1), 1];
  for (const one of standingNear(equipment, looked, site)) {
    const part = clippedToBox(seenFrom(equipment, one.outline), spaceBox(equipment, looked));
    if (areaOf(part) <= TOUCHING_AREA) continue;
    if (one.condition > opposite) opposite = one.condition;
    const off = Math.min(...part.map(([, y]) => -y - equipment.size[1] / 2));
    if (off >= wanted(one.condition) - ROUNDING) continue;
    obstructing.push(one);
    clear = Math.min(clear, off);
    asked = Math.max(asked, wanted(one.condition));
  }
  const condition = equipment.condition ?? opposite;
  return [
    ...obstructed(equipment, { ...space, depth: asked }, obstructing, clear, condition, needs, site),
    ...tooLittleGiven(equipment, condition, needs, site),
    ...entrances(
      equipment,
      { ...space, depth: wanted(condition) },
      needs,
      (box) => standingNear(equipment, box, site),
      site,
    ),
  ];
}

function obstructed(
  equipment: Equipment,
  space: WorkingSpace,
  obstructing: readonly Standing[],
  clear: number,
  condition: Condition,
  { source, cites }: WorkingNeeds,
  site: Around,
): Finding[] {
  if (obstructing.length === 0) return [];
  const print = (feet: number): string => printLength(feet, site.units);
  const { id, workingSpace } = equipment;
  const depth =
    workingSpace === undefined ? `${print(space.depth)} (the least, as the site gives none)` : print(space.depth);
  return [
    {
      severity: 'fail',
      rule: 'working-space',
      about: [id, ...obstructing.map((one) => one.id)],
      says:
        `The working space in front of ${id}, ${depth} deep and ${print(space.width)} wide, is obstructed by ` +
        `${listed(obstructing.map(({ what }) => what))}: ${print(Math.max(0, clear))} is clear. ` +
        `Move ${id}, turn it, or clear the space.`,
      value: Math.max(0, clear),
      limit: space.depth,
      unit: 'ft',
      source:
        workingSpace === space.depth
          ? `${cites.space}: depth as the site gives it for ${id}; width and height ${cites.size} from memory`
          : `${cites.space}: ${source}, condition ${condition}; width and height ${cites.size} from memory`,
    },
  ];
}

/** A depth that the site gives and that is less than the table asks for. */
function tooLittleGiven(
  { id, workingSpace }: Equipment,
  condition: Condition,
  { depths, source, cites }: WorkingNeeds,
  { units }: Around,
): Finding[] {
  const least = depths?.[condition - 1];
  if (workingSpace === undefined || least === undefined || workingSpace >= least - ROUNDING) return [];
  const print = (feet: number): string => printLength(feet, units);
  return [
    {
      severity: 'fail',
      rule: 'working-space',
      about: [id],
      says: `The working space of ${id} is given as ${print(workingSpace)} deep and is to be ${print(least)}: ${OPPOSITE[condition]}. Give it that depth.`,
      value: workingSpace,
      limit: least,
      unit: 'ft',
      source: `${cites.depth}: ${source}, condition ${condition}`,
    },
  ];
}

const OPPOSITE: Readonly<Record<Condition, string>> = {
  1: 'nothing grounded stands opposite',
  2: 'grounded parts stand opposite',
  3: 'live parts stand opposite',
};

const spaceBox = ({ size }: Equipment, { width, depth }: WorkingSpace): Box => ({
  minX: -width / 2,
  maxX: width / 2,
  minY: -size[1] / 2 - depth,
  maxY: -size[1] / 2,
});

function standingNear(equipment: Equipment, space: WorkingSpace, site: Around): Standing[] {
  const box = boxOf(spaceBefore(equipment, space));
  return [
    ...stallsIn(site.stalls, box).map((stall) => ({
      id: stall.id,
      what: `a car in stall ${stall.id}`,
      outline: stallRectangle(stall),
      condition: 1 as const,
    })),
    ...columnsIn(site.columns, box).map(({ item: { id }, outline }) => ({
      id,
      what: `column ${id}`,
      outline,
      condition: 2 as const,
    })),
    ...equipmentIn(site.equipment, box)
      .filter(({ item }) => item.id !== equipment.id)
      .map(({ item, outline }) => ({
        id: item.id,
        what: item.id,
        outline,
        condition: conditionBefore(equipment, item),
      })),
    ...site.keepouts
      .filter((keepout) => keepout.blocks.includes('equipment') && standsUnder(keepout, space.height))
      .map(({ id, outline }) => ({ id, what: `keep-out ${id}`, outline, condition: 2 as const })),
  ];
}

interface Outlined extends Box {
  readonly outline: readonly Point2[];
}

/** Finds the items of a list in a box. */
function finderOf<T extends object>(outlineOf: (item: T) => readonly Point2[]) {
  const outlined = kept((item: T): Outlined => {
    const outline = outlineOf(item);
    return { outline, ...boxOf(outline) };
  });
  const indexOf = indexing<T>((item) => outlined(item));
  return (list: readonly T[], box: Box): { readonly item: T; readonly outline: readonly Point2[] }[] =>
    positionsIn(indexOf(list), box).map((i) => ({ item: list[i]!, outline: outlined(list[i]!).outline }));
}

const columnsIn = finderOf<Column>(({ at, size, rotation = 0 }) => rectangleAt(at, size, rotation));
const equipmentIn = finderOf<Equipment>(footprintOf);

/** The first few by name, the rest by number. */
function listed(names: readonly string[]): string {
  if (names.length === 1) return names[0]!;
  if (names.length <= 4) return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
}
