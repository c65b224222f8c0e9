import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { parseLength } from '../../routing/site/numbers/parse-length.ts';
import { readLength, TypedField } from './fields.tsx';
import { atLeast, type NumberLimits, readNumber } from './read-number.ts';
import { type TypedText, typedLetters } from './typed-text.ts';
import { useUnits } from './units.ts';

interface MaybeProps {
  readonly label: string;
  readonly value: number | null;
  /** What stands in the field where there is no value, and may be typed for none. */
  readonly none: string;
  readonly onChange: (value: number | null) => void;
  readonly least?: number;
  readonly most?: number;
}

const isNone = (text: TypedText, none: string): boolean => ['', none].includes(wordOf(text));
/** As it is compared with words that a field takes in place of a number. */
const wordOf = (text: TypedText): string => typedLetters(text).trim().toLowerCase();

/** A length that may be left out. Feet. */
export function MaybeLength({ label, value, none, onChange, least = -Infinity, most = Infinity }: MaybeProps) {
  const units = useUnits();
  return (
    <TypedField<number | null>
      label={label}
      value={value}
      onChange={onChange}
      print={(feet) => (feet === null ? none : printLength(feet, units))}
      read={(text) => {
        if (isNone(text, none)) return { ok: true, value: null };
        return readLength(text, units, least, most);
      }}
    />
  );
}

interface MaybeNumberProps extends MaybeProps {
  readonly unit: string;
  readonly whole?: boolean;
}

/** A number over 0 that may be left out. */
export function MaybeNumber({ label, value, none, onChange, unit, whole = false, least = 0, most }: MaybeNumberProps) {
  return (
    <TypedField<number | null>
      label={label}
      value={value}
      onChange={onChange}
      print={(number) => (number === null ? none : `${number}${unit && ` ${unit}`}`)}
      read={(text) =>
        isNone(text, none)
          ? { ok: true, value: null }
          : readNumber(text, { unit, whole, ...atLeast(least), ...(most !== undefined && { most }) })
      }
    />
  );
}

/** What stands in a field of several elements whose values differ. */
export const VARIOUS = 'various';

interface VariousProps {
  readonly label: string;
  readonly value: number | null | typeof VARIOUS;
  /** What stands in the field, and may be typed, for no value; null where there must be one. */
  readonly none: string | null;
  /** Null for a length. */
  readonly unit: string | null;
  readonly limits: Pick<NumberLimits, 'over' | 'least' | 'most' | 'whole'>;
  readonly onChange: (value: number | null) => void;
}

/** A number or a length that stands for several elements. */
export function VariousField({ label, value, none, unit, limits, onChange }: VariousProps) {
  const units = useUnits();
  return (
    <TypedField<number | null | typeof VARIOUS>
      label={label}
      value={value}
      onChange={(next) => next !== VARIOUS && onChange(next)}
      print={(each) => {
        if (each === VARIOUS) return VARIOUS;
        if (each === null) return none ?? '';
        return unit === null ? printLength(each, units) : `${each}${unit && ` ${unit}`}`;
      }}
      read={(text) => {
        if (wordOf(text) === VARIOUS) return { ok: true, value: VARIOUS };
        if (none !== null && isNone(text, none)) return { ok: true, value: null };
        if (unit !== null) return readNumber(text, { unit, ...limits });
        const length = parseLength(typedLetters(text), units);
        if (!length.ok) return { ok: false, says: length.says };
        if (length.feet <= (limits.over ?? -Infinity)) return { ok: false, says: 'more than 0' };
        return length.feet < (limits.least ?? -Infinity)
          ? { ok: false, says: `${printLength(limits.least ?? 0, units)} or more` }
          : { ok: true, value: length.feet };
      }}
    />
  );
}

interface PlacesProps {
  readonly label: string;
  readonly value: readonly number[];
  readonly onChange: (value: readonly number[]) => void;
}

/** Places in a row, counted from 1: "1 2 12", "1-3". */
export function PlacesField({ label, value, onChange }: PlacesProps) {
  return (
    <TypedField<readonly number[]>
      label={label}
      value={value}
      onChange={onChange}
      print={(places) => places.join(' ') || 'none'}
      read={(text) => {
        if (isNone(text, 'none')) return { ok: true, value: [] };
        const places: number[] = [];
        for (const part of typedLetters(text)
          .trim()
          .split(/[\s,;]+/)) {
          const range = /^(\d{1,4})(?:-(\d{1,4}))?$/.exec(part);
          if (!range) return { ok: false, says: 'expected places, as 1 2 or 1-3' };
          const from = Number(range[1]);
          const to = Number(range[2] ?? range[1]);
          if (from < 1 || to < from || to - from > 500) return { ok: false, says: 'expected places from 1 up' };
          for (let place = from; place <= to; place++) places.push(place);
        }
        return { ok: true, value: [...new Set(places)].sort((a, b) => a - b) };
      }}
    />
  );
}
