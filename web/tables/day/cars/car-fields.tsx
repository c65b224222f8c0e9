import { useState } from 'react';
import { readNumber } from '../../../parts/read-number.ts';
import { typedText } from '../../../parts/typed-text.ts';

/** As the site file has it. */
const MOST_KWH = 10_000;

interface CarFieldProps<Value> {
  readonly name: string;
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}

/** A time of a car in its table: taken over when it is left, or with Enter. */
export function TimeField({ name, value, onChange }: CarFieldProps<string>) {
  const take = (time: string): void => {
    if (/^\d\d:\d\d$/.test(time) && time !== value) onChange(time);
  };
  return (
    <input
      key={value}
      type="time"
      aria-label={name}
      defaultValue={value}
      onBlur={(event) => take(event.target.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take(event.currentTarget.value);
      }}
    />
  );
}

/** What a car asks, kilowatt-hours; what cannot be read is told and changes nothing. */
export function NeedField({ name, value, onChange }: CarFieldProps<number>) {
  const [fault, setFault] = useState('');
  const take = (text: string): void => {
    const read = readNumber(typedText(text), { unit: 'kWh', least: 0, most: MOST_KWH });
    setFault(read.ok ? '' : read.says);
    if (read.ok && read.value !== value) onChange(read.value);
  };
  return (
    <>
      <input
        key={value}
        className="day-need"
        inputMode="decimal"
        aria-label={name}
        aria-invalid={fault !== ''}
        defaultValue={`${value} kWh`}
        onBlur={(event) => take(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(event.currentTarget.value);
        }}
      />
      {fault !== '' && (
        <span className="fault small" role="alert">
          {fault}
        </span>
      )}
    </>
  );
}
