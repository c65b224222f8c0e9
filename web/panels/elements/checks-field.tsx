interface ChecksProps<T extends string> {
  readonly label: string;
  readonly choices: readonly T[];
  readonly value: readonly T[];
  readonly onChange: (value: readonly T[]) => void;
  readonly words?: (choice: T) => string;
}

/** Several of some choices. */
export function ChecksField<T extends string>({ label, choices, value, onChange, words }: ChecksProps<T>) {
  return (
    <fieldset className="checks-field">
      <legend>{label}</legend>
      {choices.map((choice) => (
        <label key={choice}>
          <input
            type="checkbox"
            checked={value.includes(choice)}
            onChange={(event) =>
              onChange(choices.filter((each) => (each === choice ? event.target.checked : value.includes(each))))
            }
          />
          {words?.(choice) ?? choice}
        </label>
      ))}
    </fieldset>
  );
}
