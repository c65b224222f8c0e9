import type * as v from 'valibot';
import { sameItems } from '../kept/changed-places.ts';
import { kept } from '../kept/kept.ts';
import { keptEach } from '../kept/kept-list.ts';
import type { Kind } from './kinds/kind.ts';
import { ELEMENT_LISTS, type ElementList, KINDS } from './kinds/kinds.ts';
import { lengthRewriter } from './numbers/convert-lengths.ts';
import { toFeet } from './numbers/units.ts';
import { asBuiltNow } from './records/as-built-now.ts';
import { DEFAULT_RULES } from './rules/rules.ts';
import { markSchema } from './schema/mark-schema.ts';
import { rulesSchema } from './schema/rules-schema.ts';
import { asBuiltSchema, drawingsSchema, gridlineSchema, underlaySchema, vehicleSchema } from './schema/schema.ts';
import { metalOf, type Units } from './schema/vocabulary.ts';
import type { AsBuilt, Drawings, Issued, Mark, Project, Rules, Site, SiteFile, Underlay, Vehicle } from './site.ts';
import { BUILT_IN_VEHICLES } from './vehicles.ts';

/** One for each unit: the same list stands for other lengths when the units of its file change. */
const perUnits = <A extends object, B extends object>(
  make: (units: Units) => (from: A) => B,
): Readonly<Record<Units, (from: A) => B>> => ({ ft: kept(make('ft')), m: kept(make('m')) });

const NONE: readonly never[] = Object.freeze([]);

/** Lists in feet: the list itself where nothing in it changes, each element converted once. */
function listsOf<T extends object>(
  schema: v.GenericSchema,
): (list: readonly T[] | undefined, units: Units) => readonly T[] {
  const inFeet = lengthRewriter(schema, (metres) => toFeet(metres, 'm'));
  const element = kept((from: T) => inFeet(from));
  const each = keptEach(([from]: readonly [T]) => element(from));
  const whole = kept((list: readonly T[]) => each([list], []));
  return (list, units) => (list === undefined ? NONE : units === 'm' ? whole(list) : list);
}

/** Lists as the engine reads their elements, the list itself where it reads each as it is. */
function readingOf<T extends object>(read: ((element: T) => T) | undefined): (list: readonly T[]) => readonly T[] {
  if (!read) return (list) => list;
  const element = kept(read);
  const each = keptEach(([from]: readonly [T]) => element(from));
  return kept((list: readonly T[]) => {
    const asRead = each([list], []);
    return sameItems(asRead, list) ? list : asRead;
  });
}

type Lists = Pick<Site, ElementList>;
type ListReader = (list: readonly object[] | undefined, units: Units) => readonly object[];

const LISTS = ELEMENT_LISTS.map((name): readonly [ElementList, ListReader] => {
  const { schema, read } = KINDS[name] as Kind<v.GenericSchema, object>;
  const inFeet = listsOf<object>(schema);
  const asRead = readingOf<object>(read as ((element: object) => object) | undefined);
  return [name, (list, units) => asRead(inFeet(list, units))];
});

const listsIn = (file: SiteFile): Lists =>
  Object.fromEntries(LISTS.map(([name, read]) => [name, read(file[name], file.units)])) as unknown as Lists;

const gridlines = listsOf<Site['gridlines']['x'][number]>(gridlineSchema);
const gridlinesOf = perUnits((units) => (from: NonNullable<SiteFile['gridlines']>) => ({
  x: gridlines(from.x, units),
  y: gridlines(from.y, units),
  ...(from.rotation !== undefined && { rotation: from.rotation }),
  ...(from.origin !== undefined && {
    origin: units === 'm' ? ([toFeet(from.origin[0], 'm'), toFeet(from.origin[1], 'm')] as const) : from.origin,
  }),
}));
const NO_GRIDLINES: Site['gridlines'] = { x: NONE, y: NONE };

const vehicleInFeet = kept(lengthRewriter(vehicleSchema, (metres) => toFeet(metres, 'm')) as (v: Vehicle) => Vehicle);
const vehiclesOf = perUnits((units) => (from: NonNullable<SiteFile['vehicles']>): ReadonlyMap<string, Vehicle> => {
  const own = Object.entries(from).map(
    ([name, vehicle]) => [name, units === 'm' ? vehicleInFeet(vehicle) : vehicle] as const,
  );
  return new Map([...BUILT_IN_VEHICLES, ...own]);
});

const asBuiltInFeet = kept(lengthRewriter(asBuiltSchema, (metres) => toFeet(metres, 'm')) as (a: AsBuilt) => AsBuilt);
const asBuiltOf = perUnits(
  (units) =>
    (from: NonNullable<SiteFile['asBuilt']>): ReadonlyMap<string, AsBuilt> =>
      new Map(Object.entries(from).map(([drop, found]) => [drop, units === 'm' ? asBuiltInFeet(found) : found])),
);
const NOTHING_BUILT: ReadonlyMap<string, AsBuilt> = new Map();

