import type { Run } from '../../routing/network/run.ts';
import type { Reach, ReachCase } from '../../routing/reach/reach-result.ts';
import { fromFeet } from '../../routing/site/numbers/units.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Point2, Point3, Site } from '../../routing/site/site.ts';
import type { Conduit } from '../plan-file/branches.ts';
import type { Hung } from '../plan-file/hung.ts';
import type { PlanFile } from '../plan-file/plan-file.ts';
import type { Supply } from '../plan-file/supply.ts';
import type { TakeoffRow } from '../plan-file/takeoff.ts';
import { tablesOf } from '../tables/editions.ts';
import { steadyData } from '../words/steady.ts';
import { asBuiltOf } from './as-built.ts';
import type { Plan } from './plan-shape.ts';
import { writeAsBuilt } from './write-as-built.ts';

type Length = (feet: number) => number;

/**
 * The plan as the published JSON: lengths and coordinates in the units of the site file, takeoff
 * lengths and the values of findings too, at full precision. A plain value that JSON.stringify takes as it is.
 */
export function writePlan(plan: Plan, site: Site): PlanFile {
  const length: Length = (feet) => fromFeet(feet, site.units);
  const built = asBuiltOf(plan, site);
  return {
    format: 'overrow/plan',
    version: 1,
    site: plan.site,
    units: site.units,
    code: tablesOf(site.rules).edition,
    runs: plan.runs.map((run) => writtenRun(run, length)),
    reach: plan.reach.map((reach) => writtenReach(reach, length)),
    circuits: plan.circuits,
    conduits: plan.conduits.map((conduit) => writtenConduit(conduit, length)),
    boxes: plan.boxes.map((box) => ({ ...box, at: point(box.at, length) })),
    handholes: plan.handholes.map((one) => ({ ...one, at: point(one.at, length) })),
    supply: writtenSupply(plan.supply, length),
    devices: plan.devices,
    loadCalculations: plan.loadCalculations,
    faults: plan.faults,
    takeoff: plan.takeoff.map((row) => writtenRow(row, site, length)),
    days: plan.days,
    hung: plan.hung.map((one) => writtenHung(one, length)),
    loose: plan.loose,
    findings: plan.findings.map((finding) => writtenFinding(finding, site, length)),
    checks: plan.checks,
    withheld: plan.withheld,
    notChecked: plan.notChecked,
    ...(built.drops.size > 0 && {
      asBuilt: writeAsBuilt(built, length, (finding) => writtenFinding(finding, site, length)),
    }),
  };
}

const point = <Point extends Point2 | Point3>(at: Point, length: Length): Point => at.map(length) as unknown as Point;
const path = <Point extends Point2 | Point3>(points: readonly Point[], length: Length): Point[] =>
  points.map((at) => point(at, length));
const maybe = (feet: number | null, length: Length): number | null => (feet === null ? null : length(feet));

function writtenRun(run: Run, length: Length): Run {
  const { taps } = run;
  return {
    ...run,
    length: maybe(run.length, length),
    conductorLength: maybe(run.conductorLength, length),
    taps: taps === null ? null : { equipment: length(taps.equipment), box: length(taps.box) },
    path: path(run.path, length),
  };
}

function writtenReach({ charger, stall, coverage, cases, overVehicle, worst }: Reach, length: Length): Reach {
  const { hang } = worst;
  return {
    charger,
    stall,
    coverage,
    cases: cases.map((one) => writtenCase(one, length)),
    overVehicle,
    worst: {
      ...writtenCase(worst, length),
      path: path(worst.path, length),
      inletAt: point(worst.inletAt, length),
      hang:
        hang === null
          ? null
          : {
              low: length(hang.low),
              lowAt: point(hang.lowAt, length),
              strip:
                hang.strip === null
                  ? null
                  : {
                      from: point(hang.strip.from, length),
                      to: point(hang.strip.to, length),
                      length: length(hang.strip.length),
                      path: path(hang.strip.path, length),
                    },
            },
    },
  };
}

function writtenCase(one: ReachCase, length: Length): ReachCase {
  const { direction, inlet, share, needed, available, margin } = one;
  return {
    direction,
    inlet,
    share,
    needed: maybe(needed, length),
    available: length(available),
    margin: maybe(margin, length),
  };
}

const writtenConduit = (conduit: Conduit, length: Length): Conduit => ({
  ...conduit,
  length: length(conduit.length),
  path: path(conduit.path, length),
});

const writtenSupply = ({ withoutGeneration, ...supply }: Supply, length: Length): Supply => ({
  ...supply,
  feeders: supply.feeders.map((feeder) => ({ ...feeder, length: length(feeder.length) })),
  ...(withoutGeneration === undefined ? {} : { withoutGeneration: writtenSupply(withoutGeneration, length) }),
});

const writtenHung = (hung: Hung, length: Length): Hung => ({
  ...hung,
  points: hung.points.map((one) => ({ ...one, at: point(one.at, length) })),
  runs: hung.runs.map((run) => ({ ...run, from: point(run.from, length), to: point(run.to, length) })),
});

function writtenRow(row: TakeoffRow, site: Site, length: Length): TakeoffRow {
  const feet = row.unit === 'ft';
  const written = (quantity: number): number => (feet ? length(quantity) : quantity);
  return {
    item: row.item,
    spec: row.spec,
    quantity: written(row.quantity),
    ...(row.bought && {
      bought: {
        quantity: length(row.bought.quantity),
        stock: length(row.bought.stock),
        left: length(row.bought.left),
      },
    }),
    high: written(row.high),
    ...(row.lift !== undefined && { lift: written(row.lift) }),
    unit: feet ? site.units : row.unit,
    basis: row.basis,
    of: row.of,
    parts: row.parts.map(({ of, quantity, aloft, cut }) => ({
      of,
      quantity: written(quantity),
      ...(aloft && { aloft: { high: written(aloft.high), lift: written(aloft.lift) } }),
      ...(cut && { cut: cut.map(written) }),
    })),
  };
}

function writtenFinding(finding: Finding, site: Site, length: Length): Finding {
  if (finding.unit !== 'ft') return finding;
  const { value, limit } = finding;
  return {
    ...finding,
    ...(value === undefined ? {} : { value: length(value) }),
    ...(limit === undefined ? {} : { limit: length(limit) }),
    unit: site.units,
  };
}

/** The plan as it is handed out, with numbers that are the same in every engine. */
export const publishedPlan = (plan: Plan, site: Site): PlanFile => steadyData(writePlan(plan, site));
