import { INLET_SIDES } from '../../../routing/site/schema/vocabulary.ts';
import type { Inlet, Vehicle } from '../../../routing/site/site.ts';
import { setVehicles } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, LengthField, NumberField, TextField } from '../../parts/fields.tsx';

type Classes = Readonly<Record<string, Vehicle>>;

/** The site's own classes of vehicles: how large they are and where their inlets lie. The built-in ones stand beside. */
export function VehiclesForm() {
  const document = useDocumentStore();
  const file = useDocument((state) => state.file);
  const all = useDocument((state) => state.site.vehicles);
  const usual = useDocument((state) => state.site.rules.vehicle);
  const own: Classes = Object.fromEntries(
    Object.keys(file.vehicles ?? {}).flatMap((name) => {
      const vehicle = all.get(name);
      return vehicle ? [[name, vehicle]] : [];
    }),
  );
  const put = (classes: Classes): void => {
    const state = document.getState();
    state.apply(setVehicles(state.file, classes as Parameters<typeof setVehicles>[1]));
  };
  const add = (): void => {
    const from = all.get(usual) ?? [...all.values()][0];
    let n = 1;
    while (all.has(`own ${n}`)) n++;
    if (from) put({ ...own, [`own ${n}`]: from });
  };
  return (
    <details className="site-form">
      <summary>Vehicles</summary>
      <p className="quiet">Built in: {[...all.keys()].filter((name) => !Object.hasOwn(own, name)).join(', ')}.</p>
      {Object.entries(own).map(([name, vehicle]) => (
        <VehicleFields
          key={name}
          name={name}
          vehicle={vehicle}
          taken={(to) => to !== name && all.has(to)}
          onRename={(to) =>
            put(Object.fromEntries(Object.entries(own).map(([was, each]) => [was === name ? to : was, each])))
          }
          onChange={(next) => put({ ...own, [name]: next })}
          onRemove={() => put(Object.fromEntries(Object.entries(own).filter(([was]) => was !== name)))}
        />
      ))}
      <button type="button" className="plain" onClick={add}>
        Add a class like {usual}
      </button>
    </details>
  );
}

interface VehicleProps {
  readonly name: string;
  readonly vehicle: Vehicle;
  readonly taken: (name: string) => boolean;
  readonly onRename: (to: string) => void;
  readonly onChange: (vehicle: Vehicle) => void;
  readonly onRemove: () => void;
}

function VehicleFields({ name, vehicle, taken, onRename, onChange, onRemove }: VehicleProps) {
  const inlet = (index: number, patch: Partial<Inlet>): void =>
    onChange({
      ...vehicle,
      inlets: vehicle.inlets.map((each, i) =>
        i === index ? { ...each, ...patch } : each,
      ) as unknown as Vehicle['inlets'],
    });
  return (
    <section className="fields" aria-label={`Vehicle ${name}`}>
      <TextField
        label="class"
        value={name}
        check={(to) => (to === '' ? 'a name is needed' : taken(to) ? 'that name is taken' : null)}
        onChange={onRename}
      />
      {(['length', 'width', 'height'] as const).map((measure) => (
        <LengthField
          key={measure}
          label={measure}
          value={vehicle[measure]}
          least={0.1}
          onChange={(next) => onChange({ ...vehicle, [measure]: next })}
        />
      ))}
      {vehicle.inlets.map((each, index) => (
        <div key={index} className="fields">
          <TextField
            label="inlet"
            value={each.name}
            check={(text) => (text === '' ? 'a name is needed' : null)}
            onChange={(to) => inlet(index, { name: to })}
          />
          <NumberField
            label="from the nose"
            unit=""
            least={Number.NEGATIVE_INFINITY}
            value={each.along}
            onChange={(along) => inlet(index, { along })}
          />
          <ChoiceField
            label="side"
            value={each.side}
            choices={INLET_SIDES}
            onChange={(side) => inlet(index, { side })}
          />
          <LengthField label="height" value={each.height} least={0} onChange={(height) => inlet(index, { height })} />
          <NumberField
            label="share"
            unit=""
            least={Number.NEGATIVE_INFINITY}
            value={each.share}
            onChange={(share) => inlet(index, { share })}
          />
          {vehicle.inlets.length > 1 && (
            <button
              type="button"
              className="plain"
              onClick={() =>
                onChange({
                  ...vehicle,
                  inlets: vehicle.inlets.filter((_, i) => i !== index) as unknown as Vehicle['inlets'],
                })
              }
            >
              Take this inlet away
            </button>
          )}
        </div>
      ))}
      <p className="row-acts">
        <button
          type="button"
          className="plain"
          onClick={() =>
            onChange({
              ...vehicle,
              inlets: [
                ...vehicle.inlets,
                { ...vehicle.inlets.at(-1)!, name: `inlet ${vehicle.inlets.length + 1}` },
              ] as unknown as Vehicle['inlets'],
            })
          }
        >
          Add an inlet
        </button>
        <button type="button" className="plain" onClick={onRemove}>
          Take this class away
        </button>
      </p>
    </section>
  );
}
