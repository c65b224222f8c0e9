import type { DocumentStore } from '../../../web/document/store.ts';

/** What the document is, without the view of it. */
export const documentOf = (store: DocumentStore) => {
  const { file, site, plan: planned, undoName, redoName } = store.getState();
  return { file, site, plan: planned, undoName, redoName };
};
