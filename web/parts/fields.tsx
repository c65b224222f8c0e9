import { type ChangeEvent, type FocusEvent, type KeyboardEvent, useId, useRef, useState } from 'react';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { parseLength } from '../../routing/site/numbers/parse-length.ts';
import { MAX_TEXT_LENGTH } from '../../routing/site/schema/schema-parts.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { keysToBoard } from './keys-to-board.ts';
import { useOpenDraft } from './open-drafts.ts';
import { atLeast, type ReadNumber, readNumber } from './read-number.ts';
import { type TypedText, typedLetters, typedText } from './typed-text.ts';
import { useUnits } from './units.ts';

interface FieldProps<T> {
  readonly label: string;
  readonly value: T;
  readonly onChange: (value: T) => void;
}

interface TypedProps<T> extends FieldProps<T> {
  readonly print: (value: T) => string;
  /** What the text means, or what is wrong with it. */
  readonly read: (
    text: TypedText,
  ) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly says: string };
  /** A text that may run over several lines. */
  readonly long?: boolean;
}

type Typed = HTMLInputElement | HTMLTextAreaElement;

/**
 * A field that is typed: taken over with Enter, which gives the keys back to the board, or when left; put back with
 * Escape; told what is wrong beneath it.
 */
export function TypedField<T>({ label, value, onChange, print, read, long = false }: TypedProps<T>) {
  const id = useId();
  const [draft, setDraft] = useState<TypedText | null>(null);
  const shown = draft === null ? print(value) : typedLetters(draft);
  const now = draft === null ? null : read(draft);
  const wrong = now && !now.ok ? now.says : null;

  const open = useOpenDraft(
    now?.ok && draft !== null && typedLetters(draft) !== print(value) ? () => onChange(now.value) : null,
  );
  const take = (): void => {
    if (draft === null || wrong) return;
    open.take();
    setDraft(null);
  };
  const Kind = long ? 'textarea' : 'input';
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <Kind
        id={id}
        rows={long ? 1 : undefined}
        value={shown}
        autoComplete="off"
        autoCapitalize="none"
        autoCorrect="off"
        enterKeyHint="done"
        spellCheck={false}
        aria-invalid={wrong !== null}
        aria-describedby={wrong ? `${id}-says` : undefined}
        onChange={(event: ChangeEvent<Typed>) => {
          open.typed();
          setDraft(typedText(event.target.value));
        }}
        onFocus={(event: FocusEvent<Typed>) => event.target.select()}
        onBlur={() => {
          // A figure is typed again in no time; a long text that cannot be taken yet is not thrown away.
          if (wrong && !long) setDraft(null);
          else take();
        }}
        onKeyDown={(event: KeyboardEvent<Typed>) => {
          if (event.key === 'Enter') {
            if (long) event.preventDefault();
            // Leaving it takes it over.
            if (!wrong && (event.currentTarget.closest('dialog') || !keysToBoard())) take();
          }
          if (event.key === 'Escape') {
            event.stopPropagation();
            if (draft === null) keysToBoard();
            open.drop();
            setDraft(null);
          }
        }}
      />
      {wrong && (
        <p className="wrong" id={`${id}-says`} role="alert">
          {label}: {wrong}
        </p>
      )}
    </div>
  );
}

interface LengthProps extends FieldProps<number> {
  /** Feet; the field takes nothing below, and nothing above. */
  readonly least?: number;
  readonly most?: number;
}

/** The feet that a text means between two limits, or what is wrong with it. */
export function readLength(text: TypedText, units: Units, least: number, most: number): ReadNumber {
  const length = parseLength(typedLetters(text), units);
  if (!length.ok) return { ok: false, says: length.says };
  if (length.feet < least) return { ok: false, says: `${printLength(least, units)} or more` };
  if (length.feet > most) return { ok: false, says: `${printLength(most, units)} or less` };
  return { ok: true, value: length.feet };
}

/** A length in feet, typed as a tape reads: 12' 6, 12.5, 150", 3.8m, 9' * 3. */
export function LengthField({
  least = Number.NEGATIVE_INFINITY,
  most = Number.POSITIVE_INFINITY,
  ...props
}: LengthProps) {
  const units = useUnits();
  return (
    <TypedField
      {...props}
      print={(feet) => printLength(feet, units)}
      read={(text) => readLength(text, units, least, most)}
    />
  );
}

interface NumberProps extends FieldProps<number> {
  readonly unit: string;
  /** The field takes nothing below, and where this is 0 not even 0. */
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** A number with its unit, or arithmetic that comes to one: 80, 80 A, 2*40. */
export function NumberField({ unit, least = 0, most, whole = false, ...props }: NumberProps) {
  return (
    <TypedField
      {...props}
      print={(value) => `${value}${unit && ` ${unit}`}`}
      read={(text) => readNumber(text, { unit, whole, ...atLeast(least), ...(most !== undefined && { most }) })}
    />
  );
}

interface DegreesProps extends FieldProps<number> {
  readonly least?: number;
  readonly most?: number;
  /** Decimals that are shown. */
  readonly decimals: number;
}

/** An angle, shown to so many decimals with the sign of degrees. */
export function DegreesField({ least = -360, most = 360, decimals, ...props }: DegreesProps) {
  return (
    <TypedField
      {...props}
      print={(degrees) => `${Number(degrees.toFixed(decimals))}°`}
      read={(text) => readNumber(text, { unit: 'degrees', least, most })}
    />
  );
}

interface TextProps extends FieldProps<string> {
  readonly check?: (text: string) => string | null;
  readonly long?: boolean;
}

export function TextField({ check, ...props }: TextProps) {
  return (
    <TypedField
      {...props}
      print={(text) => text}
      read={(typed) => {
        const text = typedLetters(typed).trim();
        const says = check?.(text) ?? (text.length > MAX_TEXT_LENGTH ? `${MAX_TEXT_LENGTH} letters or fewer` : null);
        return says === null ? { ok: true, value: text } : { ok: false, says };
      }}
    />
  );
}

interface ChoiceProps<T extends string> extends FieldProps<T> {
  readonly choices: readonly T[];
  readonly words?: (choice: T) => string;
}

export function ChoiceField<T extends string>({ label, value, onChange, choices, words }: ChoiceProps<T>) {
  const id = useId();
  // After a choice by hand the keys go to the board again; after one by keys they stay here, for the next choice.
  const byHand = useRef(false);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onPointerDown={() => {
          byHand.current = true;
        }}
        onKeyDown={() => {
          byHand.current = false;
        }}
        onChange={(event) => {
          onChange(event.target.value as T);
          if (byHand.current) keysToBoard();
          byHand.current = false;
        }}
      >
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {words?.(choice) ?? choice}
          </option>
        ))}
      </select>
    </div>
  );
}

/** A place in space or in the plan as two or three lengths. */
export function PlaceFields<P extends readonly number[]>({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: P;
  readonly onChange: (value: P) => void;
}) {
  return (
    <fieldset className="place-fields">
      <legend>{label}</legend>
      {value.map((length, axis) => (
        <LengthField
          key={AXES[axis]}
          label={AXES[axis] ?? ''}
          value={length}
          onChange={(next) => onChange(value.map((was, i) => (i === axis ? next : was)) as unknown as P)}
        />
      ))}
    </fieldset>
  );
}

const AXES = ['x', 'y', 'z'];
