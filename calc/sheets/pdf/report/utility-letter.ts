import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { LoadCalculation } from '../../../plan-file/loads.ts';
import { methodWords, stepWords } from '../../../supply/service/load-rows.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { systemName } from '../../../supply/tree/system.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { right, top } from '../kit/area.ts';
import { PENS } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { ampsFigure, figure } from '../schedules/figures.ts';
import { type ReportPage, type ReportParts, report, UPRIGHT } from './report.ts';

/**
 * A page for the utility for each service: voltage, connected and demand load, the ceiling of load management, the
 * largest single step, and the fault duty that is asked for. What the site does not give is left to be filled in by hand.
 */
export const utilityLetter = (site: Site, plan: Plan, parts: ReportParts): Promise<Uint8Array> =>
  report(`${site.name}: request for electric service`, UPRIGHT, parts, [site], (lettering) => {
    const pages = plan.loadCalculations.map((load) => servicePage(site, plan, load, lettering));
    return pages.length > 0 ? pages : [nothingPage()];
  });

const nothingPage = (): ReportPage => ({
  title: 'No service',
  draw: (pen) => {
    const { field } = UPRIGHT;
    pen.text('The site draws no equipment: there is no service to ask for.', [field.x, top(field) - 40], {
      size: pen.lettering.sizes.note,
    });
  },
});

type Row = readonly [what: string, value: string];

const BLANK = '';
const kva = (va: number): string => `${figure(va / 1000, 1)} kVA`;

function servicePage(site: Site, plan: Plan, load: LoadCalculation, lettering: Lettering): ReportPage {
  return {
    title: `Service of ${load.source}`,
    draw: (pen) => {
      const { field } = UPRIGHT;
      const { sizes } = lettering;
      let y = top(field) - sizes.title;
      pen.text(`Electric service for EV charging, ${load.source}`, [field.x, y], { size: sizes.title, weight: 'bold' });
      y -= 10;
      const paragraph = (text: string): void => {
        for (const line of wrapped(text, field.width, sizes.note, lettering)) {
          y -= sizes.note * LEADING;
          pen.text(line, [field.x, y], { size: sizes.note });
        }
        y -= 6;
      };
      paragraph(
        'To the utility: please confirm that the service below can be given at this point, and fill in what is asked for under it. The loads are planned, by a calculation that goes with this page where it is wanted.',
      );
      y = drawRows(pen, 'The site', siteRows(site), y);
      y = drawRows(pen, 'Service and load', loadRowsOf(site, load), y);
      drawRows(pen, 'Asked of the utility', askedRows(site, plan, load), y);
    },
  };
}

const siteRows = ({ name, project }: Site): readonly Row[] => [
  ['Name of the site', project.number === undefined ? name : `${name}, project ${project.number}`],
  ['Address and parcel', project.address ?? BLANK],
  ['Customer, and who answers questions', project.client ?? BLANK],
  ['Wanted by (date)', BLANK],
];

