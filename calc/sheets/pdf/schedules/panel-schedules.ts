import { byId } from '../../../../routing/site/look-up.ts';
import type { Equipment, Site } from '../../../../routing/site/site.ts';
import { designOf } from '../../../branches/design.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { SupplyEquipment } from '../../../plan-file/supply.ts';
import { boardMain } from '../../../supply/devices/board-main.ts';
import { faultLabel } from '../../../supply/fault/fault-labels.ts';
import { neutralAmps } from '../../../supply/panels/neutral.ts';
import { type CardCell, type PanelCard, panelCards, unbalancePercent } from '../../../supply/panels/panel-card.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { systemName } from '../../../supply/tree/system.ts';
import type { Job } from '../kit/draft.ts';
import type { Table, TableCell } from '../kit/tables/table.ts';
import { circuitFor, lineInks, sizeWords } from './circuit-words.ts';
import { ampsFigure, figure, NONE } from './figures.ts';

/** Side of a row of a door card: what the breaker serves, its wire, its rating, its volt-amperes. */
type Side = readonly [serves: string, wire: string, breaker: string, va: string];

/** The schedule of each panel as its door card has it: odd spaces on the left, even on the right. */
export function panelTables(job: Pick<Job, 'site' | 'plan'> & Partial<Pick<Job, 'date' | 'parts'>>): readonly Table[] {
  const { site, plan, parts } = job;
  const solved = byId(plan.supply.equipment);
  const equipment = byId(site.equipment);
  const { nodes, placeOf } = treeOf(site);
  return panelCards(site, plan.devices, designOf(site.rules).tables).map((card) => {
    const one = equipment.get(card.schedule.equipment)!;
    return {
      short: 'panels',
      title: `${one.kind === 'panelboard' ? 'Panel' : 'Board'} ${one.id}`,
      isWhole: true,
      lead: leadOf(site, plan, one, solved.get(one.id), job.date),
      columns: [
        { head: 'Serves', most: 16 },
        { head: 'Wire', align: 'right' },
        { head: 'Breaker' },
        { head: 'VA', align: 'right' },
        { head: 'No.', align: 'right' },
        { head: 'Line', align: 'middle' },
        { head: 'No.', align: 'right' },
        { head: 'VA', align: 'right' },
        { head: 'Breaker' },
        { head: 'Wire', align: 'right' },
        { head: 'Serves', most: 16 },
      ],
      rows: [
        ...rowsOf(card, nodes[placeOf.get(one.id)!]!.system.volts, wireOf(site, plan)),
        ...totalRows(card, nodes[placeOf.get(one.id)!]!.system.volts),
      ],
      foot: [
        spacesLine(card, parts?.has('circuits') ?? true),
        ...footOf(card, solved.get(one.id)),
        ...runless(site, plan, one.id),
      ],
    } satisfies Table;
  });
}

/** What the site does not say of a panel and its schedule asks for. */
const FILLED_IN = 'Enclosure type ____________ Mounting ____________ (by its submittal)';

function leadOf(
  site: Site,
  plan: Plan,
  { id, busAmps, managedAmps, spaces, interruptingAmps }: Equipment,
  solved: SupplyEquipment | undefined,
  date: string | undefined,
): readonly string[] {
  const node = treeOf(site).nodes.find(({ equipment }) => equipment.id === id);
  const system = node?.system;
  const label = solved === undefined || system === undefined ? null : faultLabel(solved, systemName(system), date);
  return [
    [
      system === undefined ? '' : `${systemName(system)}, ${system.phases === 3 ? '3 phase' : '1 phase'}`,
      busAmps === undefined ? '' : `bus ${busAmps} A`,
      boardMain(plan.devices, id).words,
      spaces === undefined ? '' : `${spaces} spaces`,
      node?.feeder ? `fed by ${node.feeder.id} from ${node.feeder.from}` : '',
      managedAmps === undefined ? '' : `chargers managed to ${managedAmps} A`,
      solved?.faultAmps === undefined ? 'available fault current: no figure given for the source' : '',
      interruptingAmps === undefined
        ? 'interrupting rating not entered'
        : `interrupting rating ${figure(interruptingAmps / 1000, 1)} kA`,
    ]
      .filter(Boolean)
      .join('; '),
    FILLED_IN,
    ...(label === null ? [] : [`Label: ${label}`]),
  ];
}

/** Size of the lines of what a breaker serves, by its id; nothing for a load, whose wires are not planned. */
function wireOf(site: Site, plan: Plan): (id: string) => string {
  const feeders = byId(site.feeders);
  return (id) => {
    const size = circuitFor(plan.circuits, id)?.conductor.size ?? feeders.get(id)?.conductor.size;
    return size === undefined ? NONE : sizeWords(size);
  };
}

/** What lies on each line, under its letter. */
const totalRows = ({ lineVa }: PanelCard, volts: number): Table['rows'] => {
  const inks = lineInks(volts);
  return lineVa.map(({ line, va }) => [
    `Total line ${line}`,
    '',
    '',
    figure(va, 0),
    '',
    { text: line, swatches: [inks.get(line) ?? '#20242c'] },
    '',
    '',
    '',
    '',
    '',
  ]);
};

