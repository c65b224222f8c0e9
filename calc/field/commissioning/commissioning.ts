import { kept } from '../../../routing/kept/kept.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { addressOf, type Register, registersOf } from '../../../routing/site/records/registers.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { circuitNames } from '../../supply/panels/circuit-names.ts';
import { panelSchedules } from '../../supply/panels/panel-schedule.ts';
import { linesOf, treeOf } from '../../supply/tree/supply-lines.ts';
import { expectedAtBox, expectedAtEquipment } from './expected-volts.ts';
import { type JudgedReading, judged } from './judged.ts';
import {
  dutyLimit,
  type ExpectedVolts,
  insulationLimit,
  type Limit,
  loadedVoltsLimit,
  openVoltsLimit,
  pilotLimit,
  ROTATION_LIMIT,
  TRIP_LIMIT,
  torqueLimit,
} from './limits.ts';
import {
  boardMeasures,
  chargerMeasures,
  feederMeasures,
  type Measure,
  type MeterReading,
  type ReadingUnit,
} from './measures.ts';

/** One measure of one thing: what it is held to, what was read, and what is to be said of it. */
export interface TestRow extends JudgedReading {
  readonly of: string;
  readonly measure: Measure;
  readonly limit: Limit;
  readonly register: Register | null;
  readonly reading: MeterReading | null;
}

/** What is tested before it is handed over, with all that is measured of it. */
export interface TestSheet {
  readonly of: string;
  readonly kind: 'charger' | 'feeder' | 'board';
  /** "EV05 at D05, circuit P1-10/12, 40 A". */
  readonly title: string;
  readonly rows: readonly TestRow[];
}

type Planned = Pick<UncountedPlan, 'runs' | 'branches'>;
type Limits = (measure: Measure, reading: MeterReading) => Limit;

/** The sheets of boards, feeders that are new, and chargers, in the order of the site. */
export const commissioning = kept((site: Site, plan: Planned): readonly TestSheet[] => [
  ...boardSheets(site, plan),
  ...feederSheets(site),
  ...site.chargers.map(({ id }) => chargerSheet(site, plan, id)),
]);

/** The sheet of one thing that is tested; undefined where nothing of that name is. */
export const testSheet = (site: Site, plan: Planned, of: string): TestSheet | undefined =>
  byId(site.chargers).has(of)
    ? chargerSheet(site, plan, of)
    : [...boardSheets(site, plan), ...feederSheets(site)].find((sheet) => sheet.of === of);

/** The sheet of one charger, RangeError where there is none. */
export function chargerSheet(site: Site, plan: Planned, charger: string): TestSheet {
  const found = byId(site.chargers).get(charger);
  if (!found) throw new RangeError(`there is no charger ${charger}`);
  const { id, drop, amps } = found;
  const name = circuitNames(site).get(id);
  const lines = linesOf(site).chargers.get(id) ?? 'AB';
  const nominal = treeOf(site).nodes.find(({ equipment }) => equipment.id === found.from)?.system.volts ?? found.volts;
  const volts: ExpectedVolts = {
    nominal,
    open: expectedAtBox(site, plan, id, 0),
    at: (load) => expectedAtBox(site, plan, id, load),
  };
  const openRead = readingOf(site, id, 'volts open')?.value ?? null;
  const limits: Limits = (measure, reading) => {
    if (measure.id === 'volts open') return openVoltsLimit(nominal, volts.open);
    if (measure.id === 'volts loaded') return loadedVoltsLimit(volts, amps, reading, openRead);
    if (measure.id === 'pilot duty') return dutyLimit(amps);
    if (measure.group === 'pilot') return pilotLimit(measure.id.slice('pilot '.length));
    if (measure.group === 'fault trip') return TRIP_LIMIT;
    return wiringLimit(measure, reading);
  };
  return {
    of: id,
    kind: 'charger',
    title: `${id} at ${drop}${name === undefined ? '' : `, circuit ${name}`}, ${amps} A`,
    rows: rowsOf(site, id, chargerMeasures(lines, torqueUnit(site)), limits),
  };
}

function feederSheets(site: Site): readonly TestSheet[] {
  const lines = linesOf(site);
  return treeOf(site).nodes.flatMap(({ feeder, equipment, primary, system }): TestSheet[] => {
    if (feeder === null || feeder.existing === true) return [];
    const letters = (primary ?? system).phases === 3 ? 'ABC' : (lines.equipment.get(equipment.id) ?? 'AB');
    const { id, from, to } = feeder;
    const rows = rowsOf(site, id, feederMeasures(letters, torqueUnit(site)), wiringLimit);
    return [{ of: id, kind: 'feeder', title: `Feeder ${id}, ${from} to ${to}`, rows }];
  });
}

function boardSheets(site: Site, plan: Planned): readonly TestSheet[] {
  const expected = expectedAtEquipment(site, plan);
  return [...panelSchedules(site)].map(([id, { rows: lines }]) => {
    const nominal = treeOf(site).nodes.find(({ equipment }) => equipment.id === id)!.system.volts;
    const limits: Limits = (measure, reading) =>
      measure.group === 'volts'
        ? openVoltsLimit(nominal, expected.get(id)?.get(measure.id.slice('volts '.length)) ?? null)
        : wiringLimit(measure, reading);
    return { of: id, kind: 'board', title: `Board ${id}`, rows: rowsOf(site, id, boardMeasures(lines), limits) };
  });
}

const wiringLimit: Limits = (measure, reading) =>
  measure.group === 'insulation'
    ? insulationLimit(reading)
    : measure.group === 'torque'
      ? torqueLimit(reading, reading.unit ?? measure.unit)
      : ROTATION_LIMIT;

const torqueUnit = ({ units }: Site): ReadingUnit => (units === 'ft' ? 'lbf-in' : 'Nm');

const NOTHING_READ: MeterReading = {};

const readingOf = ({ records }: Site, of: string, part: string): MeterReading | undefined =>
  registersOf(records).get(addressOf({ of, part, what: 'measured' }))?.now?.reading;

function rowsOf(site: Site, of: string, measures: readonly Measure[], limits: Limits): readonly TestRow[] {
  return measures.map((measure): TestRow => {
    const register = registersOf(site.records).get(addressOf({ of, part: measure.id, what: 'measured' })) ?? null;
    const reading = register?.now?.reading ?? null;
    const limit = limits(measure, reading ?? NOTHING_READ);
    return { of, measure, limit, register, reading, ...judged(measure, limit, reading, register?.conflict === true) };
  });
}

/** What was last stated, anywhere, for a measure to be judged by: equipment of a lot is mostly alike. */
export function lastAsked({ records }: Site, measure: string): number | null {
  const told = [...registersOf(records).values()].flatMap(({ what, part, now }) =>
    what === 'measured' && part === measure && now?.reading?.asked !== undefined ? [now] : [],
  );
  return (
    told.reduce<(typeof told)[number] | null>((last, mark) => (last && last.time >= mark.time ? last : mark), null)
      ?.reading?.asked ?? null
  );
}

/** What is still to be measured, or to be put right, before all is handed over. */
export const openTests = (sheets: readonly Pick<TestSheet, 'rows'>[]): readonly TestRow[] =>
  sheets.flatMap(({ rows }) => rows.filter(({ standing }) => standing !== 'passes' && standing !== 'not asked'));
