import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import { UnitsProvider } from '../parts/units.ts';
import type { DocumentState } from './document-state.ts';
import { pacedStore } from './paced.ts';
import type { DocumentStore } from './store.ts';

const DocumentContext = createContext<DocumentStore | null>(null);

/** Gives the open document to the components below it, and its units to their fields. */
export function DocumentProvider({ value, children }: { readonly value: DocumentStore; readonly children: ReactNode }) {
  const units = useStore(pacedOf(value), (state) => state.site.units);
  return (
    <DocumentContext.Provider value={value}>
      <UnitsProvider value={units}>{children}</UnitsProvider>
    </DocumentContext.Provider>
  );
}

/** The store of the open document, for event handlers and for drawing outside React. */
export function useDocumentStore(): DocumentStore {
  const store = useContext(DocumentContext);
  if (!store) throw new RangeError('a component that reads the document stands outside DocumentProvider');
  return store;
}

const paced = new WeakMap<DocumentStore, ReturnType<typeof pacedStore>>();

function pacedOf(store: DocumentStore): ReturnType<typeof pacedStore> {
  let its = paced.get(store);
  if (!its) {
    its = pacedStore(store);
    paced.set(store, its);
  }
  return its;
}

/** Part of the open document's state, a drag at a pace that can be read; drawn anew when that part changes. */
export function useDocument<T>(part: (state: DocumentState) => T): T {
  return useStore(pacedOf(useDocumentStore()), part);
}
