import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { DocumentState } from './document-state.ts';
import type { DocumentStore } from './store.ts';

const DocumentContext = createContext<DocumentStore | null>(null);

/** Gives the open document to the components below it. */
export const DocumentProvider = DocumentContext.Provider;

/** The store of the open document, for event handlers and for drawing outside React. */
export function useDocumentStore(): DocumentStore {
  const store = useContext(DocumentContext);
  if (!store) throw new RangeError('a component that reads the document stands outside DocumentProvider');
  return store;
}

/** Part of the open document's state; the component is drawn anew when that part changes. */
export function useDocument<T>(part: (state: DocumentState) => T): T {
  return useStore(useDocumentStore(), part);
}
