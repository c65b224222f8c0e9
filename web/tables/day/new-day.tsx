import { useState } from 'react';
import { pastedCars } from '../../../calc/day/cars/pasted-cars.ts';
import { POPULATIONS } from '../../../calc/day/cars/population-tables.ts';
import { addDay } from '../../document/edits/charging/days.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { useUnsent } from '../../page-state/use-unsent.ts';
import { ChoiceField, NumberField } from '../../parts/fields.tsx';

type Population = (typeof POPULATIONS)[number];

export const POPULATION_WORDS: Readonly<Record<Population, string>> = {
  workplace: 'a workplace: cars stand there through the day',
  home: 'homes: cars stand there over night',
  fleet: 'a fleet: vans come back in the evening',
  retail: 'shops: short stays all day',
};

/** Windows that hold what the populations do. */
const WINDOWS: Readonly<Record<Population, { readonly from: string; readonly to: string }>> = {
  workplace: { from: '06:00', to: '20:00' },
  home: { from: '12:00', to: '12:00' },
  fleet: { from: '14:00', to: '10:00' },
  retail: { from: '08:00', to: '23:00' },
};

/** Makes a day: of a population, or from a table of cars that is pasted. */
export function NewDay({ onMade }: { readonly onMade: (id: string) => void }) {
  const document = useDocumentStore();
  const chargers = useDocument((state) => state.site.chargers.length);
  const days = useDocument((state) => state.site.days);
  const [kind, setKind] = useState<Population>('workplace');
  const [cars, setCars] = useState<number | null>(null);
  const [text, setText] = useUnsent('counted cars');
  const [fault, setFault] = useState('');
  const nextId = (name: string): string => {
    const taken = new Set(days.map(({ id }) => id));
    for (let n = 1; ; n++) {
      const id = n === 1 ? name : `${name}-${n}`;
      if (!taken.has(id)) return id;
    }
  };
  const make = (): void => {
    const { file, apply } = document.getState();
    const population = { kind, cars: cars ?? chargers, seed: days.length + 1 };
    const id = nextId(kind);
    apply(addDay(file, { id, ...WINDOWS[kind], population }));
    onMade(id);
  };
  const paste = (): void => {
    const read = pastedCars(text);
    if (!read.ok) {
      setFault(read.says);
      return;
    }
    const { file, apply } = document.getState();
    const id = nextId('counted');
    apply(addDay(file, { id, from: '00:00', to: '00:00', cars: [...read.cars] }));
    onMade(id);
    setText('');
    setFault('');
  };
  if (chargers === 0)
    return <p className="empty quiet">No charger is drawn yet: a day of charging begins with them.</p>;
  return (
    <div className="day-new">
      <section aria-label="A day made from figures">
        <ChoiceField
          label="like the day of"
          value={kind}
          choices={POPULATIONS}
          words={(one) => POPULATION_WORDS[one]}
          onChange={setKind}
        />
        <NumberField label="cars" unit="" whole least={1} most={20_000} value={cars ?? chargers} onChange={setCars} />
        <button type="button" onClick={make}>
          Make the day
        </button>
        <p className="quiet small">
          Cars come of a seed and of tables: those of a workplace from an open set of counted sessions, the others
          common practice without a source. Counts of this lot are better.
        </p>
      </section>
      <section aria-label="A day from counts">
        <label htmlFor="day-pasted">
          Or paste counted cars, one a line: arrival, departure, kWh, and if known the car’s most in kW
        </label>
        <textarea
          id="day-pasted"
          rows={4}
          value={text}
          onChange={(event) => setText(event.target.value)}
          placeholder="08:10, 16:40, 14.5, 7.2"
        />
        {fault && (
          <p className="fault" role="alert">
            {fault}
          </p>
        )}
        <button type="button" onClick={paste} disabled={text.trim() === ''}>
          Make the day from these
        </button>
      </section>
    </div>
  );
}
