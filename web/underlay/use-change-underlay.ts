import type { Underlay } from '../../routing/site/site.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { changeUnderlay } from './underlay-edits.ts';
import { useUnderlayStore } from './underlay-store.ts';

/** Changes how the chosen underlay lies, as one step under a name. */
export function useChangeUnderlay(underlay: Underlay): (name: string, patch: Partial<Underlay>) => void {
  const document = useDocumentStore();
  const underlays = useUnderlayStore();
  return (name, patch) => {
    const { file, apply } = document.getState();
    apply(changeUnderlay(file, underlays.getState().chosen, name, underlay, patch));
  };
}
