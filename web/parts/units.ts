import { createContext, useContext } from 'react';
import type { Units } from '../../routing/site/schema/vocabulary.ts';

const UnitsContext = createContext<Units | null>(null);

/** Says in which units lengths are shown and typed below it. */
export const UnitsProvider = UnitsContext.Provider;

export function useUnits(): Units {
  const units = useContext(UnitsContext);
  if (units === null) throw new RangeError('a field for a length stands outside UnitsProvider');
  return units;
}
