import type { Edit } from '../../document/change/edit.ts';
import { nameSite, setField } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { NumberField, TextField } from '../../parts/fields.tsx';
import { DrawingsForm } from './drawings-form.tsx';
import { GridlinesForm } from './gridlines-form.tsx';
import { ProjectForm } from './project-form.tsx';
import { RulesForm } from './rules-form.tsx';
import { VehiclesForm } from './vehicles-form.tsx';

/** What the file says of the site as a whole. */
export function SiteForm() {
  return (
    <section aria-label="The site">
      <h3>The site</h3>
      <NameAndPlace />
      <ProjectForm />
      <DrawingsForm />
      <GridlinesForm />
      <RulesForm />
      <VehiclesForm />
    </section>
  );
}

function NameAndPlace() {
  const document = useDocumentStore();
  const file = useDocument((state) => state.file);
  const apply = (edit: Edit): void => {
    document.getState().apply(edit);
  };
  const { georef } = file;
  const place = (patch: Partial<NonNullable<typeof georef>>): void =>
    apply(setField(file, 'Change where the site lies', 'georef', { lon: 0, lat: 0, bearing: 0, ...georef, ...patch }));
  return (
    <div className="fields">
      <TextField label="name" long value={file.name} onChange={(name) => apply(nameSite(file, name))} />
      <TextField
        label="note"
        long
        value={file.note ?? ''}
        onChange={(note) => apply(setField(file, 'Change the note', 'note', note === '' ? undefined : note))}
      />
      {georef ? (
        <>
          <NumberField
            label="longitude"
            unit="degrees"
            least={-180}
            most={180}
            value={georef.lon}
            onChange={(lon) => place({ lon })}
          />
          <NumberField
            label="latitude"
            unit="degrees"
            least={-90}
            most={90}
            value={georef.lat}
            onChange={(lat) => place({ lat })}
          />
          <NumberField
            label="bearing of up"
            unit="degrees"
            least={Number.NEGATIVE_INFINITY}
            value={georef.bearing}
            onChange={(bearing) => place({ bearing })}
          />
          <button
            type="button"
            className="plain"
            onClick={() => apply(setField(file, 'Forget where the site lies', 'georef', undefined))}
          >
            Forget where it lies
          </button>
        </>
      ) : (
        <button type="button" className="plain" onClick={() => place({})}>
          Say where on the ground it lies
        </button>
      )}
    </div>
  );
}
