import type * as v from 'valibot';
import { tidy } from '../../../routing/site/file/tidy.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { lengthRewriter } from '../../../routing/site/numbers/convert-lengths.ts';
import { fromFeet, toFeet } from '../../../routing/site/numbers/units.ts';
import { siteFileSchema } from '../../../routing/site/schema/schema.ts';
import { UNITS, type Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Point3, SiteFile } from '../../../routing/site/site.ts';
import type { ElementOf, ListName } from './element-lists.ts';

/** A length in site feet, in which the board and the forms speak, in the file's units; kept to a millionth of them. */
export const inFile = (file: Pick<SiteFile, 'units'>, feet: number): number => tidy(fromFeet(feet, file.units));

/** A place in site feet, in the file's units. */
export const placeInFile = (file: Pick<SiteFile, 'units'>, [x, y]: Point2): Point2 => [
  inFile(file, x),
  inFile(file, y),
];

/** A place in space in site feet, in the file's units. */
export const spotInFile = (file: Pick<SiteFile, 'units'>, [x, y, z]: Point3): Point3 => [
  inFile(file, x),
  inFile(file, y),
  inFile(file, z),
];

type Rewrite = <T>(value: T) => T;

/** The schema of a list's elements. */
export const elementSchema = (list: ListName): v.GenericSchema => siteFileSchema.entries[list].wrapped.item;

const fieldSchemas = {
  rules: siteFileSchema.entries.rules.wrapped,
  vehicles: siteFileSchema.entries.vehicles.wrapped,
  gridlines: siteFileSchema.entries.gridlines.wrapped,
  asBuilt: siteFileSchema.entries.asBuilt.wrapped,
  records: siteFileSchema.entries.records.wrapped,
  drawings: siteFileSchema.entries.drawings.wrapped,
} as const;

const perUnits = (schema: v.GenericSchema): Readonly<Record<Units, Rewrite>> =>
  Object.fromEntries(
    UNITS.map((units) => [units, lengthRewriter(schema, (feet) => inFile({ units }, feet))]),
  ) as unknown as Record<Units, Rewrite>;

const elementRewrites = Object.fromEntries(
  ELEMENT_LISTS.map((list) => [list, perUnits(elementSchema(list))]),
) as Record<ListName, Readonly<Record<Units, Rewrite>>>;

const fieldRewrites = Object.fromEntries(
  Object.entries(fieldSchemas).map(([field, schema]) => [field, perUnits(schema)]),
) as Record<keyof typeof fieldSchemas, Readonly<Record<Units, Rewrite>>>;

/** Fields of an element with lengths in site feet, in the file's units. */
export const elementInFile = <L extends ListName, T extends Partial<ElementOf<L>>>(
  file: Pick<SiteFile, 'units'>,
  list: L,
  fields: T,
): T => elementRewrites[list][file.units](fields);

/** An element of a file of other units, in this file's. */
export const elementFrom = <L extends ListName>(
  units: Units,
  file: Pick<SiteFile, 'units'>,
  list: L,
  element: ElementOf<L>,
): ElementOf<L> =>
  units === file.units
    ? element
    : lengthRewriter(elementSchema(list), (length) => inFile(file, toFeet(length, units)))(element);

/** A top-level field of a file of other units, in this file's. */
export const fieldFrom = <F extends keyof typeof fieldSchemas>(
  units: Units,
  file: Pick<SiteFile, 'units'>,
  field: F,
  value: NonNullable<SiteFile[F]>,
): NonNullable<SiteFile[F]> =>
  units === file.units
    ? value
    : lengthRewriter(fieldSchemas[field], (length) => inFile(file, toFeet(length, units)))(value);

/** A top-level field of the file with lengths in site feet, in the file's units. */
export const fieldInFile = <F extends keyof typeof fieldSchemas>(
  file: Pick<SiteFile, 'units'>,
  field: F,
  value: NonNullable<SiteFile[F]>,
): NonNullable<SiteFile[F]> => fieldRewrites[field][file.units](value);
