import { kept } from '../../../../routing/kept/kept.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { ARC_WORDS, EQUIPMENT_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { designOf } from '../../../branches/design.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Device } from '../../../plan-file/supply.ts';
import { bondedWords } from '../../../supply/bonding/bonded-words.ts';
import { devicesIn, mainIn, ratingWords } from '../../../supply/devices/standing-in.ts';
import type { FeederConduit } from '../../../supply/feeders/feeder-conduit.ts';
import { isLengthKnown } from '../../../supply/feeders/feeder-known.ts';
import { feederIsOver } from '../../../supply/tree/over-limit.ts';
import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { type System, systemName } from '../../../supply/tree/system.ts';
import { conduitConductors, conduitSize, overLimitWords } from '../schedules/circuit-words.ts';
import { ampsFigure, figure, NONE } from '../schedules/figures.ts';

const systemWords = (system: System): string =>
  `${systemName(system)}, ${system.phases} phase, ${(system.phases === 3 ? 3 : 2) + (system.neutral === null ? 0 : 1)} wire`;

/** What a one-line says beside a piece of equipment; the first line is its name. */
export function equipmentLines({ equipment, system, primary }: SupplyNode, site: Site, plan: Plan): readonly string[] {
  const { id, kind, busAmps, mainAmps, managedAmps, kva, impedancePercent, interruptingAmps } = equipment;
  const solved = byId(plan.supply.equipment).get(id);
  const transformer = plan.supply.transformers.find((one) => one.id === id);
  const rating = [
    busAmps === undefined ? '' : `bus ${busAmps} A`,
    mainWords(plan, id, mainAmps),
    kva === undefined ? '' : `${kva} kVA`,
    impedancePercent === undefined ? '' : `${impedancePercent}% Z`,
  ];
  const load = solved && [
    `demand ${ampsFigure(solved.demandAmps)} A`,
    solved.percentLoaded === undefined ? '' : `${figure(solved.percentLoaded, 0)}% of ${solved.breakerAmps} A`,
  ];
  const volts = solved?.volts;
  return [
    `${id} ${EQUIPMENT_WORDS[kind]}`,
    primary === null ? systemWords(system) : `${Math.round(primary.volts)} V to ${systemName(system)}`,
    rating.filter(Boolean).join(', '),
    ...protectionWords(plan, `${id}.main`),
    load === undefined ? '' : load.filter(Boolean).join(', '),
    transformer === undefined || transformer.kva === 0
      ? ''
      : `load ${figure(transformer.loadKva, 1)} kVA, ${figure(transformer.percentLoaded, 0)}%`,
    kind === 'service' ? 'service disconnect, metering, main bonding jumper' : '',
    ...plan.supply.bonded.filter((one) => one.id === id).flatMap(bondedWords),
    volts === undefined || kind === 'source'
      ? ''
      : system.phases === 3
        ? `${figure(volts.AB, 1)}, ${figure(volts.BC, 1)}, ${figure(volts.CA, 1)} V under load`
        : `${figure(volts.AB, 1)} V under load`,
    solved?.faultAmps === undefined
      ? 'fault current: no figure given for the source'
      : `${figure(solved.faultAmps / 1000, 1)} kA fault current available${solved.fault?.xr === undefined ? '' : `, X/R ${figure(solved.fault.xr, 1)}`}${solved.fault?.isUnlimited === true ? ', supply unlimited' : ''}`,
    interruptingAmps === undefined ? '' : `interrupts ${figure(interruptingAmps / 1000, 1)} kA`,
    managedAmps === undefined ? '' : `chargers managed to ${managedAmps} A`,
    ...missingWords(plan, id),
    ...branchLines(site, plan, id),
  ].filter(Boolean);
}

/** The device before its busbar: its own main, that of the feeder that ends there, or that none is drawn. */
function mainWords(plan: Plan, id: string, mainAmps: number | undefined): string {
  if (mainAmps !== undefined) return `main ${mainAmps} A`;
  const main = mainIn(plan.devices, id);
  if (main === undefined) return '';
  return main.amps === null ? 'no main drawn' : `main ${main.amps} A, of ${main.of}`;
}

