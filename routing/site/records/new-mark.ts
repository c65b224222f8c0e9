import type { Mark } from '../site.ts';
import { drawingOf } from './brought-up.ts';
import { nextTime } from './merge.ts';
import { addressOf, registersOf } from './registers.ts';

/** The author of a mark, and the time by the clock of their device. */
export interface Author {
  readonly by: string;
  readonly on?: string;
}

/** What is written down: of what, and what of it. */
export type Saying = Pick<
  Mark,
  'of' | 'part' | 'what' | 'gone' | 'place' | 'from' | 'text' | 'photo' | 'line' | 'reading'
>;

/**
 * New marks, each in the place of all that its author knew of the same thing. `newId` gives names that nobody else gives.
 * Those that are made in one act have one logical time.
 */
export function newMarks(
  known: readonly Mark[],
  sayings: readonly Saying[],
  { by, on }: Author,
  newId: () => string,
): readonly Mark[] {
  const registers = registersOf(known);
  const [time, drawing] = [nextTime(known), drawingOf(known)];
  return sayings.map((saying) => {
    const after = registers.get(addressOf(saying))?.heads.map(({ id }) => id) ?? [];
    return {
      id: newId(),
      ...saying,
      by,
      time,
      ...(on !== undefined && { on }),
      ...(after.length > 0 && { after }),
      ...(drawing > 0 && { drawing }),
    };
  });
}
