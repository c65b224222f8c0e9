import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from '../change/edit.ts';
import type { ListName } from '../change/element-lists.ts';
import { inFile } from '../change/file-lengths.ts';
import { leafAt, type SharedField, type SharedValue, withValue } from '../change/shared-field.ts';
import { changeStep, held } from './gather.ts';
import { inWords } from './in-words.ts';

/**
 * Gives several elements of a list the same value in a field, a length in site feet: "Set the box elevation of 12
 * drops". Undefined takes the field away. An element that has nothing to hold the field (a drop without a retractor)
 * is left as it is. RangeError where the list has no such field.
 */
export function setShared(
  file: SiteFile,
  list: ListName,
  ids: readonly string[],
  field: SharedField,
  value: SharedValue | undefined,
): Edit {
  const own = leafAt(list, field).kind === 'length' ? inFile(file, value as number) : value;
  const refs = ids.map((id) => ({ list, id }));
  const given = value === undefined ? undefined : own;
  const steps = held(file, refs).flatMap(({ element }): readonly EditStep[] =>
    changeStep(list, element, withValue(element, field, given)),
  );
  const changed = steps.flatMap((step) => (step.kind === 'change' ? [{ list, id: step.id }] : []));
  const verb = value === undefined ? 'Take away' : 'Set';
  return { name: `${verb} the ${field.called ?? field.label} of ${inWords(changed)}`, steps };
}