const records = listsOf<Mark>(markSchema);

const NO_PROJECT: Project = Object.freeze({});

const NO_DRAWINGS: Drawings = Object.freeze({});
const drawingsInFeet = lengthRewriter(drawingsSchema, (metres) => toFeet(metres, 'm'));
const drawingsOf = perUnits(
  (units) =>
    (from: Drawings): Drawings =>
      units === 'm' ? drawingsInFeet(from) : from,
);

const NO_NAMES: ReadonlyMap<string, string> = new Map();
const NOTHING_ISSUED: Issued = { circuits: new Map(), conduits: NO_NAMES, boxes: NO_NAMES };
const namesOf = kept(
  (conduits: NonNullable<NonNullable<SiteFile['issued']>['conduits']>): ReadonlyMap<string, string> =>
    new Map(Object.entries(conduits)),
);
const issuedOf = kept(
  ({ circuits = {}, conduits, boxes }: NonNullable<SiteFile['issued']>): Issued => ({
    circuits: new Map(Object.entries(circuits)),
    conduits: conduits === undefined ? NO_NAMES : namesOf(conduits),
    boxes: boxes === undefined ? NO_NAMES : namesOf(boxes),
  }),
);

const underlays = listsOf<Underlay>(underlaySchema);
const underlayInFeet = lengthRewriter(underlaySchema, (metres) => toFeet(metres, 'm'));
const underlayOf = perUnits(
  (units) =>
    (from: NonNullable<SiteFile['underlay']>): Underlay =>
      units === 'm' ? underlayInFeet(from) : from,
);

const rulesInFeet = lengthRewriter(rulesSchema, (metres) => toFeet(metres, 'm'));
const rulesOf = perUnits((units) => (from: NonNullable<SiteFile['rules']>): Rules => {
  const set = units === 'm' ? rulesInFeet(from) : from;
  const ambientC = set.ambientC ?? DEFAULT_RULES.ambientC;
  return {
    ...DEFAULT_RULES,
    ...set,
    allowance: { ...DEFAULT_RULES.allowance, ...set.allowance },
    placeAmbientC: { overhead: ambientC, surface: ambientC, underground: ambientC, ...set.placeAmbientC },
    dropLimit: { ...DEFAULT_RULES.dropLimit, ...set.dropLimit },
    fault: { ...DEFAULT_RULES.fault, ...set.fault },
    waste: { ...DEFAULT_RULES.waste, ...set.waste },
    workHeight: { ...DEFAULT_RULES.workHeight, ...set.workHeight },
    restHeight: { ...DEFAULT_RULES.restHeight, ...set.restHeight },
    clearHeight: { ...DEFAULT_RULES.clearHeight, ...set.clearHeight },
    pilot: { ...DEFAULT_RULES.pilot, ...set.pilot },
    metal: set.metal === undefined ? DEFAULT_RULES.metal : metalOf(set.metal),
  };
});

/**
 * The site as the engine reads it: feet throughout, every list present, rules and vehicle classes resolved.
 * What did not change since the last conversion comes back as the same object: the site for the same file, a list for
 * the same list, an element for the same element. The elements of a file in feet are the file's own.
 */
export const toSite: (file: SiteFile) => Site = kept((file: SiteFile): Site => {
  const { units } = file;
  const marks = records(file.records, units);
  const asBuilt = file.asBuilt === undefined ? NOTHING_BUILT : asBuiltOf[units](file.asBuilt);
  return {
    name: file.name,
    project: file.project ?? NO_PROJECT,
    drawings: file.drawings === undefined ? NO_DRAWINGS : drawingsOf[units](file.drawings),
    units,
    ...listsIn(file),
    gridlines: file.gridlines === undefined ? NO_GRIDLINES : gridlinesOf[units](file.gridlines),
    vehicles: file.vehicles === undefined ? BUILT_IN_VEHICLES : vehiclesOf[units](file.vehicles),
    rules: file.rules === undefined ? DEFAULT_RULES : rulesOf[units](file.rules),
    ...(file.georef === undefined ? {} : { georef: file.georef }),
    asBuilt: asBuiltNow(asBuilt, marks),
    records: marks,
    issued: file.issued === undefined ? NOTHING_ISSUED : issuedOf(file.issued),
    days: file.days ?? NONE,
    ...(file.underlay === undefined ? {} : { underlay: underlayOf[units](file.underlay) }),
    ...(file.underlays === undefined ? {} : { underlays: underlays(file.underlays, units) }),
  };
});
