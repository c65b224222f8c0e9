import { useId, useState } from 'react';
import { withCars } from '../../../../calc/day/cars/listed-cars.ts';
import { carsText, pastedCars } from '../../../../calc/day/cars/pasted-cars.ts';
import type { DayInput } from '../../../../calc/day/day-input.ts';
import type { ChargingDay } from '../../../../routing/site/site.ts';
import { changeDay } from '../../../document/edits/charging/days.ts';
import { download, textOf } from '../../../document/files/files.ts';
import { useDocumentStore } from '../../../document/use-document.tsx';

/** The cars of a day as a table for other programs, and back. */
export function CarsFile({ day, input }: { readonly day: ChargingDay; readonly input: DayInput }) {
  const document = useDocumentStore();
  const [fault, setFault] = useState('');
  const name = useId();
  const take = async (picked: File): Promise<void> => {
    try {
      const read = pastedCars(await textOf(picked));
      setFault(read.ok ? '' : `${picked.name}: ${read.says}`);
      if (!read.ok) return;
      const { file, apply } = document.getState();
      apply(changeDay(file, withCars(day, read.cars)));
    } catch (error) {
      setFault(`${picked.name}: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  return (
    <div className="day-controls">
      <button type="button" onClick={() => download(`day-${day.id}-cars.csv`, 'text/csv', carsText(input.cars))}>
        Save the cars (CSV)
      </button>
      <label htmlFor={name}>
        Cars from a file (CSV: arrives, leaves, kWh, and if known most kW, charger)
        <input
          id={name}
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          onChange={(event) => {
            const [picked] = event.target.files ?? [];
            event.target.value = '';
            if (picked !== undefined) void take(picked);
          }}
        />
      </label>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