function rowsOf({ rows }: PanelCard, volts: number, wire: (id: string) => string): Table['rows'] {
  const inks = lineInks(volts);
  return rows.map(({ line, left, right }) => {
    const letter: TableCell = { text: line, swatches: [inks.get(line) ?? '#20242c'] };
    const [odd, even] = [sideOf(left.cell, wire), sideOf(right.cell, wire)];
    return [...odd, String(left.number), letter, String(right.number), even[3], even[2], even[1], even[0]];
  });
}

function sideOf(cell: CardCell, wire: (id: string) => string): Side {
  if (cell.kind === 'space') return ['space', '', '', ''];
  if (cell.pole > 0) return ['|', '', '', ''];
  if (cell.kind === 'spare') return [`spare (${cell.was})`, '', '', ''];
  const { id, description, breakerAmps, lines, va } = cell.circuit;
  return [
    description,
    wire(id),
    `${breakerAmps ?? NONE}${breakerAmps === null ? '' : ' A'} ${lines.length}P`,
    figure(va, 0),
  ];
}

/** Where the circuit schedule is in the set it has the other wires. */
const spacesLine = ({ blank, spares }: PanelCard, isScheduled: boolean): string =>
  `Spaces ${blank}, spare ${spares}. Wire: size of each line${isScheduled ? '; grounding conductors and pilots are in the circuit schedule' : ''}.`;

function footOf(card: PanelCard, solved: SupplyEquipment | undefined): readonly string[] {
  return [
    ...card.demand.map(
      ({ what, connectedVa, percent, demandVa, basis }) =>
        `${what}: ${figure(connectedVa / 1000, 1)} kVA at ${figure(percent, 0)}%, ${figure(demandVa / 1000, 1)} kVA (${basis})`,
    ),
    ...(solved === undefined
      ? []
      : [...supplyWords(solved), unbalanceWords(solved, card.schedule.rows), ...neutralWords(card, solved)]),
    ...(card.homeless.length === 0
      ? []
      : [`No space is left on their lines for ${card.homeless.map(({ id }) => id).join(', ')}.`]),
  ];
}

/** Chargers that nothing leads to: spaces are kept for them, and no load is reckoned. */
function runless({ chargers }: Site, { runs }: Plan, board: string): readonly string[] {
  const without = new Set(runs.flatMap(({ charger, length }) => (length === null ? [charger] : [])));
  const own = chargers.filter(({ id, from }) => from === board && without.has(id));
  return own.length === 0
    ? []
    : [
        `Without a run: ${own.map(({ id }) => id).join(', ')}; spaces are kept, and what they draw is on the lines above and not in what is connected.`,
      ];
}

/** What a neutral carries with the third harmonics of what lies on it. */
function neutralWords({ toNeutral: { amps, thirdHarmonic } }: PanelCard, solved: SupplyEquipment): readonly string[] {
  if (solved.amps.N === undefined || amps === 0) return [];
  const { fundamental, third, rms } = neutralAmps(solved.amps.N, amps, thirdHarmonic);
  return [
    `Neutral ${ampsFigure(rms)} A with ${figure(100 * thirdHarmonic, 0)}% third harmonic in loads to neutral: ${ampsFigure(fundamental)} A and ${ampsFigure(third)} A of third`,
  ];
}

/** How unevenly the lines of a board are loaded. */
const unbalanceWords = (solved: SupplyEquipment, rows: string): string =>
  `Unbalance ${figure(unbalancePercent(solved, rows), 1)}%: the greatest line over the mean of the lines, less one`;

/** What the plan found for a piece of equipment: load, lines, what is left. */
export function supplyWords({
  amps,
  connectedVa,
  demandAmps,
  unitDemandAmps,
  breakerAmps,
  percentLoaded,
  spareAmps,
  spareSpaces,
  faultAmps,
  chargerShare,
}: SupplyEquipment): readonly string[] {
  const lines = (['A', 'B', 'C', 'N'] as const).flatMap((line) =>
    amps[line] === undefined ? [] : [`${line} ${ampsFigure(amps[line])}`],
  );
  return [
    `Connected ${figure(connectedVa / 1000, 1)} kVA; demand ${ampsFigure(demandAmps)} A${
      breakerAmps === undefined
        ? ''
        : ` of ${breakerAmps} A${percentLoaded === undefined ? '' : ` (${figure(percentLoaded, 0)}%)`}`
    }`,
    ...(unitDemandAmps === undefined
      ? []
      : [`Demand ${ampsFigure(unitDemandAmps)} A with the code’s least load for each charger`]),
    `Line amps ${lines.join(', ')}${chargerShare < 1 ? `; chargers held to ${figure(100 * chargerShare, 0)}% of their rating` : ''}`,
    ...(spareAmps === undefined && spareSpaces === undefined
      ? []
      : [
          `Left: ${[spareAmps === undefined ? '' : `${ampsFigure(spareAmps)} A`, spareSpaces === undefined ? '' : `${spareSpaces} spaces`].filter(Boolean).join(', ')}`,
        ]),
    ...(faultAmps === undefined ? [] : [`Fault current available ${figure(faultAmps / 1000, 1)} kA`]),
  ];
}
