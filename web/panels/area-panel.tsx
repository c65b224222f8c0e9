import { aisleClearHeight } from '../../routing/checks/drops/clear-height.ts';
import { printLength } from '../../routing/site/feet-inches.ts';
import type { Aisle, Point2 } from '../../routing/site/site.ts';
import { AISLE_KINDS, AISLE_WORDS, KEEPOUT_BLOCKS } from '../../routing/site/vocabulary.ts';
import { useDocument } from '../document/use-document.tsx';
import { FieldGroup } from '../parts/field-group.tsx';
import { ChoiceField, PlaceFields } from '../parts/fields.tsx';
import { MaybeLength } from '../parts/maybe-fields.tsx';
import { ChecksField } from './checks-field.tsx';
import { Fact, Facts, OwnFindings } from './facts.tsx';
import { useChange, useElement } from './use-element.ts';

interface PanelProps {
  readonly id: string;
}

/** A keep-out: what it keeps out, between which elevations, and its corners. */
export function KeepoutPanel({ id }: PanelProps) {
  const keepout = useElement('keepouts', id);
  const change = useChange('keepouts', id);
  if (!keepout) return null;
  return (
    <>
      <FieldGroup name="Keep-out">
        <ChecksField
          label="keeps out"
          choices={KEEPOUT_BLOCKS}
          value={keepout.blocks}
          onChange={(blocks) => change({ blocks })}
        />
        <MaybeLength
          label="from"
          none="grade and below"
          value={keepout.from ?? null}
          onChange={(from) => change({ from: from ?? undefined })}
        />
        <MaybeLength
          label="to"
          none="any height"
          value={keepout.to ?? null}
          onChange={(to) => change({ to: to ?? undefined })}
        />
        <Corners outline={keepout.outline} onChange={(outline) => change({ outline })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

export function AislePanel({ id }: PanelProps) {
  const aisle = useElement('aisles', id);
  const change = useChange('aisles', id);
  const { rules, units } = useDocument((state) => state.site);
  if (!aisle) return null;
  return (
    <>
      <Facts>
        <Fact name="clear height">{printLength(aisleClearHeight(aisle, rules), units)}</Fact>
      </Facts>
      <FieldGroup name="Aisle">
        <ChoiceField
          label="kind"
          value={aisle.kind ?? 'drive'}
          choices={AISLE_KINDS}
          words={(each) => AISLE_WORDS[each]}
          onChange={(kind) => change({ kind: kind === 'drive' ? undefined : kind })}
        />
        <Corners outline={aisle.outline} onChange={(outline) => change({ outline })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

interface CornersProps {
  readonly outline: Aisle['outline'];
  readonly onChange: (outline: Aisle['outline']) => void;
}

/** The corners of an outline, each with its place; one is added half way to the next. */
function Corners({ outline, onChange }: CornersProps) {
  const put = (corners: readonly Point2[]): void => onChange(corners as unknown as Aisle['outline']);
  return (
    <>
      {outline.map((corner, index) => (
        <div key={index}>
          <PlaceFields
            label={`corner ${index + 1}`}
            value={corner}
            onChange={(next) => put(outline.map((was, i) => (i === index ? next : was)))}
          />
          <p className="row-acts">
            <button type="button" className="plain" onClick={() => put(withCorner(outline, index))}>
              Add one after it
            </button>
            {outline.length > 3 && (
              <button type="button" className="plain" onClick={() => put(outline.filter((_, i) => i !== index))}>
                Take away
              </button>
            )}
          </p>
        </div>
      ))}
    </>
  );
}

function withCorner(outline: readonly Point2[], index: number): Point2[] {
  const [ax, ay] = outline[index]!;
  const [bx, by] = outline[(index + 1) % outline.length]!;
  return outline.toSpliced(index + 1, 0, [(ax + bx) / 2, (ay + by) / 2]);
}
