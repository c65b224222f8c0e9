import { byId } from '../../../../routing/site/look-up.ts';
import type { Equipment, Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { SupplyEquipment } from '../../../plan-file.ts';
import { protectorsOf } from '../../../supply/devices/protecting.ts';
import { mainIn } from '../../../supply/devices/standing-in.ts';
import { type PanelCircuit, type PanelSchedule, panelSchedules } from '../../../supply/panels/panel-schedule.ts';
import { linesOf, treeOf } from '../../../supply/tree/supply-lines.ts';
import { systemName } from '../../../supply/tree/system.ts';
import type { Job } from '../kit/draft.ts';
import type { Table, TableCell } from '../kit/table.ts';
import { lineInks } from './circuit-words.ts';
import { ampsFigure, figure, NONE } from './figures.ts';

/** Side of a row of a door card: what the breaker serves, its rating, its volt-amperes. */
type Side = readonly [serves: string, breaker: string, va: string];

const EMPTY: Side = ['', '', ''];

/** The schedule of each panel as its door card has it: odd spaces on the left, even on the right. */
export function panelTables(job: Pick<Job, 'site' | 'plan'>): readonly Table[] {
  const { site, plan } = job;
  const solved = byId(plan.supply.equipment);
  const equipment = byId(site.equipment);
  return [...panelSchedules(site).values()].map((schedule) => {
    const one = equipment.get(schedule.equipment)!;
    return {
      short: 'panels',
      title: `${one.kind === 'panelboard' ? 'Panel' : 'Board'} ${one.id}`,
      isWhole: true,
      lead: leadOf(site, plan, one, solved.get(one.id)),
      columns: [
        { head: 'Serves', most: 14 },
        { head: 'Breaker' },
        { head: 'VA', align: 'right' },
        { head: 'No.', align: 'right' },
        { head: 'Line', align: 'middle' },
        { head: 'No.', align: 'right' },
        { head: 'VA', align: 'right' },
        { head: 'Breaker' },
        { head: 'Serves', most: 14 },
      ],
      rows: rowsOf(job, schedule),
      foot: footOf(schedule, solved.get(one.id)),
    } satisfies Table;
  });
}

function leadOf(
  site: Site,
  plan: Plan,
  { id, busAmps, mainAmps, managedAmps, spaces, interruptingAmps }: Equipment,
  solved: SupplyEquipment | undefined,
): readonly string[] {
  const node = treeOf(site).nodes.find(({ equipment }) => equipment.id === id);
  const system = node?.system;
  return [
    [
      system === undefined ? '' : `${systemName(system)}, ${system.phases === 3 ? '3 phase' : '1 phase'}`,
      busAmps === undefined ? '' : `bus ${busAmps} A`,
      mainAmps === undefined ? protectionWords(plan, id) : `main ${mainAmps} A`,
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
  ];
}

/** What protects a board without a main of its own. */
function protectionWords({ devices }: Plan, id: string): string {
  const main = mainIn(devices, id);
  if (main !== undefined) return main.amps === null ? 'no main drawn' : `main ${main.amps} A, the device of ${main.of}`;
  const head = protectorsOf(devices).get(id)?.[0];
  return head === undefined
    ? 'main lugs or not given'
    : `main lugs, behind the ${head.amps} A of ${head.of} at ${head.at}`;
}

function rowsOf({ site, plan }: Pick<Job, 'site' | 'plan'>, schedule: PanelSchedule): Table['rows'] {
  const node = treeOf(site).nodes.find(({ equipment }) => equipment.id === schedule.equipment);
  const volts = node?.system.volts ?? 208;
  const letters =
    node === undefined || node.system.phases === 3 ? 'ABC' : (linesOf(site).equipment.get(schedule.equipment) ?? 'AB');
  const inks = lineInks(volts);
  const bySpace = new Map<number, Side>();
  const breakers = new Map(plan.circuits.map(({ charger, breakerAmps }) => [charger, breakerAmps]));
  for (const circuit of schedule.circuits)
    circuit.spaces.forEach((space, i) => {
      bySpace.set(space, i === 0 ? sideOf(site, circuit, breakers) : ['|', '', '']);
    });
  const used = Math.max(0, ...bySpace.keys());
  const count = Math.ceil(Math.max(schedule.spaces ?? 0, used) / 2);
  return Array.from({ length: count }, (_, i) => {
    const letter = letters[i % letters.length]!;
    const line: TableCell = { text: letter, swatches: [inks.get(letter) ?? '#20242c'] };
    const [odd, even] = [bySpace.get(2 * i + 1) ?? EMPTY, bySpace.get(2 * i + 2) ?? EMPTY];
    return [...odd, String(2 * i + 1), line, String(2 * i + 2), even[2], even[1], even[0]];
  });
}

function sideOf(site: Site, { id, serves, lines }: PanelCircuit, breakers: ReadonlyMap<string, number>): Side {
  const poles = lines.length;
  if (serves === 'charger') {
    const charger = byId(site.chargers).get(id);
    const amps = breakers.get(id);
    const va = charger && charger.amps * charger.volts * (charger.phases === 3 ? Math.sqrt(3) : 1);
    return [id, amps === undefined ? `${NONE} ${poles}P` : `${amps} A ${poles}P`, figure(va, 0)];
  }
  if (serves === 'feeder') {
    const feeder = byId(site.feeders).get(id);
    return [`${id} to ${feeder?.to ?? NONE}`, `${feeder?.breakerAmps ?? NONE} A ${poles}P`, ''];
  }
  const load = byId(site.loads).get(id);
  return [load === undefined ? id : `${id} ${load.name}`, `${poles}P`, figure(load?.va, 0)];
}

function footOf(schedule: PanelSchedule, solved: SupplyEquipment | undefined): readonly string[] {
  const homeless = schedule.circuits.filter(({ spaces }) => spaces.length === 0).map(({ id }) => id);
  return [
    ...(solved === undefined ? [] : supplyWords(solved)),
    ...(homeless.length === 0 ? [] : [`No space is left on their lines for ${homeless.join(', ')}.`]),
  ];
}

/** What the plan found for a piece of equipment: load, lines, what is left. */
export function supplyWords({
  amps,
  connectedVa,
  demandAmps,
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
    `Line amps ${lines.join(', ')}${chargerShare < 1 ? `; chargers held to ${figure(100 * chargerShare, 0)}% of their rating` : ''}`,
    ...(spareAmps === undefined && spareSpaces === undefined
      ? []
      : [
          `Left: ${[spareAmps === undefined ? '' : `${ampsFigure(spareAmps)} A`, spareSpaces === undefined ? '' : `${spareSpaces} spaces`].filter(Boolean).join(', ')}`,
        ]),
    ...(faultAmps === undefined ? [] : [`Fault current available ${figure(faultAmps / 1000, 1)} kA`]),
  ];
}
