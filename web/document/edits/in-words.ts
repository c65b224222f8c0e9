import { ELEMENT_LISTS, KINDS } from '../../../routing/site/kinds/kinds.ts';
import type { ListName, Ref } from '../change/element-lists.ts';

/** The trade's word for an element of a list. */
export const wordFor = (list: ListName): string => KINDS[list].one;

/** What refs hold, for an edit's name: "drop D03", "12 drops", "4 stalls and 2 columns", "31 elements". */
export function inWords(refs: readonly Pick<Ref, 'list' | 'id'>[]): string {
  const [first] = refs;
  if (first && refs.length === 1) return `${KINDS[first.list].one} ${first.id}`;
  const counts = ELEMENT_LISTS.flatMap((list) => {
    const count = refs.filter((ref) => ref.list === list).length;
    return count > 0 ? [`${count} ${count === 1 ? KINDS[list].one : KINDS[list].many}`] : [];
  });
  return counts.length > 2 ? `${refs.length} elements` : counts.join(' and ');
}
