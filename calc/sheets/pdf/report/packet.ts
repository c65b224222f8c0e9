import { byId } from '../../../../routing/site/look-up.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { whyCircuit } from '../../../why/why.ts';
import { whyBox, whyBranchFault, whyEquipment, whyFeeder, whyLoad } from '../../../why/why-supply.ts';
import type { Step } from '../../../words/explain.ts';
import { stepFigure } from '../../../words/step-words.ts';
import { assumptionsTable } from '../cover/criteria.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { flowTables, type Table, type TablePage } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { ampsFigure, figure, lengthWords, NONE } from '../schedules/figures.ts';
import { type PacketEntry, packetEntries } from '../schedules/packet-entries.ts';
import { askedTable } from './asked-table.ts';
import { LYING, type ReportPage, type ReportParts, report } from './report.ts';
import { studyTables } from './study-tables.ts';

/** Members of a group of circuits that its table lists. */
const MOST_LISTED = 400;

/**
 * The calculations of a plan as one PDF: what is to be confirmed, the load of each service, and for every transformer,
 * board, feeder and circuit the steps by which its figures were found, each with formula, values and source. Circuits
 * that are alike but for their length are worked once, and listed.
 */
export const calculationPacket = (site: Site, plan: Plan, parts: ReportParts): Promise<Uint8Array> =>
  report(`${site.name}: calculations`, LYING, parts, [site], (lettering) => packetPages(site, plan, lettering));

function packetPages(site: Site, plan: Plan, lettering: Lettering): readonly ReportPage[] {
  const entries = packetEntries(site, plan);
  const tables = [
    assumptionsTable(site, LYING.field.width),
    notGiven(plan),
    ...plan.loadCalculations.map(
      ({ source }): Table => stepsTable(`Load of the service of ${source}`, whyLoad(site, source), site),
    ),
    ...studyTables(site, plan, LYING.field.width),
    askedTable(site, plan, LYING.field.width),
    ...entries.flatMap((entry) => entryTables(site, plan, entry)),
  ].filter(({ rows }) => rows.length > 0);
  const body = flowTables(tables, LYING.field, lettering);
  const firstPage = new Map<Table, number>();
  body.forEach((page, i) => {
    for (const { table } of page) if (!firstPage.has(table)) firstPage.set(table, i);
  });
  // The index has as many rows whatever pages it names: its own length is known before they are.
  const index = (before: number): readonly TablePage[] =>
    flowTables([indexTable(site, plan, entries, tables, firstPage, before)], LYING.field, lettering);
  const pages = [...index(index(0).length), ...body];
  return pages.map((page) => ({
    title: page[0]?.title ?? '',
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
    },
  }));
}

function indexTable(
  site: Site,
  plan: Plan,
  entries: readonly PacketEntry[],
  tables: readonly Table[],
  firstPage: ReadonlyMap<Table, number>,
  before: number,
): Table {
  const circuits = entries.filter(({ kind }) => kind === 'circuits');
  return {
    short: 'index',
    title: 'Calculations',
    width: LYING.field.width,
    lead: [
      `By the tables of ${tablesOf(site.rules).edition}. The schedules of the drawing set name each calculation by its number here.`,
      `${counted(plan.circuits.length, 'branch circuit')} in ${counted(circuits.length, 'group')}: those of a panel that are alike but for their length and lines are worked once, for that with the greatest drop.`,
    ],
    columns: [
      { head: 'Calculation', most: 90 },
      { head: 'Page', align: 'right' },
    ],
    rows: tables.flatMap((table) =>
      table.short === 'members' ? [] : [[table.title, String(before + (firstPage.get(table) ?? 0) + 1)]],
    ),
  };
}

/** What of the site is not given, and was taken somehow or left out. */
const notGiven = ({ findings, notChecked }: Plan): Table => ({
  short: 'not given',
  title: 'Not given, and not looked at',
  width: LYING.field.width,
  columns: [{ head: 'About', most: 18 }, { head: 'What' }],
  rows: [
    ...findings
      .filter(({ rule }) => NOT_GIVEN.has(rule))
      .map(({ about, says }) => [about.slice(0, 4).join(', '), says]),
    ...notChecked.map((says) => ['not looked at', says]),
  ],
});

const NOT_GIVEN: ReadonlySet<string> = new Set(['supply-source', 'supply-data', 'fault-current', 'bonding']);

function entryTables(site: Site, plan: Plan, { number, kind, of }: PacketEntry): readonly Table[] {
  const id = of[0]!;
  if (kind === 'feeder') return [stepsTable(`${number}  Feeder ${id}`, whyFeeder(site, id), site)];
  if (kind === 'equipment') {
    const { kind: what } = byId(site.equipment).get(id)!;
    return [stepsTable(`${number}  ${id}, ${what}`, whyEquipment(site, id), site)];
  }
  const { from } = plan.circuits.find(({ charger }) => charger === id)!;
  const title =
    of.length === 1
      ? `${number}  Circuit of ${id}, from ${from}`
      : `${number}  ${of.length} circuits alike from ${from}, worked for ${id}`;
  const steps = [...whyCircuit(site, id), ...whyBox(site, id), ...whyBranchFault(site, id)];
  return [stepsTable(title, steps, site), ...(of.length === 1 ? [] : [membersTable(site, plan, of, number)])];
}

const stepsTable = (title: string, steps: readonly Step[], { units }: Site): Table => ({
  short: title,
  title,
  width: LYING.field.width,
  columns: [
    { head: 'Found', most: 14 },
    { head: 'Formula', most: 26 },
    { head: 'Values', most: 26 },
    { head: 'Result', most: 13, align: 'right' },
    { head: 'By' },
  ],
  rows: steps.map(({ find, formula, values, result, unit, source }) => [
    find,
    formula,
    Object.entries(values)
      .map(([name, value]) => `${name} ${stepFigure(value, units)}`)
      .join('; '),
    stepFigure(result, units, unit),
    source,
  ]),
});

/** The circuits of a group, each with what its length makes of it. */
function membersTable(site: Site, plan: Plan, of: readonly string[], number: string): Table {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const runs = new Map(plan.runs.map((run) => [run.charger, run]));
  const faults = new Map(plan.faults.map((fault) => [fault.charger, fault]));
  const listed = of.slice(0, MOST_LISTED);
  return {
    short: 'members',
    title: `${number}  The circuits`,
    columns: [
      { head: 'Charger' },
      { head: 'Lines' },
      { head: 'Conductor length', align: 'right' },
      { head: 'Branch drop %', align: 'right' },
      { head: 'Worst drop %', align: 'right' },
      { head: 'Volts at box', align: 'right' },
      { head: 'Fault A', align: 'right' },
      { head: 'Least fault A', align: 'right' },
    ],
    rows: listed.map((id) => {
      const circuit = circuits.get(id)!;
      const fault = faults.get(id);
      const least = fault && Math.min(fault.least.lineToLine, fault.least.lineToGround ?? Infinity);
      return [
        id,
        circuit.phases,
        lengthWords(runs.get(id)?.conductorLength ?? null, site.units),
        figure(circuit.branchDropPercent, 2),
        figure(circuit.worstDropPercent, 2),
        figure(circuit.voltsAtBox, 1),
        fault === undefined ? NONE : ampsFigure(fault.most),
        least === undefined ? NONE : ampsFigure(least),
      ];
    }),
    foot: listed.length < of.length ? [`And ${of.length - listed.length} more, in the runs table.`] : [],
  };
}
