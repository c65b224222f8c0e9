import { ELEMENT_LISTS, isPlaced } from '../../../../routing/site/kinds/kinds.ts';
import type { Motion } from '../../../../routing/site/place/motion.ts';
import type { AsBuilt, Point3, SiteFile } from '../../../../routing/site/site.ts';
import type { EditStep } from '../../change/edit.ts';
import { elementsOf, type Ref } from '../../change/element-lists.ts';
import { setStep } from '../../change/set-field.ts';
import { alike } from '../gather.ts';
import { movedLotSteps } from '../records/marks-steps.ts';
import { gridlineSteps } from './move-gridlines.ts';

/**
 * The steps by which what refers to the lot goes with it where it is moved, turned or mirrored as a whole: its gridlines,
 * and what the tape said at its drops, for that was measured from them. None where something stays behind: the lines stay
 * with it, and a drop that moves alone leaves its record where the tape found it. Heights are above grade, which stays.
 */
export function wholeLotSteps(file: SiteFile, refs: readonly Ref[], motion: Motion): readonly EditStep[] {
  return isWholeLot(file, refs)
    ? [...gridlineSteps(file, motion), ...asBuiltSteps(file, motion), ...movedLotSteps(file, motion)]
    : [];
}

/** All that has a place is held whole, two elements or more. */
function isWholeLot(file: SiteFile, refs: readonly Ref[]): boolean {
  const placed = ELEMENT_LISTS.filter(isPlaced);
  const count = placed.reduce((sum, list) => sum + elementsOf(file, list).length, 0);
  if (count < 2 || refs.length < count) return false;
  const held = new Set(refs.filter(({ list, part }) => part === undefined && isPlaced(list)).map(keyOf));
  return placed.every((list) => elementsOf(file, list).every(({ id }) => held.has(keyOf({ list, id }))));
}

const keyOf = ({ list, id }: Pick<Ref, 'list' | 'id'>): string => `${list} ${id}`;

function asBuiltSteps(file: SiteFile, motion: Motion): readonly EditStep[] {
  const { asBuilt } = file;
  if (!asBuilt) return [];
  const spot = ([x, y, z]: Point3): Point3 => [...motion.point([x, y]), z];
  const found = (was: AsBuilt): AsBuilt => ({
    ...was,
    ...(was.box && { box: spot(was.box) }),
    ...(was.retractor && { retractor: spot(was.retractor) }),
  });
  const after = Object.fromEntries(Object.entries(asBuilt).map(([drop, was]) => [drop, found(was)]));
  return alike(asBuilt, after) ? [] : [setStep(file, 'asBuilt', after)];
}
