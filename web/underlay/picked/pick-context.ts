import { createContext, useContext } from 'react';

/** What a picked file is to be: one more underlay, or the one at a place, counted from the lowest. */
export type PickedFor = 'one more' | number;

const PickContext = createContext<((how: PickedFor) => void) | null>(null);
/** Gives what is below it the way to lay a file under the drawing. */
export const PickProvider = PickContext.Provider;

export function usePickUnderlay(): (how: PickedFor) => void {
  const pick = useContext(PickContext);
  if (!pick) throw new RangeError('a component that picks an underlay stands outside PickProvider');
  return pick;
}
