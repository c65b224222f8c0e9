import { tidy } from '../../../../routing/site/file/tidy.ts';
import type { Part } from '../../../../routing/site/kinds/kind.ts';
import { isPlaced, placedKind } from '../../../../routing/site/kinds/kinds.ts';
import type { Motion } from '../../../../routing/site/place/motion.ts';
import type { Point2, Point3, SiteFile } from '../../../../routing/site/site.ts';
import type { Edit, EditStep } from '../../change/edit.ts';
import { type Element, elementOf, type ListName, type Ref } from '../../change/element-lists.ts';
import { inFile, placeInFile, spotInFile } from '../../change/file-lengths.ts';
import { changeStep, type Gathered, held } from '../gather.ts';
import { inWords } from '../in-words.ts';
import { mirrored, moved, shift, turn } from './motion.ts';
import { wholeLotSteps } from './whole-lot.ts';

/**
 * Moves what refs hold by site feet: an element as a whole, or only the handles named. A handle of an element that is
 * held as a whole moves once, with it. What has no place of its own (a feeder, a load, a charger) stays.
 */
export function moveElements(file: SiteFile, refs: readonly Ref[], dxFt: number, dyFt: number, dzFt = 0): Edit {
  const by: Point3 = [inFile(file, dxFt), inFile(file, dyFt), inFile(file, dzFt)];
  const motion = shift(...by);
  const whole = refs.filter(({ part }) => part === undefined);
  const wholes = new Set(whole.map(({ list, id }) => `${list} ${id}`));
  const parts = refs.filter(({ list, id, part }) => part !== undefined && !wholes.has(`${list} ${id}`));
  const steps = [...lotSteps(file, whole, motion), ...partSteps(file, parts, (at) => sum(at, by))];
  return { name: `Move ${nameOf(steps, parts)}`, steps };
}

/** Puts a drop where its box lies at a place, site feet: its retractor goes along. */
export function placeDrop(file: SiteFile, id: string, atFt: Point3): Edit {
  const box = elementOf(file, 'drops', id)?.box;
  const at = spotInFile(file, atFt);
  const [x, y, z] = box ? [at[0] - box[0], at[1] - box[1], at[2] - box[2]] : [0, 0, 0];
  const motion = shift(x, y, z);
  const steps = movedSteps(held(file, [{ list: 'drops', id }]), motion);
  return { name: `Move ${nameOf(steps, [])}`, steps };
}

/** Turns elements counter-clockwise about a place, site feet. */
export function rotate(file: SiteFile, refs: readonly Ref[], aboutFt: Point2, degrees: number): Edit {
  const steps = lotSteps(file, refs, turn(placeInFile(file, aboutFt), degrees));
  return { name: `Rotate ${nameOf(steps, [])}`, steps };
}

/** Mirrors elements in the line through a place, site feet, in a direction, degrees. */
export function mirror(file: SiteFile, refs: readonly Ref[], throughFt: Point2, degrees: number): Edit {
  const steps = lotSteps(file, refs, mirrored(placeInFile(file, throughFt), degrees));
  return { name: `Mirror ${nameOf(steps, [])}`, steps };
}

/** What moves the elements, and what refers to them where they are the whole lot. */
const lotSteps = (file: SiteFile, refs: readonly Ref[], motion: Motion): readonly EditStep[] => [
  ...movedSteps(held(file, refs), motion),
  ...wholeLotSteps(file, refs, motion),
];

const movedSteps = (elements: readonly Gathered[], motion: Motion): readonly EditStep[] =>
  elements
    .filter(({ list }) => isPlaced(list))
    .flatMap(({ list, element }) => changeStep(list, element, moved(list, element, motion)));

const sum = (a: Point3, b: Point3): Point3 => [tidy(a[0] + b[0]), tidy(a[1] + b[1]), tidy(a[2] + b[2])];

function partSteps(file: SiteFile, refs: readonly Ref[], to: (at: Point3) => Point3): readonly EditStep[] {
  return held(file, refs).flatMap(({ list, element }) => {
    const own = refs.filter((ref) => ref.list === list && ref.id === element.id);
    return changeStep(
      list,
      element,
      own.reduce((now, { part }) => withHandle(list, now, part, to), element),
    );
  });
}

function withHandle(list: ListName, element: Element, part: Part | undefined, to: (at: Point3) => Point3): Element {
  const parts = placedKind(list)?.parts;
  return part && parts ? parts.moved(element as never, part, to) : element;
}

function nameOf(steps: readonly EditStep[], parts: readonly Ref[]): string {
  const [part] = parts;
  if (part?.part && parts.length === steps.length && parts.length === 1) {
    return `${part.part.kind} of ${part.id}`;
  }
  return inWords(steps.flatMap((step) => (step.kind === 'change' ? [{ list: step.list, id: step.id }] : [])));
}
