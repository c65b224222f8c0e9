import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from '../change/edit.ts';
import { type Element, elementsOf, type ListName } from '../change/element-lists.ts';
import { setStep } from '../change/set-field.ts';
import { changeStep, removeSteps } from './gather.ts';
import { deletedSteps } from './records/marks-steps.ts';

/**
 * The edit from a file to one that has some of its elements otherwise, fewer of them, and new ones after all of its own:
 * what proposes a part of a lot anew makes no other.
 */
export function editBetween(before: SiteFile, after: SiteFile, name: string): Edit {
  const gone: string[] = [];
  const steps = ELEMENT_LISTS.flatMap((list): readonly EditStep[] => {
    if (before[list] === after[list]) return [];
    const was = new Map(elementsOf(before, list).map((one) => [one.id, one]));
    const now = elementsOf(after, list);
    const stays = new Set(now.map(({ id }) => id));
    const taken = new Set([...was.keys()].filter((id) => !stays.has(id)));
    gone.push(...taken);
    const left = was.size - taken.size;
    return [
      ...now.flatMap((one) => (was.has(one.id) ? changeStep(list, was.get(one.id)!, one) : [])),
      ...removeSteps(before, list, taken),
      ...inserted(
        before,
        list,
        left,
        now.filter(({ id }) => !was.has(id)),
      ),
    ];
  });
  return { name, steps: [...steps, ...deletedSteps(before, gone)] };
}

function inserted(file: SiteFile, list: ListName, start: number, elements: readonly Element[]): readonly EditStep[] {
  if (elements.length === 0) return [];
  const steps = elements.map((element, i): EditStep => ({ kind: 'insert', list, index: start + i, element }));
  return file[list] === undefined ? [setStep(file, list, []), ...steps] : steps;
}
