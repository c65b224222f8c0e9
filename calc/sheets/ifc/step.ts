import { ByteText } from '../byte-text.ts';

/** A value of a STEP record (ISO 10303-21). */
export type StepValue =
  | { readonly text: string }
  | { readonly real: number }
  | { readonly whole: number }
  | { readonly word: string }
  | { readonly of: number }
  | { readonly typed: string; readonly value: StepValue }
  | readonly StepValue[]
  | null
  | '*';

export const stepText = (value: string): StepValue => ({ text: value });
export const real = (value: number): StepValue => ({ real: value });
/** An enumeration value, such as `.POWER.`. */
export const word = (value: string): StepValue => ({ word: value });
export const of = (id: number): StepValue => ({ of: id });

/** Collects records and numbers them. */
export interface StepWriter {
  readonly add: (entity: string, ...values: readonly StepValue[]) => number;
  /** The records, a line each. */
  readonly records: ByteText;
}

export function stepWriter(): StepWriter {
  const records = new ByteText();
  let count = 0;
  return {
    records,
    add: (entity, ...values) => {
      count++;
      records.add('#');
      records.whole(count);
      records.add('=');
      records.add(entity);
      addList(records, values);
      records.add(';\n');
      return count;
    },
  };
}

function addList(to: ByteText, values: readonly StepValue[]): void {
  to.add('(');
  for (let i = 0; i < values.length; i++) {
    if (i > 0) to.add(',');
    addValue(to, values[i]!);
  }
  to.add(')');
}

function addValue(to: ByteText, value: StepValue): void {
  if (value === null) to.add('$');
  else if (value === '*') to.add('*');
  else if (Array.isArray(value)) addList(to, value);
  else addOne(to, value as Exclude<StepValue, readonly StepValue[] | null | '*'>);
}

function addOne(to: ByteText, one: Exclude<StepValue, readonly StepValue[] | null | '*'>): void {
  if ('of' in one) {
    to.add('#');
    to.whole(one.of);
  } else if ('text' in one) {
    to.add("'");
    to.add(IS_PLAIN.test(one.text) ? one.text : encoded(one.text));
    to.add("'");
  } else if ('real' in one) {
    // STEP wants a point in every real.
    if (!to.decimal(one.real, '.')) to.add(reals(one.real));
  } else if ('whole' in one) to.whole(Math.round(one.whole));
  else if ('word' in one) {
    to.add('.');
    to.add(one.word);
    to.add('.');
  } else {
    to.add(one.typed);
    to.add('(');
    addValue(to, one.value);
    to.add(')');
  }
}

/** With E for the exponent. */
function reals(value: number): string {
  const text = String(Math.round(value * 1e9) / 1e9).toUpperCase();
  if (text.includes('E')) return text.includes('.') ? text : text.replace('E', '.E');
  return text.includes('.') ? text : `${text}.`;
}

/** Printable ASCII without quotes and backslashes. */
const IS_PLAIN = /^[\x20-\x26\x28-\x5b\x5d-\x7e]*$/;

/** Text of a STEP string: quotes and backslashes doubled, all outside printable ASCII as `\X2\` code units. */
function encoded(value: string): string {
  return value
    .replaceAll('\\', '\\\\')
    .replaceAll("'", "''")
    .replace(/[^\x20-\x7e]+/g, (run) => {
      const units = Array.from({ length: run.length }, (_, i) =>
        run.charCodeAt(i).toString(16).toUpperCase().padStart(4, '0'),
      );
      return `\\X2\\${units.join('')}\\X0\\`;
    });
}
