import type { Saying } from '../../routing/site/records/new-mark.ts';
import { type Registers, registersOf } from '../../routing/site/records/registers.ts';
import { recordMarks } from '../document/edits/records.ts';
import { penHere } from '../document/pen.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';

/** What was written down of the open site as it stands, and the way to write more. */
export function useMarks(): {
  readonly registers: Registers;
  readonly write: (name: string, ...sayings: Saying[]) => void;
} {
  const document = useDocumentStore();
  const records = useDocument((state) => state.site.records);
  return {
    registers: registersOf(records),
    write: (name, ...sayings) => {
      const { file, apply } = document.getState();
      apply(recordMarks(file, name, sayings, penHere()));
    },
  };
}
