import { useDocument } from '../document/use-document.tsx';
import { whenAsked } from '../page-state/when-asked.tsx';
import { usePickUnderlay } from './picked/pick-context.ts';
import { chosenLayer, useUnderlay } from './underlay-store.ts';
import { underlaysOf } from './underlays.ts';

const UnderlayFields = whenAsked(async () => (await import('./underlay-fields.tsx')).UnderlayFields);
const UnderlayList = whenAsked(async () => (await import('./underlay-list.tsx')).UnderlayList);

/** The part of the ledger that speaks of what lies under the drawing. */
export function UnderlaySection() {
  const underlays = useDocument((state) => underlaysOf(state.site));
  const chosen = useUnderlay((state) => state.chosen);
  const layer = useUnderlay(chosenLayer);
  const reading = useUnderlay((state) => state.reading);
  const pick = usePickUnderlay();
  const underlay = underlays[chosen];
  const { kind, says } = layer ?? { kind: 'none', says: null };
  return (
    <section className="underlay" aria-label="Underlay" data-testid="underlay" data-state={kind}>
      <h3>{underlays.length > 1 ? 'Underlays' : 'Underlay'}</h3>
      {underlays.length > 1 && <UnderlayList underlays={underlays} />}
      {reading && (
        <p role="status" className="underlay-reading">
          <span>Reading {reading.file}</span>
          <progress max={1} value={reading.share} aria-label={`Reading ${reading.file}`} />
          <button type="button" className="plain" onClick={reading.stop}>
            Stop
          </button>
        </p>
      )}
      {underlay ? (
        <>
          <p className="underlay-file">{underlay.file}</p>
          {says && (
            <p role="status" className={kind === 'failed' ? 'wrong' : 'quiet'}>
              {says}
            </p>
          )}
          {(kind === 'missing' || kind === 'failed') && (
            <button type="button" onClick={() => pick(chosen)}>
              Pick the file…
            </button>
          )}
          <UnderlayFields key={chosen} underlay={underlay} />
          <button type="button" onClick={() => pick('one more')}>
            Lay another over it…
          </button>
        </>
      ) : (
        <>
          <p className="quiet">
            A site plan or picture to draw over: PNG, JPEG, PDF, DXF, SVG or GeoJSON. It stays in this browser; the site
            file says which it is and how it lies.
          </p>
          <button type="button" onClick={() => pick('one more')}>
            Put a site plan underneath…
          </button>
        </>
      )}
    </section>
  );
}
