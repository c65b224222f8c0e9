import { indexById } from '../../../../routing/site/ids.ts';
import type { ChargingDay, Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { DayInput } from '../../../day/day-input.ts';
import { dayView } from '../../../day/figures/day-view.ts';
import { lackWords, STRATEGY_WORDS } from '../../../day/figures/day-words.ts';
import { panelLoads } from '../../../day/figures/panel-loads.ts';
import { dayGround, managedLimits, plannedDay, siteDay } from '../../../day/planned-days.ts';
import { STRATEGIES } from '../../../day/rules/rules.ts';
import type { PlannedDay } from '../../../plan-file/day.ts';
import { linesOf, treeOf } from '../../../supply/tree/supply-lines.ts';
import { right, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { flowTables, type Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { drawViewTitle, FOOT } from '../kit/view/view-title.ts';
import type { TableGroup } from '../schedules/schedule-sheets.ts';
import { drawCars } from './day-cars-drawing.ts';
import { drawLimit, drawPanels } from './day-load-drawing.ts';
import { meterGroup } from './meter-sheets.ts';

/** Limits that are drawn of one day: those that management sets, or the first. */
const MOST_LIMITS = 3;
const GAP = 18;

/** For each day of charging that can be worked a sheet with load against limit, cars, what each rule gives and assumptions. */
export function daySheets(job: Job): readonly Draft[] {
  return workedDays(job).map(
    ({ day, input, planned }): Draft => ({
      key: `day ${day.id}`,
      series: 'E-6',
      title: `Charging day ${day.id}`,
      scale: NOT_TO_SCALE,
      draw: (pen) => drawDay(pen, job, day, input, planned),
    }),
  );
}

/** The energy and cost by stall of those days, for the sheets of tables. */
export const dayMeters = (job: Job): TableGroup => meterGroup(job, workedDays);

/** The days of a site that can be worked. */
function workedDays({ site }: Job) {
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  return site.days.flatMap((day) => {
    const read = siteDay(day, ground);
    if (!read.ok) return [];
    const planned = plannedDay(day, ground);
    return [{ day, input: read.day, planned, rule: planned.strategy }];
  });
}

function drawDay(pen: Pen, { site, shape }: Job, day: ChargingDay, input: DayInput, planned: PlannedDay): void {
  const { field } = shape;
  const room = { ...field, y: field.y + FOOT, height: field.height - FOOT };
  const left = { ...room, width: 0.6 * room.width };
  const side = { ...room, x: right(left) + GAP, width: room.width - left.width - GAP };
  const limits = managedLimits(planned.limits, site.equipment).slice(0, MOST_LIMITS);
  const share = left.height / (limits.length + 1);
  limits.forEach((limit, i) => {
    const view = dayView(input, planned.strategy, limit, null);
    const { id, kind } = planned.limits[limit]!;
    const words = `${id}, ${kind === 'kw' ? 'kilowatts' : 'amperes of the fullest line'}: filled, under the rule; heavy, what is left for charging; dotted, without management`;
    drawLimit(pen, { ...left, y: top(left) - (i + 1) * share, height: share - GAP }, words, view);
  });
  const view = dayView(input, planned.strategy, limits[0] ?? -1, null);
  const panelOf = new Map(site.chargers.map(({ id, from }) => [id, from]));
  drawPanels(pen, { ...left, height: share - GAP }, view, panelLoads(view, input, panelOf), input);
  let y = top(side);
  const [page = []] = flowTables([rulesTable(planned)], side, pen.lettering);
  for (const part of page) {
    drawTable(pen, part);
    y = Math.min(y, part.area.y);
  }
  const { small } = pen.lettering.sizes;
  const lines = notesOf(day, input, planned).flatMap((note) => wrapped(note, side.width, small, pen.lettering));
  const under = room.y + lines.length * small * LEADING;
  const drawn = drawCars(pen, { ...side, y: under, height: y - under - GAP }, view, inStallOrder(site));
  for (const [i, line] of lines.entries()) pen.text(line, [side.x, under - (i + 1) * small * LEADING], { size: small });
  const notDrawn = site.chargers.length - drawn;
  const says =
    `${day.name ?? day.id}, ${day.from} to ${day.to}, ${STRATEGY_WORDS[planned.strategy]}.` +
    (notDrawn > 0 ? ` ${counted(notDrawn, 'charger')} not drawn; the sheet of cars has all.` : '');
  drawViewTitle(pen, { ...field, height: FOOT }, '1', `Charging day ${day.id}`, says);
}

const rulesTable = ({ strategies, strategy }: PlannedDay): Table => ({
  short: 'rules',
  title: 'What each rule gives',
  columns: [
    { head: 'Rule', most: 16 },
    { head: 'kWh', align: 'right' },
    { head: 'Short', align: 'right' },
    { head: 'Worst', align: 'right' },
    { head: 'Peak kW', align: 'right' },
    { head: 'Cost', align: 'right' },
  ],
  rows: STRATEGIES.map((name) => {
    const { energy, carsShort, worstShort, peakKw, cost } = strategies[name]!;
    return [
      `${STRATEGY_WORDS[name]}${name === strategy ? ' (the lot)' : ''}`,
      energy.toFixed(0),
      String(carsShort),
      lackWords(worstShort),
      peakKw.toFixed(1),
      cost > 0 ? cost.toFixed(2) : '',
    ];
  }),
  foot: ['Short: of what the car asks. Cost: of a billing period.'],
});

function notesOf(day: ChargingDay, input: DayInput, { findings, cars }: PlannedDay): readonly string[] {
  const { population } = day;
  const { tariff } = input;
  return [
    population === undefined
      ? `${counted(cars.length, 'car')} as listed.`
      : `${counted(cars.length, 'car')} made from seed ${population.seed} of the tables of the kind ${population.kind}; counts of this lot are better.`,
    `Steps of ${input.step} minutes, constant current in each; power at nominal volts and unity power factor. ` +
      (input.hold === 'stay' ? 'A car keeps its cord until it goes.' : 'A car that is full hands its cord on.'),
    tariff === null
      ? 'No tariff is given.'
      : `Tariff: energy by the hour as under the axis${tariff.demand.length > 0 ? `; demand ${tariff.demand.map(({ from, to, price }) => `${price} a kW ${from} to ${to}`).join(', ')}` : ''}; ${counted(tariff.days, 'such day')} in a billing period.`,
    ...findings.map(({ says }) => says),
    'Planning figures: real cars and drivers differ, and the listing and settings of the load management govern.',
  ];
}

/** Chargers in the order of their stalls in the file. */
function inStallOrder({ chargers, stalls }: Site): readonly string[] {
  const place = indexById(stalls);
  const first = (ids: readonly string[]): number =>
    ids.reduce((least, id) => Math.min(least, place.get(id) ?? stalls.length), stalls.length);
  return chargers.toSorted((a, b) => first(a.stalls) - first(b.stalls)).map(({ id }) => id);
}
