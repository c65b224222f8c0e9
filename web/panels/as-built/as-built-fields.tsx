import { MAX_SAID } from '../../../routing/site/schema/mark-schema.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { drawAsBuilt } from '../../document/edits/records/draw-as-built.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { TextField } from '../../parts/fields.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { Fact, Facts } from '../facts/facts.tsx';
import { AsBuiltResults } from './results.tsx';
import { TapedPlace } from './taped-place.tsx';
import { useAsBuilt } from './use-as-built.ts';

/** Feet within which a tape says the same: an eighth of an inch. */
const AS_DRAWN = 1 / 96;

const notADay = (text: string): string | null =>
  text === '' || (/^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text)))
    ? null
    : 'a day such as 2026-05-31';

const tooLong = (text: string): string | null => (text.length <= 12 ? null : 'initials, 12 letters or fewer');

const tooMuch = (text: string): string | null => (text.length <= MAX_SAID ? null : `${MAX_SAID} letters or fewer`);

/** What the tape said at a drop, when and by whom; beside it, how far that is from what is drawn and what it does. */
export function AsBuiltFields({ drop }: { readonly drop: Drop }) {
  const inField = useDocument(keepsDrawing);
  const { found } = useAsBuilt(drop);
  if (!found && !inField) return null;
  return (
    <section className="fields as-built" aria-label="As built">
      <h3>As built</h3>
      <Standing drop={drop} />
      <AsBuiltResults drop={drop} />
      <HangsAsDrawn drop={drop} />
      <MeasuredPlaces drop={drop} />
      <CheckedFields drop={drop} />
      <NoteField drop={drop} />
      <RecordActs drop={drop} />
    </section>
  );
}

/** How what was measured stands to the drawing, in words. */
export function asBuiltWords({ found, away }: ReturnType<typeof useAsBuilt>, units: 'ft' | 'm'): string {
  if (!found?.box && !found?.retractor) return found?.checkedOn ? 'checked, no place written' : 'not yet measured';
  return away < AS_DRAWN ? 'as drawn' : `${nearestInch(away, units)} away`;
}

function Standing({ drop }: { readonly drop: Drop }) {
  const record = useAsBuilt(drop);
  const units = useDocument((state) => state.site.units);
  return (
    <Facts>
      <Fact name="from the drawing">{asBuiltWords(record, units)}</Fact>
    </Facts>
  );
}

function HangsAsDrawn({ drop }: { readonly drop: Drop }) {
  const { found, measured } = useAsBuilt(drop);
  if (found?.box || found?.retractor) return null;
  const { box, retractor } = drop;
  return (
    <button type="button" className="plain" onClick={() => measured({ box, ...(retractor && { retractor }) })}>
      Hangs as drawn, checked today
    </button>
  );
}

/** Box and retractor by the tape. What is not written is taken as it is drawn. */
export function MeasuredPlaces({ drop }: { readonly drop: Drop }) {
  const { built, measured } = useAsBuilt(drop);
  return (
    <>
      <TapedPlace
        key={`${drop.id} box`}
        name="box"
        drawn={drop.box}
        value={built.box}
        onChange={(box) => measured({ box })}
      />
      {drop.retractor && built.retractor && (
        <TapedPlace
          key={`${drop.id} retractor`}
          name="retractor"
          drawn={drop.retractor}
          value={built.retractor}
          onChange={(retractor) => measured({ retractor })}
        />
      )}
    </>
  );
}

/** When it was measured, and by whom. */
export function CheckedFields({ drop }: { readonly drop: Drop }) {
  const { found, noted } = useAsBuilt(drop);
  return (
    <>
      <TextField
        label="checked on"
        value={found?.checkedOn ?? ''}
        check={notADay}
        onChange={(checkedOn) => noted({ checkedOn })}
      />
      <TextField
        label="initials"
        value={found?.checkedBy ?? ''}
        check={tooLong}
        onChange={(checkedBy) => noted({ checkedBy })}
      />
    </>
  );
}

export function NoteField({ drop }: { readonly drop: Drop }) {
  const { found, noted } = useAsBuilt(drop);
  return <TextField label="note" long value={found?.note ?? ''} check={tooMuch} onChange={(note) => noted({ note })} />;
}

export function RecordActs({ drop }: { readonly drop: Drop }) {
  const document = useDocumentStore();
  const { found, away, forget } = useAsBuilt(drop);
  if (!found) return null;
  return (
    <>
      {away >= AS_DRAWN && (
        <button
          type="button"
          className="plain"
          onClick={() => {
            const { file, apply } = document.getState();
            apply(drawAsBuilt(file, drop.id));
          }}
        >
          Draw it where it was built
        </button>
      )}
      <button type="button" className="plain" onClick={forget}>
        Forget the record
      </button>
    </>
  );
}
