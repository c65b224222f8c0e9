import { kept } from '../../../routing/kept/kept.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Feeder } from '../../../routing/site/site.ts';
import type { Device } from '../../plan-file/supply.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { devicePlace, startsWithout } from './device-place.ts';

const BOARDS: ReadonlySet<string> = new Set(['service', 'panelboard', 'switchboard']);

/**
 * Devices of equipment and feeders: for each piece of equipment, after what feeds it, the device at the head of its feeder
 * and the one before or in it. A feeder whose device stands where it ends and a main there are one device, with the
 * rating of the main. Remembered; chargers and loads have no say in it but where a transformer feeds them itself.
 * @param straight transformers that feed chargers or loads themselves
 */
export const supplyDevices = kept(
  (tree: SupplyTree, lines: SupplyLines, straight: readonly string[]): readonly Device[] => {
    const bare = new Set(straight);
    return tree.nodes.flatMap((node) => [
      ...headOf(node, tree, lines),
      ...mainOf(node, tree, lines),
      ...(node.primary !== null && bare.has(node.equipment.id) ? [secondaryOf(node)] : []),
    ]);
  },
);

/** Lines and volts that come in to a node. */
function incoming(node: SupplyNode, { equipment }: SupplyLines): Pick<Device, 'lines' | 'poles' | 'volts'> {
  const lines: Lines = equipment.get(node.equipment.id) ?? 'ABC';
  return { lines, poles: lines.length, volts: (node.primary ?? node.system).volts };
}

/** The device where a feeder starts. */
function headOf(node: SupplyNode, { nodes }: SupplyTree, lines: SupplyLines): Device[] {
  const { feeder, parent, equipment } = node;
  if (feeder === null || startsWithout(feeder, nodes[parent]!.equipment)) return [];
  return [
    {
      id: `${feeder.id}.from`,
      use: node.primary !== null ? 'primary' : nodes[parent]!.primary !== null ? 'secondary' : 'feeder',
      at: feeder.from,
      of: feeder.id,
      protects: [feeder.id, equipment.id],
      amps: feeder.breakerAmps,
      ...incoming(node, lines),
      volts: nodes[parent]!.system.volts,
      known: feeder.device === undefined ? 'assumed' : 'drawn',
      existing: feeder.existing === true,
      ...protectionOf(feeder),
    },
  ];
}

/** What the file says that a device has. */
const protectionOf = ({
  groundFault,
  arcEnergy,
}: Pick<Feeder, 'groundFault' | 'arcEnergy'>): Pick<Device, 'groundFault' | 'arcEnergy'> => ({
  ...(groundFault === true ? { groundFault } : {}),
  ...(arcEnergy === undefined ? {} : { arcEnergy }),
});

/** Whether the feeder into a node ends in one device. Grouped devices of an industrial switchboard are several. */
function endsInDevice(node: SupplyNode, above: SupplyNode['equipment']): boolean {
  const place = devicePlace(node.feeder!, above);
  return place !== 'from' && place !== 'none' && !isGrouped(node);
}

/** Whether a feeder ends in several devices grouped in a switchboard without a main. */
export const isGrouped = ({ feeder, equipment: { kind, mainAmps } }: SupplyNode): boolean =>
  feeder?.tapCondition === 'industrial' && mainAmps === undefined && (kind === 'switchboard' || kind === 'service');

/** The device that comes in: a main, that of the feeder where it ends, or one that is needed and was not drawn. */
function mainOf(node: SupplyNode, { nodes }: SupplyTree, lines: SupplyLines): Device[] {
  const { feeder, equipment, primary } = node;
  const { id, kind, mainAmps } = equipment;
  const isMain = primary === null && mainAmps !== undefined;
  const ends = feeder !== null && endsInDevice(node, nodes[node.parent]!.equipment);
  const common = { use: primary === null ? 'main' : 'primary', at: id, ...incoming(node, lines) } as const;
  if (isMain) {
    const protects = ends ? [feeder.id, id] : [id];
    const has = { ...(ends ? protectionOf(feeder) : {}), ...protectionOf(equipment) };
    return [{ id: `${id}.main`, ...common, of: id, protects, amps: mainAmps, known: 'drawn', existing: false, ...has }];
  }
  if (ends) {
    const known = feeder.device === undefined ? 'assumed' : 'drawn';
    const existing = feeder.existing === true;
    const { id: of, breakerAmps: amps } = feeder;
    const has = { ...(primary === null ? protectionOf(equipment) : {}), ...protectionOf(feeder) };
    return [{ id: `${of}.to`, ...common, of, protects: [of, id], amps, known, existing, ...has }];
  }
  if (feeder !== null || !(primary !== null || BOARDS.has(kind))) return [];
  const name = primary === null ? 'main' : 'primary';
  return [{ id: `${id}.${name}`, ...common, of: id, protects: [id], amps: null, known: 'missing', existing: false }];
}

/** What a transformer needs that feeds chargers or loads with no board between. */
function secondaryOf({ equipment: { id }, system }: SupplyNode): Device {
  const lines: Lines = system.phases === 3 ? 'ABC' : 'AB';
  return {
    id: `${id}.secondary`,
    use: 'secondary',
    at: id,
    of: id,
    protects: [id],
    amps: null,
    lines,
    poles: lines.length,
    volts: system.volts,
    known: 'missing',
    existing: false,
  };
}
