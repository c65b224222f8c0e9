import { kept } from '../../kept/kept.ts';
import { addTo } from '../../lists/grouping.ts';
import type { Mark } from '../site.ts';
import { broughtUp } from './brought-up.ts';
import { canonical, compareMarks } from './merge.ts';

/** All that was written of one thing: the place of a box, say, or that a drop was set. */
export interface Register {
  readonly of: string;
  readonly part?: string;
  readonly what: Mark['what'];
  /** What no other mark takes the place of, the latest first. */
  readonly heads: readonly [Mark, ...Mark[]];
  /** Its heads do not say the same: two people wrote it down without knowing of each other. */
  readonly conflict: boolean;
  /** What holds until somebody decides: the latest head. Null where that takes back what stood there. */
  readonly now: Mark | null;
}

type Address = Pick<Mark, 'of' | 'part' | 'what'>;

/** What registers are told apart by. */
export const addressOf = ({ of, part, what }: Address): string => JSON.stringify([of, what, part ?? null]);

export type Registers = ReadonlyMap<string, Register>;

/** The registers of a list of marks, by `addressOf`. They do not depend on the order of the list. */
export const registersOf = kept((marks: readonly Mark[]): Registers => {
  const groups = new Map<string, Mark[]>();
  for (const mark of broughtUp(marks)) {
    const address = addressOf(mark);
    addTo(groups, address, mark);
  }
  return new Map(
    [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([address, group]) => [address, registerOf(group)]),
  );
});

function registerOf(group: readonly Mark[]): Register {
  const replaced = new Set(group.flatMap(({ id, after = [] }) => after.filter((other) => other !== id)));
  const left = group.filter(({ id }) => !replaced.has(id));
  // Marks that take each other's places, in a file that was meddled with, all stand.
  const [first, ...rest] = (left.length > 0 ? left : [...group]).sort((a, b) => compareMarks(b, a)) as [
    Mark,
    ...Mark[],
  ];
  const { of, part, what } = first;
  const conflict = rest.some((other) => !saysTheSame(first, other));
  return {
    of,
    ...(part !== undefined && { part }),
    what,
    heads: [first, ...rest],
    conflict,
    now: first.gone ? null : first,
  };
}

const said = ({ gone, place, text, photo, line, reading }: Mark): string =>
  canonical([gone, place, text, photo, line, reading].map((each) => each ?? null));

/** Whether two marks of one register leave nothing to decide. Who wrote it, and when, is no difference. */
const saysTheSame = (a: Mark, b: Mark): boolean => said(a) === said(b);

/** Those in which two people say different things. */
export const conflictsOf = kept((marks: readonly Mark[]): readonly Register[] =>
  [...registersOf(marks).values()].filter(({ conflict }) => conflict),
);
