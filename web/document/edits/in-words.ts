import { ELEMENT_LISTS } from '../../../routing/site/schema.ts';
import type { ListName, Ref } from '../element-lists.ts';

const WORDS: Readonly<Record<ListName, readonly [one: string, many: string]>> = {
  stalls: ['stall', 'stalls'],
  columns: ['column', 'columns'],
  members: ['member', 'members'],
  keepouts: ['keep-out', 'keep-outs'],
  aisles: ['aisle', 'aisles'],
  equipment: ['equipment', 'pieces of equipment'],
  feeders: ['feeder', 'feeders'],
  loads: ['load', 'loads'],
  raceways: ['raceway', 'raceways'],
  pullpoints: ['pull point', 'pull points'],
  drops: ['drop', 'drops'],
  chargers: ['charger', 'chargers'],
};

/** The trade's word for an element of a list. */
export const wordFor = (list: ListName): string => WORDS[list][0];

/** What refs hold, for an edit's name: "drop D03", "12 drops", "4 stalls and 2 columns", "31 elements". */
export function inWords(refs: readonly Pick<Ref, 'list' | 'id'>[]): string {
  const [first] = refs;
  if (first && refs.length === 1) return `${WORDS[first.list][0]} ${first.id}`;
  const counts = ELEMENT_LISTS.flatMap((list) => {
    const count = refs.filter((ref) => ref.list === list).length;
    return count > 0 ? [`${count} ${WORDS[list][count === 1 ? 0 : 1]}`] : [];
  });
  return counts.length > 2 ? `${refs.length} elements` : counts.join(' and ');
}
