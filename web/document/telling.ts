import { selected, stillThere } from './change/selection.ts';
import type { DocumentActions } from './document-state.ts';
import type { OpenDocument } from './open-document.ts';

type Telling = Pick<
  DocumentActions,
  'select' | 'setStation' | 'notify' | 'warn' | 'unwarn' | 'dismissProblems' | 'committed'
>;

/** The actions that leave the document as it is: what is selected, and what a person is told. */
export function telling(document: OpenDocument): Telling {
  const { set, get } = document;
  return {
    select: (refs, mode = 'replace') => {
      const selection = selected(get().selection, stillThere(get().file, refs), mode);
      if (selection !== get().selection) set({ selection });
    },
    setStation: (station) => set({ station }),
    notify: (notice) => set({ notice: notice ?? undefined }),
    warn: (alert) => set({ alerts: [...get().alerts.filter(({ says }) => says !== alert.says), alert] }),
    unwarn: (says) => set({ alerts: get().alerts.filter((alert) => alert.says !== says) }),
    dismissProblems: () => set({ problems: undefined }),
    committed: () => document.history,
  };
}