/** What the file says that a breaker has beside its trip, whichever end of a feeder it stands at. */
function protectionWords(plan: Plan, ...devices: readonly string[]): readonly string[] {
  const found = devices.flatMap((id) => devicesById(plan.devices).get(id) ?? []);
  return [
    ...(found.some(({ groundFault }) => groundFault === true) ? ['ground-fault protection of equipment'] : []),
    ...new Set(
      found.flatMap(({ arcEnergy }) => (arcEnergy === undefined ? [] : [`arc energy: ${ARC_WORDS[arcEnergy]}`])),
    ),
  ];
}

/** What stands about a transformer and is not drawn. */
const missingWords = (plan: Plan, id: string): readonly string[] =>
  (devicesIn(plan.devices).get(id) ?? []).flatMap(({ use, known }) =>
    known === 'missing' && use !== 'main' ? [`no ${use} device drawn`] : [],
  );

/** Branches of a panel, alike ones together, and its loads, each with its breaker. */
function branchLines(site: Site, plan: Plan, id: string): readonly string[] {
  const running = runningOf(plan.circuits);
  const alike = new Map<string, string[]>();
  const loads: string[] = [];
  for (const device of devicesIn(plan.devices).get(id) ?? []) {
    if (device.use === 'load') loads.push(loadLine(site, device));
    if (device.use !== 'charger') continue;
    addTo(alike, `${ratingWords(device)}${running.has(device.of) ? '' : ' without a run'}`, device.of);
  }
  return [
    ...[...alike].map(
      ([breaker, ids]) =>
        `(${ids.length}) ${breaker}: ${ids.length > 2 ? `${ids[0]} to ${ids.at(-1)}` : ids.join(', ')}`,
    ),
    ...loads,
  ];
}

const runningOf = kept(
  (circuits: Plan['circuits']): ReadonlySet<string> => new Set(circuits.map(({ charger }) => charger)),
);

function loadLine(site: Site, device: Device): string {
  const { id, name, va, generation } = byId(site.loads).get(device.of)!;
  return `${id} ${name}, ${ratingWords(device)}, ${figure(va, 0)} VA${generation === true ? ' generation' : ''}`;
}

/** What a one-line says beside the feeder into a piece of equipment. */
export function feederLines(
  node: SupplyNode,
  site: Site,
  plan: Plan,
  conduits: ReadonlyMap<string, FeederConduit>,
): readonly string[] {
  const { feeder, equipment } = node;
  if (feeder === null) return [];
  const { tables } = designOf(site.rules);
  const { id, breakerAmps, conductor, existing } = feeder;
  const solved = byId(plan.supply.feeders).get(id);
  const conduit = conduits.get(id);
  const poles = Math.min(3, conduit?.conductors.find(({ use }) => use === 'line')?.count ?? 3);
  const isKnown = isLengthKnown(feeder, solved);
  const length = isKnown ? printLength(solved?.length ?? feeder.length ?? Number.NaN, site.units) : 'length not known';
  const { head, end } = endsOf(plan, id, equipment.id);
  const place = !head && end ? ` at ${equipment.id}` : '';
  const sets = conductor.sets > 1 ? `${conductor.sets} sets of ` : '';
  return [
    `${id}  ${breakerAmps} A ${poles}P${place}${existing === true ? ', existing' : ''}`,
    ...protectionWords(plan, `${id}.from`, `${id}.to`),
    ...(feederIsOver(tables, node)
      ? [`${overLimitWords(tables)}, ${length}`]
      : [
          conduit === undefined
            ? `${sets}${conductor.size}`
            : `${sets}${conduitConductors(conduit)} in ${conduitSize(conduit)}`,
          `${conductor.metal} ${conductor.insulation}, ${length}`,
        ]),
    solved === undefined
      ? ''
      : `${['A', 'B', 'C'].map((line) => ampsFigure(solved.amps[line as 'A'])).join(', ')} A, drop ${isKnown ? `${figure(solved.dropPercent, 2)}%` : NONE}`,
  ].filter(Boolean);
}

/** Whether a device stands where a feeder starts, and one where it ends: that of the feeder, or a main. */
export function endsOf(plan: Plan, feeder: string, to: string): { readonly head: boolean; readonly end: boolean } {
  const names = devicesById(plan.devices);
  return { head: names.has(`${feeder}.from`), end: names.has(`${feeder}.to`) || names.has(`${to}.main`) };
}

const devicesById = kept(
  (devices: readonly Device[]): ReadonlyMap<string, Device> => new Map(devices.map((device) => [device.id, device])),
);
