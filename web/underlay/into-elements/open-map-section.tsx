import { useMemo, useState } from 'react';
import { openMapOf } from '../../../routing/site/import/open-map.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Underlay } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import type { UnderlayPicture } from '../painting/picture.ts';
import { bringInGround, drawRows, lotOnSite } from './open-map-edit.ts';
import { Sketch } from './sketch.tsx';

/** What an open map tells of a parking lot: its aisles and buildings, and a first row offered along each kerb. */
export function OpenMapIn({ underlay, picture }: { readonly underlay: Underlay; readonly picture: UnderlayPicture }) {
  const document = useDocumentStore();
  const units = useDocument((state) => state.site.units);
  const [without, setWithout] = useState<ReadonlySet<number>>(new Set());
  const { features, ground } = picture;
  const map = useMemo(() => openMapOf(features ?? []), [features]);
  const lot = useMemo(() => (ground ? lotOnSite(map, underlay, ground) : null), [map, underlay, ground]);
  if (!lot || map.lots.length === 0) return null;
  const { rows, aisles, buildings } = lot;
  const wanted = rows.filter((_, i) => !without.has(i));
  const stalls = wanted.reduce((sum, row) => sum + row.stalls.length, 0);
  return (
    <details className="turn-into" open>
      <summary>{counted(map.lots.length, 'parking lot')} of an open map</summary>
      <p className="quiet">
        {counted(aisles.length, 'piece')} of aisle, {counted(buildings.length, 'building')}. Check widths on the ground.
      </p>
      <button
        type="button"
        disabled={aisles.length + buildings.length === 0}
        onClick={() => document.getState().applyLarge(bringInGround(document.getState().file, lot))}
      >
        Bring in its aisles and buildings
      </button>
      <fieldset className="turn-layers">
        <legend>a first row along each kerb</legend>
        {rows.map(({ from, to, stalls: own }, i) => (
          <label key={`${from.join()} ${to.join()}`}>
            <input
              type="checkbox"
              checked={!without.has(i)}
              onChange={() => {
                const next = new Set(without);
                if (!next.delete(i)) next.add(i);
                setWithout(next);
              }}
            />
            {counted(own.length, 'stall')} along{' '}
            <span className="quiet">{printLength(Math.hypot(to[0] - from[0], to[1] - from[1]), units)}</span>
          </label>
        ))}
      </fieldset>
      <Sketch
        says={`Sketch: ${stalls} stalls along ${wanted.length} kerbs`}
        made={wanted.flatMap((row) =>
          row.stalls.map((stall) => ({ points: stallRectangle({ id: '', ...stall }), closed: true })),
        )}
        rest={buildings.map((points) => ({ points, closed: true }))}
      />
      <button
        type="button"
        disabled={stalls === 0}
        onClick={async () => {
          const { file, applyLarge, select } = document.getState();
          const edit = drawRows(file, wanted);
          if (await applyLarge(edit)) select(insertedBy(edit));
        }}
      >
        Draw {counted(stalls, 'stall')}
      </button>
    </details>
  );
}
