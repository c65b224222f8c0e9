import { useMemo, useState } from 'react';
import type { ImportedLine } from '../../../routing/site/import/imported.ts';
import { TURN_KINDS, type TurnKind } from '../../../routing/site/import/turn-into.ts';
import type { Underlay } from '../../../routing/site/site.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, LengthField } from '../../parts/fields.tsx';
import type { UnderlayPicture } from '../painting/picture.ts';
import { linesPerLayer } from '../reading/packed-lines.ts';
import { turnEdit, turnedCount, turnedFrom } from './turn-into-edit.ts';
import { TurnIntoSketch } from './turn-into-sketch.tsx';

const WORDS: Readonly<Record<TurnKind, string>> = {
  stalls: 'stalls',
  columns: 'columns',
  keepouts: 'keep-outs',
  aisles: 'aisles',
  raceways: 'raceways',
  gridlines: 'gridlines',
};

const FITS: Readonly<Record<TurnKind, string>> = {
  stalls:
    'Outlines and stripes of stalls of 7 to 13 ft by 14 to 24 ft, square or slanted, become stalls; numbers inside them are their labels.',
  columns: 'Closed shapes and circles up to 6 ft become columns.',
  keepouts:
    'Closed lines, and lines that meet end to end, become keep-outs for raceways, drops and equipment: islands, light poles.',
  aisles: 'Closed lines, and lines that meet end to end, become aisles.',
  raceways: 'Lines become raceways, joined where they touch.',
  gridlines: 'Long lines that end in a bubble with a letter or number become gridlines, in place of those there are.',
};

const leftOver = (lines: number): string =>
  lines === 1 ? '1 line does not fit' : `${lines.toLocaleString('en-US')} lines do not fit`;

/** Turns lines of the underlay into elements of the site, by layer. */
export function TurnInto({ underlay, picture }: { readonly underlay: Underlay; readonly picture: UnderlayPicture }) {
  const document = useDocumentStore();
  const [kind, setKind] = useState<TurnKind>('stalls');
  const [layers, setLayers] = useState<ReadonlySet<string>>(new Set());
  const [elevation, setElevation] = useState(10);
  const [flip, setFlip] = useState(false);
  const [left, setLeft] = useState<readonly ImportedLine[] | null>(null);
  const { lines } = picture;
  const turned = useMemo(
    () => (layers.size > 0 || left ? turnedFrom(underlay, picture, { kind, layers, elevation, flip, left }) : null),
    [underlay, picture, kind, layers, elevation, flip, left],
  );
  if (!lines) return null;
  const count = turned ? turnedCount(turned, kind) : 0;
  const toggle = (layer: string): void => {
    const next = new Set(layers);
    if (!next.delete(layer)) next.add(layer);
    setLayers(next);
    setLeft(null);
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
          {turned.rest.length > 0 && `, ${leftOver(turned.rest.length)}`}.
        </p>
      )}
      {turned && <TurnIntoSketch turned={turned} kind={kind} />}
      {left && (
        <label className="turn-flip">
          <input type="checkbox" checked onChange={() => setLeft(null)} />
          only the {left.length.toLocaleString('en-US')} lines that were left over
        </label>
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
          // What was not understood can be turned into something else.
          setLeft(turned.rest.length > 0 ? turned.rest : null);
          if (kind !== 'gridlines') select(insertedBy(edit));
        }}
      >
        Turn into {count > 0 ? `${count.toLocaleString('en-US')} ` : ''}
        {WORDS[kind]}
      </button>
    </details>
  );
}
