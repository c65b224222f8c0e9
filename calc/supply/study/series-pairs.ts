import { addTo } from '../../../routing/lists/grouping.ts';
import type { Device } from '../../plan-file/supply.ts';
import { protectorsOf } from '../devices/protecting.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';

/** Two devices in series: what a study of coordination compares, curve by curve. */
export interface SeriesPair {
  readonly ahead: Device;
  /** The first of those that are alike. */
  readonly device: Device;
  /** What their ratings belong to: chargers and loads of one board with breakers alike are one pair. */
  readonly of: readonly string[];
  /** The transformer between the two; null where there is none. */
  readonly across: string | null;
}

/**
 * Every device with the next one ahead of it, in the order of the devices. Devices that nobody drew, and what stands
 * behind no other, have no pair.
 */
export function seriesPairs(tree: SupplyTree, devices: readonly Device[]): readonly SeriesPair[] {
  const pairs: SeriesPair[] = [];
  const alike = new Map<string, string[]>();
  for (const device of devices) {
    if (device.known === 'missing') continue;
    const found = aheadOf(tree, devices, device);
    if (found === null) continue;
    const isBranch = device.use === 'charger' || device.use === 'load';
    const key = isBranch ? `${device.use} ${device.at} ${device.amps} ${device.poles}` : device.id;
    if (!alike.has(key)) {
      const of: string[] = [];
      alike.set(key, of);
      pairs.push({ ...found, device, of });
    }
    addTo(alike, key, device.of);
  }
  return pairs;
}

/** The next device ahead of one, and the transformer between them; null where none is drawn. */
export function aheadOf(
  tree: SupplyTree,
  devices: readonly Device[],
  device: Device,
): Pick<SeriesPair, 'ahead' | 'across'> | null {
  const by = protectorsOf(devices);
  const start = tree.placeOf.get(device.at);
  if (start === undefined) return null;
  let across: string | null = null;
  // What comes in to the equipment itself stands ahead of all that leaves it, and not of itself.
  const comesIn = device.protects.includes(device.at);
  for (let place = start; place >= 0; place = tree.nodes[place]!.parent) {
    const { equipment, primary } = tree.nodes[place]!;
    const own = (by.get(equipment.id) ?? []).filter((one) => one !== device && one.known !== 'missing');
    const inside = own.find(({ at, use }) => at === equipment.id && (use === 'main' || use === 'primary'));
    const head = own.find(({ at }) => at !== equipment.id);
    const isOwn = place === start && comesIn;
    // A device on the secondary side sees its transformer between it and the primary device.
    if (primary !== null && !isOwn) across = equipment.id;
    const ahead = isOwn ? head : (inside ?? head);
    if (ahead !== undefined) return { ahead, across };
  }
  return null;
}
