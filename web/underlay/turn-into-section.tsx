import { useState } from 'react';
import { TURN_KINDS, type TurnKind } from '../../routing/site/import/turn-into.ts';
import type { Underlay } from '../../routing/site/site.ts';
import { insertedBy } from '../document/change/selection.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { ChoiceField, LengthField } from '../parts/fields.tsx';
import { linesPerLayer } from './packed-lines.ts';
import type { UnderlayPicture } from './picture.ts';
import { turnEdit, turnedFrom } from './turn-into-edit.ts';

const WORDS: Readonly<Record<TurnKind, string>> = {
  stalls: 'stalls',
  columns: 'columns',
  keepouts: 'keep-outs',
  aisles: 'aisles',
  raceways: 'raceways',
};

const FITS: Readonly<Record<TurnKind, string>> = {
  stalls: 'Closed rectangles of 7 to 13 ft by 14 to 24 ft become stalls.',
  columns: 'Closed rectangles and circles up to 6 ft become columns.',
  keepouts: 'Closed lines become keep-outs for raceways, drops and equipment.',
  aisles: 'Closed lines become aisles.',
  raceways: 'Lines become raceways, joined where they touch.',
};

/** Turns lines of the underlay into elements of the site, by layer. */
export function TurnInto({ underlay, picture }: { readonly underlay: Underlay; readonly picture: UnderlayPicture }) {
  const document = useDocumentStore();
  const [kind, setKind] = useState<TurnKind>('stalls');
  const [layers, setLayers] = useState<ReadonlySet<string>>(new Set());
  const [elevation, setElevation] = useState(10);
  const [flip, setFlip] = useState(false);
  const { lines } = picture;
  if (!lines) return null;
  const turned = layers.size > 0 ? turnedFrom(underlay, lines, { kind, layers, elevation, flip }) : null;
  const count = turned?.[kind].length ?? 0;
  const toggle = (layer: string): void => {
    const next = new Set(layers);
    if (!next.delete(layer)) next.add(layer);
    setLayers(next);
  };
  return (
    <details className="turn-into">
      <summary>Turn its lines into elements</summary>
      <div className="fields">
        <ChoiceField label="into" value={kind} choices={TURN_KINDS} words={(each) => WORDS[each]} onChange={setKind} />
        {kind === 'raceways' && <LengthField label="elevation" value={elevation} onChange={setElevation} />}
      </div>
      <p className="quiet">{FITS[kind]}</p>
      <fieldset className="turn-layers">
        <legend>from the layers</legend>
        {linesPerLayer(lines).map(([layer, own]) => (
          <label key={layer}>
            <input type="checkbox" checked={layers.has(layer)} onChange={() => toggle(layer)} />
            {layer} <span className="quiet">{own.toLocaleString('en-US')}</span>
          </label>
        ))}
      </fieldset>
      {kind === 'stalls' && (
        <label className="turn-flip">
          <input type="checkbox" checked={flip} onChange={() => setFlip(!flip)} />
          heads at the other end
        </label>
      )}
      {turned && (
        <p role="status">
          {count.toLocaleString('en-US')} {WORDS[kind]}
          {turned.leftOut > 0 && `, ${turned.leftOut.toLocaleString('en-US')} lines do not fit`}.
        </p>
      )}
      <button
        type="button"
        disabled={count === 0}
        onClick={async () => {
          if (!turned) return;
          const { file, applyLarge, select } = document.getState();
          const edit = turnEdit(file, kind, turned);
          if (!(await applyLarge(edit))) return;
          setLayers(new Set());
          select(insertedBy(edit));
        }}
      >
        Turn into {count > 0 ? `${count.toLocaleString('en-US')} ` : ''}
        {WORDS[kind]}
      </button>
    </details>
  );
}
