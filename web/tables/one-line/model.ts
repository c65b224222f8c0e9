import type { UncountedPlan } from '../../../calc/plan/plan-shape.ts';
import type { PhasePair } from '../../../calc/plan-file/branches.ts';
import type { Device, SupplyEquipment } from '../../../calc/plan-file/supply.ts';
import { isLengthKnown } from '../../../calc/supply/feeders/feeder-known.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import type { SupplyNode } from '../../../calc/supply/tree/supply-tree.ts';
import { systemName } from '../../../calc/supply/tree/system.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Severity } from '../../../routing/site/rules/finding.ts';
import type { EquipmentKind, Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import { severityAmong } from '../../board/scene/severity.ts';
import { nearestInch } from '../../words/lengths.ts';

/** Chargers of one piece of equipment on the same lines. */
export interface ChargerGroup {
  readonly lines: PhasePair;
  readonly chargers: readonly { readonly id: string; readonly drop: string }[];
}

/** A device on a feeder; one that is missing is drawn as such. */
export interface DeviceMark {
  readonly amps: number | null;
  readonly poles: number;
  readonly missing: boolean;
}

export interface FeederPart {
  readonly id: string;
  readonly says: readonly string[];
  readonly existing: boolean;
  readonly worst: Severity | null;
  /** Where it leaves what feeds it, and where it comes in; null where none stands. */
  readonly out: DeviceMark | null;
  readonly in: DeviceMark | null;
}

/** One piece of equipment of the one-line with what comes into it and what hangs on it. */
export interface OneLineItem {
  readonly id: string;
  readonly kind: EquipmentKind;
  readonly says: readonly string[];
  readonly worst: Severity | null;
  readonly feeder: FeederPart | null;
  /** Lines on which a single-phase charger can lie there. */
  readonly pairs: readonly PhasePair[];
  readonly groups: readonly ChargerGroup[];
  readonly loads: readonly { readonly id: string; readonly name: string; readonly lines: Lines }[];
  readonly children: readonly OneLineItem[];
}

/** The supply as a one-line shows it: each source with what it feeds, in the order of the feeders. */
export function oneLineItems(site: Site, plan: UncountedPlan): readonly OneLineItem[] {
  const { nodes } = treeOf(site);
  const lines = linesOf(site);
  const solved = byId(plan.supply.equipment);
  const feeders = byId(plan.supply.feeders);
  const transformers = byId(plan.supply.transformers);
  const devices = new Map(plan.devices.map((device) => [device.id, device]));
  const worst = (id: string): Severity | null => severityAmong(plan.findings, site.chargers, id);
  const groups = chargerGroups(site, lines.chargers);
  const loads = groupedBy(site.loads, ({ from }) => from);
  const fed = groupedBy([...nodes.keys()], (place) => nodes[place]!.parent);

  const feederOf = ({ feeder, equipment }: SupplyNode): FeederPart | null => {
    if (feeder === null) return null;
    const { id, conductor, existing } = feeder;
    const own = feeders.get(id);
    const known = isLengthKnown(feeder, own);
    const sets = conductor.sets > 1 ? `${conductor.sets} x ` : '';
    return {
      id,
      existing: existing === true,
      worst: worst(id),
      out: markOf(devices.get(`${id}.from`)),
      in: markOf(devices.get(`${id}.to`) ?? devices.get(`${equipment.id}.main`)),
      says: [
        `${sets}${conductor.size} ${conductor.metal}, ${known ? nearestInch(own?.length ?? feeder.length ?? Number.NaN, site.units) : 'length not known'}`,
        ...(own === undefined
          ? []
          : [
              ampsWords(own.amps),
              `${own.percentLoaded.toFixed(0)}% loaded${known ? `, drop ${own.dropPercent.toFixed(2)}%` : ''}`,
            ]),
        ...(['from', 'to'].some((end) => devices.get(`${id}.${end}`)?.groundFault === true) ? [GROUND_FAULT] : []),
      ],
    };
  };
  const itemOf = (place: number): OneLineItem => {
    const node = nodes[place]!;
    const { id, kind } = node.equipment;
    return {
      id,
      kind,
      worst: worst(id),
      says: equipmentWords(node, solved.get(id), transformers.get(id)?.percentLoaded, devices.get(`${id}.main`)),
      feeder: feederOf(node),
      pairs: node.system.phases === 3 ? ['AB', 'BC', 'CA'] : [lines.equipment.get(id) ?? 'AB'],
      groups: groups.get(id) ?? [],
      loads: (loads.get(id) ?? []).map((load) => ({
        id: load.id,
        name: load.name,
        lines: lines.loads.get(load.id) ?? 'ABC',
      })),
      children: (fed.get(place) ?? []).map(itemOf),
    };
  };
  return (fed.get(-1) ?? []).map(itemOf);
}

function groupedBy<K, V>(items: readonly V[], keyOf: (item: V) => K): ReadonlyMap<K, readonly V[]> {
  const groups = new Map<K, V[]>();
  for (const item of items) addTo(groups, keyOf(item), item);
  return groups;
}

const ORDER: readonly PhasePair[] = ['AB', 'BC', 'CA', 'ABC'];

function chargerGroups(
  site: Site,
  lines: ReadonlyMap<string, PhasePair>,
): ReadonlyMap<string, readonly ChargerGroup[]> {
  const byEquipment = groupedBy(site.chargers, ({ from }) => from);
  return new Map(
    [...byEquipment].map(([id, chargers]) => {
      const byLines = groupedBy(chargers, (charger) => lines.get(charger.id) ?? 'ABC');
      return [id, ORDER.flatMap((own) => (byLines.has(own) ? [{ lines: own, chargers: byLines.get(own)! }] : []))];
    }),
  );
}

const GROUND_FAULT = 'ground-fault protection';

const markOf = (device: Device | undefined): DeviceMark | null =>
  device === undefined ? null : { amps: device.amps, poles: device.poles, missing: device.known === 'missing' };

/** Amperes of lines A, B, C, and of the neutral where it carries any that the eye would see. */
const ampsWords = ({ A, B, C, N = 0 }: SupplyEquipment['amps']): string =>
  `${[A, B, C].map((one) => one.toFixed(0)).join(', ')} A${N < 0.5 ? '' : `, N ${N.toFixed(0)}`}`;

function equipmentWords(
  { equipment, system, primary }: SupplyNode,
  solved: SupplyEquipment | undefined,
  transformerPercent: number | undefined,
  main: Device | undefined,
): readonly string[] {
  const { kind, kva, mainAmps, interruptingAmps, managedAmps } = equipment;
  const name = systemName(system);
  const says = [primary === null ? `${name}, ${system.phases} phase` : `${Math.round(primary.volts)} V to ${name}`];
  if (kva !== undefined) {
    const loaded = transformerPercent === undefined ? '' : `, ${transformerPercent.toFixed(0)}% loaded`;
    says.push(`${kva} kVA${loaded}`);
  }
  const mainOf = main?.amps ?? mainAmps;
  if (main?.known === 'missing') says.push('no main given');
  else if (mainOf !== undefined) says.push(`main ${mainOf} A`);
  if (main?.groundFault === true) says.push(GROUND_FAULT);
  if (managedAmps !== undefined) says.push(`managed to ${managedAmps} A`);
  if (solved === undefined) return says;
  const { volts, amps, demandAmps, percentLoaded, faultAmps } = solved;
  if (kind !== 'source')
    says.push(
      `${(system.phases === 3 ? [volts.AB, volts.BC, volts.CA] : [volts.AB]).map((one) => one.toFixed(1)).join(', ')} V`,
    );
  says.push(ampsWords(amps));
  says.push(`demand ${demandAmps.toFixed(0)} A${percentLoaded === undefined ? '' : `, ${percentLoaded.toFixed(0)}%`}`);
  const rated = interruptingAmps === undefined ? '' : ` of ${(interruptingAmps / 1000).toFixed(0)}`;
  says.push(faultAmps === undefined ? 'fault current not given' : `fault ${(faultAmps / 1000).toFixed(1)}${rated} kA`);
  return says;
}
