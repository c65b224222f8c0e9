import { of, real, type StepValue, type StepWriter, stepText, word } from './step.ts';

/** A measure of the standard, such as amperes, with its value. */
interface Measure {
  readonly measure:
    | 'IFCELECTRICCURRENTMEASURE'
    | 'IFCELECTRICVOLTAGEMEASURE'
    | 'IFCPOWERMEASURE'
    | 'IFCLENGTHMEASURE'
    | 'IFCCOUNTMEASURE'
    | 'IFCIDENTIFIER'
    | 'IFCINTEGER'
    | 'IFCLABEL'
    | 'IFCTHERMODYNAMICTEMPERATUREMEASURE'
    | 'IFCAREAMEASURE';
  readonly value: number | string;
}

/** One of the words that the standard lists for a property. */
interface Listed {
  readonly listed: string;
}

export type Property = string | number | boolean | Measure | Listed | null | undefined;
export type Properties = Readonly<Record<string, Property>>;

export interface PropertySet {
  readonly name: string;
  readonly properties: Properties;
}

/** Lengths of an element, in the file's unit, under the name of the standard's set of quantities. */
export interface IfcQuantities {
  readonly name: string;
  readonly lengths: Readonly<Record<string, number>>;
}

export const amps = (value: number | undefined): Property =>
  value === undefined ? undefined : { measure: 'IFCELECTRICCURRENTMEASURE', value };
export const volts = (value: number | undefined): Property =>
  value === undefined ? undefined : { measure: 'IFCELECTRICVOLTAGEMEASURE', value };
export const identifier = (value: string): Property => ({ measure: 'IFCIDENTIFIER', value });

/** What every set `Common` of the standard begins with. */
export const common = (reference: string, existing = false): Properties => ({
  Reference: identifier(reference),
  Status: { listed: existing ? 'EXISTING' : 'NEW' },
});

/** Hangs a set of properties on a product; one without a value is left out, and so is a set without properties. */
export function addPropertySet(
  writer: StepWriter,
  product: number,
  set: { readonly guid: string; readonly relation: string },
  { name, properties }: PropertySet,
): void {
  const records: StepValue[] = [];
  for (const [property, value] of Object.entries(properties)) {
    if (value === null || value === undefined) continue;
    records.push(of(record(writer, property, value)));
  }
  if (records.length === 0) return;
  const made = writer.add('IFCPROPERTYSET', stepText(set.guid), null, stepText(name), null, records);
  writer.add('IFCRELDEFINESBYPROPERTIES', stepText(set.relation), null, null, null, [of(product)], of(made));
}

function record(writer: StepWriter, name: string, value: NonNullable<Property>): number {
  if (typeof value === 'object' && 'listed' in value)
    return writer.add(
      'IFCPROPERTYENUMERATEDVALUE',
      stepText(name),
      null,
      [{ typed: 'IFCLABEL', value: stepText(value.listed) }],
      null,
    );
  return writer.add('IFCPROPERTYSINGLEVALUE', stepText(name), null, valueRecord(value), null);
}

function valueRecord(value: string | number | boolean | Measure): StepValue {
  if (typeof value === 'number') return { typed: 'IFCREAL', value: real(value) };
  if (typeof value === 'boolean') return { typed: 'IFCBOOLEAN', value: word(value ? 'T' : 'F') };
  if (typeof value === 'string') return { typed: 'IFCLABEL', value: stepText(value) };
  const { measure, value: measured } = value;
  if (typeof measured === 'string') return { typed: measure, value: stepText(measured) };
  return { typed: measure, value: measure === 'IFCINTEGER' ? { whole: measured } : real(measured) };
}

/** Hangs quantities of length on a product. */
export function addQuantities(
  writer: StepWriter,
  product: number,
  set: { readonly guid: string; readonly relation: string },
  { name, lengths }: IfcQuantities,
): void {
  const records = Object.entries(lengths).map(([quantity, value]) =>
    of(writer.add('IFCQUANTITYLENGTH', stepText(quantity), null, null, real(value), null)),
  );
  const made = writer.add('IFCELEMENTQUANTITY', stepText(set.guid), null, stepText(name), null, null, records);
  writer.add('IFCRELDEFINESBYPROPERTIES', stepText(set.relation), null, null, null, [of(product)], of(made));
}
