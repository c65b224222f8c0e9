import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Device } from '../../plan-file/supply.ts';

/** The devices by the equipment that they stand in. */
export const devicesIn = kept((devices: readonly Device[]): ReadonlyMap<string, readonly Device[]> => {
  const by = new Map<string, Device[]>();
  for (const device of devices) addTo(by, device.at, device);
  return by;
});

/** The device before the busbar of a piece of equipment: its main, or that of the feeder that ends there. */
export const mainIn = (devices: readonly Device[], equipment: string): Device | undefined =>
  devicesIn(devices)
    .get(equipment)
    ?.find(({ use }) => use === 'main');

/** `400 A 3P`, or a dash in the place of a rating that nobody gave. */
export const ratingWords = ({ amps, poles }: Pick<Device, 'amps' | 'poles'>): string =>
  `${amps === null ? '–' : `${amps} A`} ${poles}P`;
