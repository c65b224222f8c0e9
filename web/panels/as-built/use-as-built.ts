import { awayFromDrawing, dropAsBuilt } from '../../../routing/site/place/as-built.ts';
import type { AsBuilt, Drop } from '../../../routing/site/site.ts';
import { recordAsBuilt } from '../../document/edits/records/records.ts';
import { initialsHere, penHere, setInitialsHere, today } from '../../document/pen.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { useSigned } from '../../page-state/use-signed.ts';

/** New values of a record; one that is undefined or an empty text is taken away. */
export type RecordPatch = { readonly [K in keyof AsBuilt]?: AsBuilt[K] | undefined };

interface AsBuiltRecord {
  readonly found: AsBuilt | undefined;
  /** The drop as measured, as far as it was. */
  readonly built: Drop;
  /** Feet from the drawing. */
  readonly away: number;
  /** Writes what was measured: it is checked on that day. */
  readonly measured: (part: RecordPatch) => void;
  /** Writes what is said of it, which makes it no measurement. */
  readonly noted: (part: RecordPatch) => void;
  readonly forget: () => void;
}

/** The record of a drop and the ways to write it. */
export function useAsBuilt(drop: Drop): AsBuiltRecord {
  const document = useDocumentStore();
  const signed = useSigned();
  const found = useDocument((state) => state.site.asBuilt.get(drop.id));
  const write = (part: RecordPatch): void => {
    if (part.checkedBy) setInitialsHere(part.checkedBy);
    signed(() => written(part));
  };
  const written = (part: RecordPatch): void => {
    // As it stands by now: what is written may have waited for a name, and other things with it.
    const { file, site, apply } = document.getState();
    const held = Object.entries({ ...site.asBuilt.get(drop.id), ...part }).filter(
      ([, value]) => value !== undefined && value !== '',
    );
    apply(recordAsBuilt(file, drop.id, held.length > 0 ? (Object.fromEntries(held) as AsBuilt) : null, penHere()));
  };
  return {
    found,
    built: dropAsBuilt(drop, found),
    away: awayFromDrawing(drop, found),
    measured: (part) => {
      const day = found?.checkedOn ?? today();
      write({ checkedOn: day, checkedBy: found?.checkedBy ?? initialsHere(), ...part });
    },
    noted: write,
    forget: () => write({ box: undefined, retractor: undefined, checkedOn: undefined, checkedBy: undefined, note: '' }),
  };
}
