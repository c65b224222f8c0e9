import { type Box, boxOf } from '../plane/box.ts';
import { type BoxIndex, boxIndex, positionsIn } from '../plane/box-index.ts';
import { areaOf, clippedToBox } from '../plane/clip.ts';
import { rectangleAt } from '../plane/rectangle.ts';
import { listMemo } from '../reach/list-memo.ts';
import { stallsIn } from '../reach/outlines.ts';
import { stallRectangle } from '../reach/parked.ts';
import { printLength } from '../site/feet-inches.ts';
import type { Finding } from '../site/finding.ts';
import type { Column, Equipment, Point2, Site } from '../site/site.ts';
import { DEFAULT_WORKING_DEPTH, type WorkingSpace, workingSpaceOf, workingSpaceSize } from '../site/working-space.ts';
import { footprintOf, seenFrom, standsUnder, TOUCHING_AREA } from './footprint.ts';

/** Something that stands on the ground, and where. */
interface Standing {
  readonly id: string;
  readonly what: string;
  readonly outline: readonly Point2[];
}

/**
 * Finding `working-space` for each piece of equipment in whose working space a parked car (anywhere in a stall), a
 * column, other equipment or a keep-out that blocks equipment stands. Value: the depth that is clear, feet. In the order
 * of the equipment.
 */
export function equipmentFindings(site: Site): readonly Finding[] {
  return kept.all(site.equipment, site).flatMap(({ finding }) => finding ?? []);
}

const kept = listMemo<Equipment, Site, { readonly site: Site; readonly finding: Finding | null }>(
  (equipment, site) => ({ site, finding: workingSpaceFinding(equipment, site) }),
  ({ site: before }, site) =>
    before === site ||
    (before.stalls === site.stalls &&
      before.columns === site.columns &&
      before.equipment === site.equipment &&
      before.keepouts === site.keepouts &&
      before.units === site.units),
);

/** The finding on one piece of equipment, be it on the site or only thought of there; null where its space is clear. */
export function workingSpaceFinding(equipment: Equipment, site: Site): Finding | null {
  const space = workingSpaceSize(equipment);
  if (!space) return null;
  const obstructing: Standing[] = [];
  let clear = space.depth;
  for (const one of standingNear(equipment, space, site)) {
    const part = clippedToBox(seenFrom(equipment, one.outline), spaceBox(equipment, space));
    if (areaOf(part) <= TOUCHING_AREA) continue;
    obstructing.push(one);
    for (const [, y] of part) clear = Math.min(clear, -y - equipment.size[1] / 2);
  }
  if (obstructing.length === 0) return null;
  const print = (feet: number): string => printLength(feet, site.units);
  const depth =
    equipment.workingSpace === undefined
      ? `${print(DEFAULT_WORKING_DEPTH)} (the least, as the site gives none)`
      : print(space.depth);
  return {
    severity: 'fail',
    rule: 'working-space',
    about: [equipment.id, ...obstructing.map(({ id }) => id)],
    says:
      `The working space in front of ${equipment.id}, ${depth} deep and ${print(space.width)} wide, is obstructed by ` +
      `${listed(obstructing.map(({ what }) => what))}: ${print(Math.max(0, clear))} is clear. ` +
      `Move ${equipment.id}, turn it, or clear the space.`,
    value: Math.max(0, clear),
    limit: space.depth,
    unit: 'ft',
    source:
      equipment.workingSpace === undefined
        ? 'NEC 110.26(A): depth from Table 110.26(A)(1), condition 1; width and height (A)(2), (A)(3) from memory'
        : `NEC 110.26(A): depth as the site gives it for ${equipment.id}; width and height (A)(2), (A)(3) from memory`,
  };
}

const spaceBox = ({ size }: Equipment, { width, depth }: WorkingSpace): Box => ({
  minX: -width / 2,
  maxX: width / 2,
  minY: -size[1] / 2 - depth,
  maxY: -size[1] / 2,
});

function standingNear(equipment: Equipment, space: WorkingSpace, site: Site): Standing[] {
  const box = boxOf(workingSpaceOf(equipment)!);
  return [
    ...stallsIn(site.stalls, box).map((stall) => ({
      id: stall.id,
      what: `a car in stall ${stall.id}`,
      outline: stallRectangle(stall),
    })),
    ...columnsIn(site.columns, box).map(({ item: { id }, outline }) => ({ id, what: `column ${id}`, outline })),
    ...equipmentIn(site.equipment, box)
      .filter(({ item }) => item.id !== equipment.id)
      .map(({ item: { id }, outline }) => ({ id, what: id, outline })),
    ...site.keepouts
      .filter((keepout) => keepout.blocks.includes('equipment') && standsUnder(keepout, space.height))
      .map(({ id, outline }) => ({ id, what: `keep-out ${id}`, outline })),
  ];
}

interface Outlined extends Box {
  readonly outline: readonly Point2[];
}

/** Finds the items of a list in a box; the search tree of the last list is kept. */
function finderOf<T extends object>(outlineOf: (item: T) => readonly Point2[]) {
  const outlines = new WeakMap<T, Outlined>();
  const outlined = (item: T): Outlined => {
    const known = outlines.get(item);
    if (known) return known;
    const outline = outlineOf(item);
    const made = { outline, ...boxOf(outline) };
    outlines.set(item, made);
    return made;
  };
  let last: BoxIndex<T> | undefined;
  return (list: readonly T[], box: Box): { readonly item: T; readonly outline: readonly Point2[] }[] => {
    if (last?.items !== list) last = boxIndex(list, outlined, last);
    const { items } = last;
    return positionsIn(last, box).map((i) => ({ item: items[i]!, outline: outlined(items[i]!).outline }));
  };
}

const columnsIn = finderOf<Column>(({ at, size, rotation = 0 }) => rectangleAt(at, size, rotation));
const equipmentIn = finderOf<Equipment>(footprintOf);

/** The first few by name, the rest by number. */
function listed(names: readonly string[]): string {
  if (names.length === 1) return names[0]!;
  if (names.length <= 4) return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
}