function loadRowsOf(site: Site, load: LoadCalculation): readonly Row[] {
  const at = (id: string): string => {
    const node = treeOf(site).nodes.find(({ equipment }) => equipment.id === id);
    if (node === undefined) return `${Math.round(load.volts)} V`;
    const { phases, neutral } = node.primary ?? node.system;
    return `${systemName(node.primary ?? node.system)}, ${phases} phase, ${(phases === 3 ? 3 : 2) + (neutral === null ? 0 : 1)} wire`;
  };
  const chargers = load.chargers.reduce((sum, { nameplateVa }) => sum + nameplateVa, 0);
  const others = load.loads.reduce((sum, { va }) => sum + va, 0);
  const number = load.chargers.reduce((sum, { count }) => sum + count, 0);
  const decides = load.cases.find(({ method }) => method === load.decides);
  const root = load.phases === 3 ? Math.sqrt(3) : 1;
  return [
    ['Voltage at the point of connection', at(load.source)],
    [
      'Rating of the service equipment',
      load.ratingAmps === null
        ? BLANK
        : `${load.ratingAmps} A${load.service.length === 1 ? `, ${load.service[0]!.id}` : ''}`,
    ],
    ['Connected: chargers', `${number}, ${kva(chargers)}`],
    ['Connected: other loads', kva(others)],
    ...(load.generationVa > 0 ? [['Generation behind the service', kva(load.generationVa)] as Row] : []),
    ...(load.existingAmps === null ? [] : [['Measured demand there now', `${ampsFigure(load.existingAmps)} A`] as Row]),
    [
      'Demand, the greatest line',
      `${ampsFigure(load.designAmps)} A at ${Math.round(load.volts)} V, ${kva(load.designAmps * root * load.volts)}${decides === undefined ? '' : `, ${methodWords(load.decides, tablesOf(site.rules))}`}`,
    ],
    ...load.managed.map(
      ({ equipment, amps, ceilingVa }): Row => [
        `Load management at ${equipment}`,
        `holds its chargers to ${ampsFigure(amps)} A, ${kva(ceilingVa)}`,
      ],
    ),
    ['Largest single step', `${kva(load.largestStepVa)}, one charger or load coming on by itself`],
    ...load.steps.map(
      (step): Row => [
        step.of === 'one'
          ? 'Volts fall at the start of the largest charger'
          : 'Volts fall when all of it starts at once',
        stepWords(step),
      ],
    ),
    [
      'Transformer that carries it',
      load.transformerKva === null
        ? 'past the usual sizes'
        : `${load.transformerKva} kVA, the least usual size; the utility decides`,
    ],
  ];
}

function askedRows(site: Site, plan: Plan, load: LoadCalculation): readonly Row[] {
  const source = site.equipment.find(({ id }) => id === load.source);
  const taken =
    source?.faultAmps === undefined
      ? BLANK
      : `planned with ${figure(source.faultAmps, 0)} A; please confirm: ____________`;
  const ratings = plan.supply.equipment.flatMap(({ id, faultAmps }) => {
    const { interruptingAmps } = site.equipment.find((one) => one.id === id) ?? {};
    return interruptingAmps === undefined || faultAmps === undefined ? [] : [{ id, interruptingAmps }];
  });
  const least = ratings.reduce<(typeof ratings)[number] | null>(
    (low, one) => (low === null || one.interruptingAmps < low.interruptingAmps ? one : low),
    null,
  );
  return [
    ['Available fault current at the point of connection, now and with the largest transformer to come', taken],
    [
      'X/R of it',
      source?.faultXr === undefined ? BLANK : `planned with ${source.faultXr}; please confirm: ____________`,
    ],
    ['Transformer: kVA, impedance, connection', BLANK],
    ['Protection ahead of the point of connection', BLANK],
    ['Voltage range, and limits on starting or harmonics', BLANK],
    ...(least === null
      ? []
      : [
          ['Least interrupting rating planned behind it', `${figure(least.interruptingAmps, 0)} A, ${least.id}`] as Row,
        ]),
  ];
}

/** Rows under a heading, a line to write on where there is no value; returns where they end. */
function drawRows(pen: Pen, title: string, rows: readonly Row[], from: number): number {
  const { field } = UPRIGHT;
  const { sizes } = pen.lettering;
  const split = field.x + field.width * 0.42;
  const step = sizes.note * LEADING;
  let y = from - sizes.head - 8;
  pen.text(title, [field.x, y], { size: sizes.head, weight: 'bold' });
  y -= 4;
  for (const [what, value] of rows) {
    const left = wrapped(what, split - field.x - 10, sizes.note, pen.lettering);
    const lines = wrapped(value, right(field) - split, sizes.note, pen.lettering, { weight: 'bold' });
    left.forEach((line, i) => {
      pen.text(line, [field.x, y - (i + 1) * step], { size: sizes.note });
    });
    lines.forEach((line, i) => {
      pen.text(line, [split, y - (i + 1) * step], { size: sizes.note, weight: 'bold' });
    });
    const height = Math.max(left.length, lines.length, 1) * step;
    if (value === BLANK)
      pen.line(
        [
          [split, y - step - 2],
          [right(field), y - step - 2],
        ],
        PENS.hair,
      );
    y -= height + 4;
  }
  return y;
}
