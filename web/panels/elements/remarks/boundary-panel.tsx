import { MOST_BOUNDARY_NAME } from '../../../../routing/site/kinds/boundaries.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { BOUNDARY_KINDS, BOUNDARY_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import { boundaryDistance, isSetOut } from '../../../../routing/standing/boundary-distance.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, TextField } from '../../../parts/fields.tsx';
import { MaybeLength } from '../../../parts/maybe-fields.tsx';
import { useOptions } from '../../draw/use-options.ts';
import { Fact, Facts, OwnFindings } from '../../facts/facts.tsx';
import { useChange, useElement } from '../use-element.ts';
import { Vertices } from '../vertices.tsx';

const fits = (name: string): string | null =>
  name.length > MOST_BOUNDARY_NAME ? `A name has no more than ${MOST_BOUNDARY_NAME} letters.` : null;

/** A boundary: what it bounds, its name, how far equipment must stay from it, and its corners. */
export function BoundaryPanel({ id }: { readonly id: string }) {
  const boundary = useElement('boundaries', id);
  const change = useChange('boundaries', id);
  const site = useDocument((state) => state.site);
  if (!boundary) return null;
  const { kind = 'property', name = '', setback, path } = boundary;
  const near = site.equipment
    .filter(isSetOut)
    .map((one) => ({ one, feet: boundaryDistance(one, boundary).feet }))
    .sort((a, b) => a.feet - b.feet);
  return (
    <>
      <Facts>
        {near.slice(0, 4).map(({ one, feet }) => (
          <Fact key={one.id} name={`to ${one.id}`}>
            {printLength(feet, site.units)}
          </Fact>
        ))}
      </Facts>
      <FieldGroup name="Boundary">
        <ChoiceField
          label="kind"
          value={kind}
          choices={BOUNDARY_KINDS}
          words={(each) => BOUNDARY_WORDS[each]}
          onChange={(next) => change({ kind: next })}
        />
        <TextField
          label="label"
          check={fits}
          value={name}
          onChange={(next) => change({ name: next.trim() === '' ? undefined : next })}
        />
        <MaybeLength
          label="setback"
          none="none stated"
          least={0}
          value={setback ?? null}
          onChange={(next) => change({ setback: next ?? undefined })}
        />
        <Vertices path={path} onChange={(next) => change({ path: next })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

/** The boundary that is drawn next. */
export function BoundaryForm() {
  const [{ kind }, change] = useOptions('boundary');
  return (
    <FieldGroup name="Boundary" label="Boundary to draw">
      <ChoiceField
        label="kind"
        value={kind}
        choices={BOUNDARY_KINDS}
        words={(each) => BOUNDARY_WORDS[each]}
        onChange={(next) => change({ kind: next })}
      />
    </FieldGroup>
  );
}
