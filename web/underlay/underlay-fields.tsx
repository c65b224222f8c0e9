import { useRef } from 'react';
import { METRES_PER_FOOT } from '../../routing/site/numbers/units.ts';
import type { Underlay } from '../../routing/site/site.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { ChoiceField, DegreesField, LengthField, NumberField, PlaceFields } from '../parts/fields.tsx';
import { ElementsIn } from './into-elements/elements-in-section.tsx';
import { OpenMapIn } from './into-elements/open-map-section.tsx';
import { TurnInto } from './into-elements/turn-into-section.tsx';
import type { UnderlayPicture } from './painting/picture.ts';
import { lieAsStated } from './placing/lie-as-stated.ts';
import { onSite, scaledAbout } from './placing/placement.ts';
import { PlacingActs } from './placing/placing-acts.tsx';
import { changeUnderlay, removeUnderlay, underlaysIfSame } from './underlay-edits.ts';
import { chosenLayer, useUnderlay, useUnderlayStore } from './underlay-store.ts';
import { useChangeUnderlay } from './use-change-underlay.ts';

/** How one of the underlays lies, and what can be drawn from it. */
export function UnderlayFields({ underlay }: { readonly underlay: Underlay }) {
  const document = useDocumentStore();
  const underlays = useUnderlayStore();
  const picture = useUnderlay((state) => chosenLayer(state)?.picture);
  const change = useChangeUnderlay(underlay);
  const { at, rotation = 0, locked = false, hidden = false, unprinted = false } = underlay;
  // Another page lies where it says, in the same step.
  const showPage = async (page: number): Promise<void> => {
    const { chosen } = underlays.getState();
    const stated = await picture?.ofPage?.(page).catch(() => null);
    const { file, site, apply } = document.getState();
    const now = underlaysIfSame(site, chosen, underlay);
    if (!now) return;
    const lies = picture && stated ? lieAsStated(now, stated, site.georef, picture) : {};
    apply(changeUnderlay(file, chosen, `Show page ${page}`, now, { page, ...lies }));
  };
  return (
    <>
      {picture?.notes.map((note) => (
        <p key={note} className="quiet">
          {note}
        </p>
      ))}
      {!locked && (
        <>
          {picture && <PlacingActs underlay={underlay} picture={picture} />}
          <div className="fields">
            {picture && <SizeField underlay={underlay} picture={picture} />}
            <PlaceFields label="lies at" value={at} onChange={(next) => change('Move underlay', { at: next })} />
            <DegreesField
              label="turned"
              value={rotation}
              decimals={4}
              onChange={(next) => change('Turn underlay', { rotation: ((next % 360) + 360) % 360 })}
            />
            {(picture?.pages ?? 1) > 1 && (
              <NumberField
                label={`page of ${picture?.pages}`}
                unit=""
                whole
                least={1}
                value={underlay.page ?? 1}
                onChange={(page) => void showPage(Math.min(page, picture?.pages ?? page))}
              />
            )}
          </div>
        </>
      )}
      <DimField underlay={underlay} />
      <div className="underlay-ticks">
        <label>
          <input
            type="checkbox"
            checked={locked}
            onChange={() => change(locked ? 'Unlock underlay' : 'Lock underlay', { locked: !locked })}
          />
          locked in place
        </label>
        <label>
          <input
            type="checkbox"
            checked={hidden}
            onChange={() => change(hidden ? 'Show underlay' : 'Hide underlay', { hidden: !hidden })}
          />
          hidden
        </label>
        <label>
          <input
            type="checkbox"
            checked={!unprinted}
            disabled={hidden}
            onChange={() =>
              change(unprinted ? 'Print underlay' : 'Leave underlay out of the drawing set', { unprinted: !unprinted })
            }
          />
          on the drawing set
        </label>
        <button
          type="button"
          className="plain"
          onClick={() => {
            const { file, apply } = document.getState();
            apply(removeUnderlay(file, underlays.getState().chosen));
          }}
        >
          Remove
        </button>
      </div>
      {picture?.features && <ElementsIn picture={picture} />}
      {picture?.features && <OpenMapIn underlay={underlay} picture={picture} />}
      {picture?.lines && <TurnInto underlay={underlay} picture={picture} />}
    </>
  );
}

/** The scale as one says it of this kind of file. */
function SizeField({ underlay, picture }: { readonly underlay: Underlay; readonly picture: UnderlayPicture }) {
  const change = useChangeUnderlay(underlay);
  const { box } = picture;
  const [label, unitsIn] =
    picture.perInch !== undefined
      ? [underlay.kind === 'pdf' ? 'an inch of the page is' : 'an inch of the sheet is', picture.perInch]
      : picture.lines
        ? [underlay.kind === 'geojson' ? 'a foot of it is' : 'a unit of it is', 1]
        : ['its width is', box.maxX - box.minX];
  // A drawing keeps its origin; a picture its middle, so that it does not jump off the board.
  const middle = picture.lines ? underlay.at : onSite(underlay, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
  return (
    <>
      {underlay.kind === 'dxf' && (
        <ChoiceField
          label="its unit"
          value={UNITS.find(([, feet]) => Math.abs(underlay.scale / feet - 1) < 1e-8)?.[0] ?? 'another'}
          choices={[...UNITS.map(([name]) => name), 'another']}
          words={(name) => name}
          onChange={(name) => {
            const feet = UNITS.find(([each]) => each === name)?.[1];
            if (feet) change('Scale underlay', scaledAbout(underlay, middle, feet / underlay.scale));
          }}
        />
      )}
      <LengthField
        label={label}
        value={underlay.scale * unitsIn}
        least={1e-5}
        onChange={(feet) => change('Scale underlay', scaledAbout(underlay, middle, feet / unitsIn / underlay.scale))}
      />
    </>
  );
}

/** Units that drawings are made in, feet in each; a US survey foot is 1200/3937 m. */
const UNITS: readonly (readonly [name: string, feet: number])[] = [
  ['inches', 1 / 12],
  ['feet', 1],
  ['US survey feet', 1200 / 3937 / METRES_PER_FOOT],
  ['millimeters', 0.001 / METRES_PER_FOOT],
  ['centimeters', 0.01 / METRES_PER_FOOT],
  ['meters', 1 / METRES_PER_FOOT],
];

function DimField({ underlay }: { readonly underlay: Underlay }) {
  const document = useDocumentStore();
  const underlays = useUnderlayStore();
  const held = useRef<Underlay | null>(null);
  const settle = (): void => {
    if (!held.current) return;
    held.current = null;
    document.getState().commitPreview();
  };
  return (
    <label className="underlay-dim">
      faded
      <input
        type="range"
        min={0}
        max={95}
        step={5}
        value={Math.round((underlay.dim ?? 0.5) * 100)}
        onChange={(event) => {
          held.current ??= underlay;
          const { committed, preview } = document.getState();
          const dim = Number(event.target.value) / 100;
          preview(
            changeUnderlay(committed().file, underlays.getState().chosen, 'Fade underlay', held.current, { dim }),
          );
        }}
        onPointerUp={settle}
        onKeyUp={settle}
        onBlur={settle}
      />
    </label>
  );
}
