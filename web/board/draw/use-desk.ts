import { useMemo } from 'react';
import { useDocumentStore } from '../../document/use-document.tsx';
import { usePageStore } from '../../page-state/page-store.ts';
import { useViewStore } from '../view-store.ts';
import type { Desk } from './desk.ts';

/** The stores that the drawing actions work on. */
export function useDesk(): Desk {
  const document = useDocumentStore();
  const view = useViewStore();
  const page = usePageStore();
  return useMemo(() => ({ document, view, page }), [document, view, page]);
}
