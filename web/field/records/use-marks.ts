import type { Saying } from '../../../routing/site/records/new-mark.ts';
import { type Registers, registersOf } from '../../../routing/site/records/registers.ts';
import { recordMarks } from '../../document/edits/records/records.ts';
import { penHere } from '../../document/pen.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { useSigned } from '../../page-state/use-signed.ts';

/** What was written down of the open site as it stands, and the way to write more. */
export function useMarks(): {
  readonly registers: Registers;
  readonly write: (name: string, ...sayings: Saying[]) => void;
} {
  const document = useDocumentStore();
  const signed = useSigned();
  const records = useDocument((state) => state.site.records);
  return {
    registers: registersOf(records),
    write: (name, ...sayings) =>
      signed(() => {
        const { file, apply } = document.getState();
        apply(recordMarks(file, name, sayings, penHere()));
      }),
  };
}
