import { kept } from '../../../routing/kept/kept.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Device } from '../../plan-file.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { devicePlace } from './device-place.ts';

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
  if (feeder === null || devicePlace(feeder, nodes[parent]!.equipment) === 'to') return [];
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
    },
  ];
}

/** The device that comes in: a main, that of the feeder where it ends, or one that is needed and was not drawn. */
function mainOf(node: SupplyNode, { nodes }: SupplyTree, lines: SupplyLines): Device[] {
  const { feeder, equipment, primary } = node;
  const { id, kind, mainAmps } = equipment;
  const isMain = primary === null && mainAmps !== undefined;
  const ends = feeder !== null && devicePlace(feeder, nodes[node.parent]!.equipment) !== 'from';
  const common = { use: primary === null ? 'main' : 'primary', at: id, ...incoming(node, lines) } as const;
  if (isMain) {
    const protects = ends ? [feeder.id, id] : [id];
    return [{ id: `${id}.main`, ...common, of: id, protects, amps: mainAmps, known: 'drawn', existing: false }];
  }
  if (ends) {
    const known = feeder.device === undefined ? 'assumed' : 'drawn';
    const existing = feeder.existing === true;
    const { id: of, breakerAmps: amps } = feeder;
    return [{ id: `${of}.to`, ...common, of, protects: [of, id], amps, known, existing }];
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
