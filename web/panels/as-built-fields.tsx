import { distance } from '../../routing/plane/space.ts';
import type { AsBuilt, Drop } from '../../routing/site/site.ts';
import { changeElements } from '../document/edits/change.ts';
import { recordAsBuilt } from '../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../document/use-document.ts';
import { nearestInch } from '../words/lengths.ts';
import { Fact, Facts } from './facts.tsx';
import { PlaceFields, TextField } from './fields.tsx';

const twoFigures = (part: number): string => String(part).padStart(2, '0');

/** The day on which it is, as it is written in a record. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${twoFigures(now.getMonth() + 1)}-${twoFigures(now.getDate())}`;
}

/** Feet within which a tape says the same: an eighth of an inch. */
const AS_DRAWN = 1 / 96;

const notADay = (text: string): string | null =>
  text === '' || (/^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text)))
    ? null
    : 'expected a day such as 2026-05-31';

/** What the tape said at a drop, when and by which words; beside it, how far that is from what is drawn. */
export function AsBuiltFields({ drop }: { readonly drop: Drop }) {
  const document = useDocumentStore();
  const units = useDocument((state) => state.site.units);
  const station = useDocument((state) => state.station);
  const found = useDocument((state) => state.site.asBuilt.get(drop.id));
  const record = (to: AsBuilt | null): void => {
    const { file, apply } = document.getState();
    apply(recordAsBuilt(file, drop.id, to));
  };
  const { box, retractor } = drop;
  if (!found) {
    if (station !== 'build') return null;
    return (
      <section className="fields" aria-label="As built">
        <h3>As built</h3>
        <button
          type="button"
          className="plain"
          onClick={() => record({ box, ...(retractor && { retractor }), checkedOn: today() })}
        >
          Hangs as drawn, checked today
        </button>
      </section>
    );
  }
  const change = (part: Partial<AsBuilt>): void => record({ ...found, ...part });
  const away = [
    found.box ? distance(found.box, box) : 0,
    found.retractor && retractor ? distance(found.retractor, retractor) : 0,
  ];
  const moved = Math.max(...away);
  return (
    <section className="fields" aria-label="As built">
      <h3>As built</h3>
      <Facts>
        <Fact name="from the drawing">{moved < AS_DRAWN ? 'as drawn' : `${nearestInch(moved, units)} away`}</Fact>
      </Facts>
      <PlaceFields label="box as built" value={found.box ?? box} onChange={(next) => change({ box: next })} />
      {retractor && (
        <PlaceFields
          label="retractor as built"
          value={found.retractor ?? retractor}
          onChange={(next) => change({ retractor: next })}
        />
      )}
      <TextField
        label="checked on"
        value={found.checkedOn ?? ''}
        check={notADay}
        onChange={(checkedOn) => {
          const { checkedOn: _, ...rest } = found;
          record(checkedOn === '' ? rest : { ...rest, checkedOn });
        }}
      />
      <TextField
        label="note"
        value={found.note ?? ''}
        onChange={(note) => {
          const { note: _, ...rest } = found;
          record(note === '' ? rest : { ...rest, note });
        }}
      />
      {moved >= AS_DRAWN && (
        <button
          type="button"
          className="plain"
          onClick={() => {
            const { file, apply } = document.getState();
            const to = {
              ...(found.box && { box: found.box }),
              ...(found.retractor && retractor && { retractor: found.retractor }),
            };
            apply(changeElements(file, [{ list: 'drops', id: drop.id }], to));
          }}
        >
          Draw it where it was built
        </button>
      )}
      <button type="button" className="plain" onClick={() => record(null)}>
        Forget the record
      </button>
    </section>
  );
}
