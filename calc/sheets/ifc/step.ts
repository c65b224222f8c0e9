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
  readonly lines: readonly string[];
}

export function stepWriter(): StepWriter {
  const lines: string[] = [];
  return {
    lines,
    add: (entity, ...values) => {
      lines.push(`#${lines.length + 1}=${entity}(${values.map(written).join(',')});`);
      return lines.length;
    },
  };
}

function written(value: StepValue): string {
  if (value === null) return '$';
  if (value === '*') return '*';
  if (Array.isArray(value)) return `(${value.map(written).join(',')})`;
  const one = value as Exclude<StepValue, readonly StepValue[] | null | '*'>;
  if ('text' in one) return `'${encoded(one.text)}'`;
  if ('real' in one) return reals(one.real);
  if ('whole' in one) return String(Math.round(one.whole));
  if ('word' in one) return `.${one.word}.`;
  if ('of' in one) return `#${one.of}`;
  return `${one.typed}(${written(one.value)})`;
}

/** STEP wants a point in every real, and E for the exponent. */
function reals(value: number): string {
  const text = String(Math.round(value * 1e9) / 1e9).toUpperCase();
  if (text.includes('E')) return text.includes('.') ? text : text.replace('E', '.E');
  return text.includes('.') ? text : `${text}.`;
}

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
